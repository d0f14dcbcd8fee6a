#include "core/droplets/droplet_class.hpp"

#include <array>
#include <cstddef>

#include <fmt/format.h>

#include "core/droplets/detail/class_words.hpp"

namespace swathbook::droplets {
namespace {

using enum DropletClass;

constexpr std::array classes{
    ClassInfo{extremely_fine, "XF", "extremely fine", "extremadamente fina", "purple", "morado",
              false},
    ClassInfo{very_fine, "VF", "very fine", "muy fina", "red", "rojo", true},
    ClassInfo{fine, "F", "fine", "fina", "orange", "naranja", true},
    ClassInfo{medium, "M", "medium", "media", "yellow", "amarillo", true},
    ClassInfo{coarse, "C", "coarse", "gruesa", "blue", "azul", true},
    ClassInfo{very_coarse, "VC", "very coarse", "muy gruesa", "green", "verde", true},
    ClassInfo{extremely_coarse, "XC", "extremely coarse", "extremadamente gruesa", "white",
              "blanco", true},
    ClassInfo{ultra_coarse, "UC", "ultra coarse", "ultra gruesa", "black", "negro", false},
};

constexpr bool in_order() {
    for (std::size_t i = 0; i < classes.size(); ++i) {
        if (static_cast<std::size_t>(classes[i].value) != i) {
            return false;
        }
    }
    return true;
}
static_assert(in_order(), "info_of looks classes up by their number");

}  // namespace

std::span<const ClassInfo> all_classes() {
    return classes;
}

const ClassInfo& info_of(DropletClass droplet_class) {
    return classes[static_cast<std::size_t>(droplet_class)];
}

Result<DropletClass> class_from_text(std::string_view text) {
    const detail::FoundClasses found = detail::find_classes(text);
    if (found.count == 1 && found.rest == "#") {
        return found.classes[0];
    }
    return fail(ErrorCode::invalid_input, "",
                fmt::format("\"{}\" is not a droplet class. Write one of {}, in letters or words.",
                            text, detail::class_list()));
}

}  // namespace swathbook::droplets
