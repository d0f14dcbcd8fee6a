// A speed is not read in gallons per minute.
#include "core/quantity/quantity.hpp"
#include "core/quantity/reading.hpp"
#include "core/quantity/units.hpp"

namespace swathbook {

double reading(Speed speed) {
#ifdef MUST_FAIL
    return speed.in(us_gallons_per_minute);
#else
    return speed.in(miles_per_hour);
#endif
}

}  // namespace swathbook
