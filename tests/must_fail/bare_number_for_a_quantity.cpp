// A number without a unit is no quantity.
#include "core/quantity/quantity.hpp"
#include "core/quantity/reading.hpp"
#include "core/quantity/units.hpp"

namespace swathbook {

Volume tank() {
#ifdef MUST_FAIL
    return 47.0;
#else
    return Volume::of(47.0, us_gallons);
#endif
}

}  // namespace swathbook
