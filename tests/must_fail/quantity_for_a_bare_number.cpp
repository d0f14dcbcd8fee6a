// A quantity gives its number only when a unit is named.
#include "core/quantity/quantity.hpp"
#include "core/quantity/reading.hpp"
#include "core/quantity/units.hpp"

namespace swathbook {

double litres_in(Volume tank) {
#ifdef MUST_FAIL
    return tank;
#else
    return tank.in(litres);
#endif
}

}  // namespace swathbook
