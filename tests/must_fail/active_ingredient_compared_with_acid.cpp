// Pounds of active ingredient and of acid equivalent are not compared.
#include "core/quantity/quantity.hpp"
#include "core/quantity/reading.hpp"
#include "core/quantity/units.hpp"

namespace swathbook {

bool over(IngredientPerArea applied, AcidPerArea limit) {
#ifdef MUST_FAIL
    return applied > limit;
#else
    return applied.si() > limit.si();
#endif
}

}  // namespace swathbook
