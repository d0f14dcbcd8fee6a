// A reading of a length is not a reading of an area.
#include "core/quantity/quantity.hpp"
#include "core/quantity/reading.hpp"
#include "core/quantity/units.hpp"

namespace swathbook {

Reading<Kind::area> typed(const Reading<Kind::length>& length) {
#ifdef MUST_FAIL
    return length;
#else
    return Area::from_si(length.value.si() * length.value.si());
#endif
}

}  // namespace swathbook
