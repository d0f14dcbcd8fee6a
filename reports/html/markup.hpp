#pragma once

#include <string>
#include <string_view>
#include <utility>

namespace swathbook::reports::html {

/// Writes well-formed markup: what is opened is closed, every text is escaped, no style and no
/// script, so that the strictest content security policy shows it.
class Markup {
public:
    void open(std::string_view tag, std::string_view of_class = {});
    void close(std::string_view tag);
    /// Text between tags. Control characters, which no markup may hold, become spaces.
    void text(std::string_view words);
    /// An element that holds words only.
    void element(std::string_view tag, std::string_view of_class, std::string_view words);
    /// A tag as it stands, attributes and all; the caller vouches for it.
    void raw(std::string_view markup) { out_ += markup; }

    [[nodiscard]] std::string take() { return std::move(out_); }

private:
    std::string out_;
};

/// The words with & < > and quotes escaped.
[[nodiscard]] std::string escaped(std::string_view words);

}  // namespace swathbook::reports::html
