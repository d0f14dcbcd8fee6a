// A ratio has one kind above and below.
#include "core/quantity/quantity.hpp"
#include "core/quantity/reading.hpp"
#include "core/quantity/units.hpp"

namespace swathbook {

double ratio(MixPerArea mix, ProductVolumePerArea product) {
#ifdef MUST_FAIL
    return mix / product;
#else
    return mix.si() / product.si();
#endif
}

}  // namespace swathbook
