// Product per acre of ground is not product in a volume of mix.
#include "core/quantity/quantity.hpp"
#include "core/quantity/reading.hpp"
#include "core/quantity/units.hpp"

namespace swathbook {

ProductVolumePerMix strength(ProductVolumePerArea rate, MixPerArea mix) {
#ifdef MUST_FAIL
    return rate;
#else
    return ProductVolumePerMix::from_si(rate.si() / mix.si());
#endif
}

}  // namespace swathbook
