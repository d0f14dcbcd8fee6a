// Planned acres are not the acres that were wetted.
#include "core/quantity/quantity.hpp"
#include "core/quantity/reading.hpp"
#include "core/quantity/units.hpp"

namespace swathbook {

NetArea wetted(PlannedArea planned) {
#ifdef MUST_FAIL
    return planned;
#else
    return NetArea::from_si(planned.si());
#endif
}

}  // namespace swathbook
