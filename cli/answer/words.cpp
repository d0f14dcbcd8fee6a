#include "cli/answer/words.hpp"

namespace swathbook::cli {
namespace {

const api::Labels* spoken = nullptr;  // NOLINT: said once, before anything is printed

}  // namespace

const api::Labels& words() {
    return spoken == nullptr ? api::Labels::in("en") : *spoken;
}

void speak(std::string_view language) {
    spoken = &api::Labels::in(language);
}

}  // namespace swathbook::cli
