#include "core/droplets/class_window.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <utility>

#include <fmt/format.h>

#include "core/droplets/detail/class_words.hpp"

namespace swathbook::droplets {
namespace {

constexpr std::array<std::string_view, 8> or_coarser{
    "# or coarser",     "at least #", "# and coarser",  "no finer than #",
    "not finer than #", "#+",         "# o más gruesa", "al menos #",
};
constexpr std::array<std::string_view, 8> or_finer{
    "# or finer",         "at most #", "# and finer",  "no coarser than #",
    "not coarser than #", "up to #",   "# o más fina", "como máximo #",
};
constexpr std::array<std::string_view, 8> between{
    "# to #", "# #", "#/#", "# through #", "# a #", "from # to #", "between # and #", "de # a #",
};
/// "Medium or coarse" names two neighbours; "fine or coarse" would leave out the one between.
constexpr std::array<std::string_view, 8> either{"# or #", "# and #", "# o #", "# y #"};

bool is_one_of(std::string_view text, const std::array<std::string_view, 8>& forms) {
    return std::find(forms.begin(), forms.end(), text) != forms.end();
}

/// Words a label hangs on a class that say nothing about it.
std::string without_noun(std::string text) {
    for (const std::string_view noun : {" droplets", " droplet", " drops", " spray", " gotas"}) {
        if (text.ends_with(noun)) {
            text.resize(text.size() - noun.size());
            break;
        }
    }
    return text;
}

bool are_neighbours(DropletClass first, DropletClass second) {
    return std::abs(static_cast<int>(first) - static_cast<int>(second)) == 1;
}

std::string named(DropletClass droplet_class) {
    const ClassInfo& info = info_of(droplet_class);
    return fmt::format("{} ({})", info.english, info.letters);
}

}  // namespace

Result<ClassWindow> class_window_from_text(std::string_view text) {
    const detail::FoundClasses found = detail::find_classes(text);
    const std::string form = without_noun(found.rest);
    const DropletClass first = found.classes[0];
    if (found.count == 1 && form == "#") {
        return ClassWindow{first, first};
    }
    if (found.count == 1 && is_one_of(form, or_coarser)) {
        return ClassWindow{first, std::nullopt};
    }
    if (found.count == 1 && is_one_of(form, or_finer)) {
        return ClassWindow{std::nullopt, first};
    }
    const DropletClass second = found.classes[1];
    if (found.count == 2 && form == "# o más #") {  // "muy gruesa o más gruesa"
        return second == DropletClass::coarse ? ClassWindow{first, std::nullopt}
                                              : ClassWindow{std::nullopt, first};
    }
    const bool spans =
        is_one_of(form, between) || (are_neighbours(first, second) && is_one_of(form, either));
    if (found.count == 2 && spans) {
        const auto [finest, coarsest] = std::minmax(first, second);
        return ClassWindow{finest, coarsest};
    }
    return fail(ErrorCode::invalid_input, "",
                fmt::format("\"{}\" is not understood as a wanted droplet class. Write it like "
                            "\"coarse or coarser\", \"medium to coarse\", \"no finer than M\" or "
                            "\"VC\"; the classes are {}.",
                            text, detail::class_list()));
}

bool allows(const ClassWindow& window, DropletClass droplet_class) {
    return (!window.finest || droplet_class >= *window.finest) &&
           (!window.coarsest || droplet_class <= *window.coarsest);
}

std::string describe(const ClassWindow& window) {
    if (window.finest && window.coarsest) {
        return *window.finest == *window.coarsest
                   ? named(*window.finest)
                   : fmt::format("{} to {}", named(*window.finest), named(*window.coarsest));
    }
    if (window.finest) {
        return fmt::format("{} or coarser", named(*window.finest));
    }
    if (window.coarsest) {
        return fmt::format("{} or finer", named(*window.coarsest));
    }
    return "any class";
}

}  // namespace swathbook::droplets
