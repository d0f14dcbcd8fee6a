#pragma once

#include <array>
#include <string>
#include <string_view>

#include "core/droplets/droplet_class.hpp"

namespace swathbook::droplets::detail {

/// Class names found in a text, each replaced by '#' in what is left of it.
struct FoundClasses {
    std::array<DropletClass, 2> classes{};
    int count = 0;     ///< how many were found; more than two are counted but not kept
    std::string rest;  ///< lower case, single spaces: "# or coarser"
};

[[nodiscard]] FoundClasses find_classes(std::string_view text);

/// "XF, VF, F, M, C, VC, XC or UC", for messages.
[[nodiscard]] std::string_view class_list();

}  // namespace swathbook::droplets::detail
