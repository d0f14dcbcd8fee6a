#pragma once

#include "core/job/balance.hpp"

/// The halves of a balance: the ground and the liquid.
namespace swathbook::job::detail {

/// Everything that must hold before anything is added up.
[[nodiscard]] Result<void> check_balance(const BalanceRequest& request);

/// Passes one by one, and their sums.
[[nodiscard]] Result<void> fill_passes(BalanceAnswer& answer, const BalanceRequest& request,
                                       Notes& notes);

/// Planned, excluded, covered and payable ground, and which of them counts.
[[nodiscard]] Result<void> fill_ground(BalanceAnswer& answer, const BalanceRequest& request,
                                       Notes& notes);

/// All the mix made, by the loads; 0 when none was entered.
[[nodiscard]] double made_by_loads(const BalanceRequest& request);

[[nodiscard]] Result<void> fill_products(BalanceAnswer& answer, const BalanceRequest& request,
                                         Notes& notes);

/// "+10.9 %"
[[nodiscard]] std::string signed_percent(double share);

/// Half the 95 % interval of amount over ground, as a share; 0 when nothing is known of it.
/// @param amount_step  half the last digit of the amount over the amount; 0 when not typed
[[nodiscard]] double plus_minus_of(const BalanceRequest& request, double amount_step);

/// A value with that interval; without one when the share is 0.
template <Kind K>
[[nodiscard]] Estimate<K> with_interval(double si, double plus_minus) {
    const auto at = [](double amount) { return Quantity<K>::from_si(amount); };
    if (plus_minus <= 0.0) {
        return Estimate<K>(at(si));
    }
    return Estimate<K>(at(si), at(si * (plus_minus < 1.0 ? 1.0 - plus_minus : 0.0)),
                       at(si * (1.0 + plus_minus)));
}
/// applied / wanted - 1 with that interval of applied.
[[nodiscard]] Estimate<Kind::fraction> difference_of(double applied, double wanted,
                                                     double plus_minus);

}  // namespace swathbook::job::detail
