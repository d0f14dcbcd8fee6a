#include "api/language/languages.hpp"

#include "api/language/built_in.hpp"

namespace swathbook::api {
namespace {

struct Spanish {
    language::Catalogue catalogue;

    Spanish() {
        // The build checks the catalogue it puts in (tools/check_language.py, language_test).
        if (auto read = language::Catalogue::read(
                std::string(built_in_spanish()).append(built_in_spanish_labels()))) {
            catalogue = std::move(*read);
        }
    }
};

Spanish& the_spanish() {
    static Spanish made;  // read when first asked for: English pays nothing
    return made;
}

}  // namespace

const language::Catalogue* catalogue_of(std::string_view language) {
    if (language != spanish) {
        return nullptr;
    }
    const language::Catalogue& catalogue = the_spanish().catalogue;
    return catalogue.size() == 0 ? nullptr : &catalogue;
}

Result<void> load_language(std::string text) {
    SWATHBOOK_TRY(read, language::Catalogue::read(std::move(text)));
    the_spanish().catalogue = std::move(read);
    return {};
}

std::string in_language(const language::Catalogue* catalogue, std::string_view text) {
    return catalogue == nullptr ? std::string(text) : catalogue->say(text).text;
}

}  // namespace swathbook::api
