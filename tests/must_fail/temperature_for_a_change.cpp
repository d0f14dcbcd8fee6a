// 72 degrees on the thermometer is not a change of 72 degrees.
#include "core/quantity/quantity.hpp"
#include "core/quantity/reading.hpp"
#include "core/quantity/units.hpp"

namespace swathbook {

TemperatureChange warming(Temperature later, Temperature earlier) {
#ifdef MUST_FAIL
    return later;
#else
    return TemperatureChange::from_si(later.si() - earlier.si());
#endif
}

}  // namespace swathbook
