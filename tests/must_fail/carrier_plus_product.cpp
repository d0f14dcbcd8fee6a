// Gallons of mix per acre and quarts of product per acre share a dimension, and do not add.
#include "core/quantity/quantity.hpp"
#include "core/quantity/reading.hpp"
#include "core/quantity/units.hpp"

namespace swathbook {

double sum(MixPerArea mix, ProductVolumePerArea product) {
#ifdef MUST_FAIL
    return (mix + product).si();
#else
    return mix.si() + product.si();
#endif
}

}  // namespace swathbook
