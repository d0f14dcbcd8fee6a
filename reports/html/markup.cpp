#include "reports/html/markup.hpp"

namespace swathbook::reports::html {

std::string escaped(std::string_view words) {
    std::string out;
    out.reserve(words.size());
    for (const char letter : words) {
        switch (letter) {
            case '&': out += "&amp;"; break;
            case '<': out += "&lt;"; break;
            case '>': out += "&gt;"; break;
            case '"': out += "&quot;"; break;
            case '\'': out += "&#39;"; break;
            default: {
                const bool is_control = static_cast<unsigned char>(letter) < 0x20 || letter == 0x7f;
                out += is_control && letter != '\n' ? ' ' : letter;
            }
        }
    }
    return out;
}

void Markup::open(std::string_view tag, std::string_view of_class) {
    out_ += '<';
    out_ += tag;
    if (!of_class.empty()) {
        out_ += " class=\"";
        out_ += of_class;
        out_ += '"';
    }
    out_ += '>';
}

void Markup::close(std::string_view tag) {
    out_ += "</";
    out_ += tag;
    out_ += '>';
}

void Markup::text(std::string_view words) {
    out_ += escaped(words);
}

void Markup::element(std::string_view tag, std::string_view of_class, std::string_view words) {
    open(tag, of_class);
    text(words);
    close(tag);
}

}  // namespace swathbook::reports::html
