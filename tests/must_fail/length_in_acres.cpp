// A length is not counted in acres.
#include "core/quantity/quantity.hpp"
#include "core/quantity/reading.hpp"
#include "core/quantity/units.hpp"

namespace swathbook {

Length width() {
#ifdef MUST_FAIL
    return Length::of(26.0, acres);
#else
    return Length::of(26.0, feet);
#endif
}

}  // namespace swathbook
