// Any bytes as quantity text, unit text and label rate. What is read must be finite and print and
// read back; what is refused must say so in a sentence of valid UTF-8.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "core/quantity/kind.hpp"
#include "core/quantity/parse.hpp"
#include "core/quantity/print.hpp"

namespace {

using namespace swathbook;

void require(bool holds) {
    if (!holds) {
        std::abort();
    }
}

bool is_utf8(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const auto first = static_cast<unsigned char>(text[at]);
        const std::size_t bytes = first < 0x80   ? 1
                                  : first < 0xC2 ? 0
                                  : first < 0xE0 ? 2
                                  : first < 0xF0 ? 3
                                  : first < 0xF5 ? 4
                                                 : 0;
        if (bytes == 0 || at + bytes > text.size() || first < 0x20) {
            return false;
        }
        for (std::size_t i = 1; i < bytes; ++i) {
            if ((static_cast<unsigned char>(text[at + i]) & 0xC0U) != 0x80U) {
                return false;
            }
        }
        at += bytes;
    }
    return true;
}

void check_error(const Error& error) {
    require(!error.detail.empty());
    require(is_utf8(error.detail));
}

/// Printing with all digits and reading again gives the value back; temperatures pass through the
/// zero point of their scale.
void check_round_trip(double si, const KindInfo& info) {
    for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
        const std::string text = show(si, info.kind, units, 17);
        const auto again = parse_amount(text, info.kind);
        const double in_unit = std::abs(
            number_in(si, info.kind, units == UnitSystem::us ? info.us_unit : info.metric_unit));
        const bool readable = in_unit == 0.0 || (in_unit > 1e-20 && in_unit < 1e20);
        require(again.has_value() || !readable);
        if (again) {
            const double through_zero = info.kind == Kind::temperature ? 1e-12 : 0.0;
            require(std::abs(again->si - si) <= 4e-15 * std::abs(si) + through_zero);
        }
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size == 0) {
        return 0;
    }
    const auto kinds = all_kinds();
    const KindInfo& info = kinds[data[0] % kinds.size()];
    // A copy of exactly this size, so that reading one byte too far is caught.
    const std::string text(reinterpret_cast<const char*>(data + 1), size - 1);

    const auto amount = parse_amount(text, info.kind);
    if (amount) {
        require(std::isfinite(amount->si) && amount->half_step_si >= 0.0);
        check_round_trip(amount->si, info);
    } else {
        check_error(amount.error());
    }
    const auto unit = parse_unit(text, info.kind);
    if (unit) {
        require(*unit > 0.0);
    } else {
        check_error(unit.error());
    }
    const auto rate = parse_label_rate(text);
    if (rate) {
        require(std::isfinite(rate->si) && rate->si >= 0.0);
        require(show(*rate, UnitSystem::us) == text);
    } else {
        check_error(rate.error());
    }
    return 0;
}
