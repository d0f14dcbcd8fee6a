#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/droplets/droplet_class.hpp"

namespace swathbook::droplets {

/// Which classes a label lets be used. An absent end is open: "coarse or coarser" has no coarsest.
struct ClassWindow {
    std::optional<DropletClass> finest{};
    std::optional<DropletClass> coarsest{};

    bool operator==(const ClassWindow&) const = default;
};

/// Reads the words of a label: "coarse or coarser", "at least VC", "medium to coarse", "M-C",
/// "no finer than medium", "medium or finer", "very coarse", "gruesa o más gruesa".
///
/// @errors invalid_input when the words are not understood; the message shows forms that are
[[nodiscard]] Result<ClassWindow> class_window_from_text(std::string_view text);

/// Whether a class may be used.
[[nodiscard]] bool allows(const ClassWindow& window, DropletClass droplet_class);

/// The window in plain words: "coarse (C) or coarser".
[[nodiscard]] std::string describe(const ClassWindow& window);

}  // namespace swathbook::droplets
