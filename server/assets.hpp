#pragma once

#include <map>
#include <string>
#include <string_view>

#include "core/base/result.hpp"
#include "server/http.hpp"

namespace swathbook::server {

/// One file of the web app, in each form it can be sent in.
struct Asset {
    std::string_view type;
    std::string plain;
    std::string gzip;         ///< empty: there is no NAME.gz
    std::string brotli;       ///< empty: there is no NAME.br
    std::string tag;          ///< digest of the plain form; each form has its own ETag made of it
    bool is_forever = false;  ///< its name changes with its content
};

/// The files of the web app, read once. A path is looked up, never walked: what was not read at
/// the start cannot be reached.
class AssetShelf {
public:
    AssetShelf() = default;
    /// Reads a folder and its subfolders; hidden files and links are passed over. NAME.br and
    /// NAME.gz are the compressed forms of NAME.
    ///
    /// @errors not_found{web} without the folder or its index.html; out_of_range{web} above
    ///         256 MiB; io{web}
    [[nodiscard]] static Result<AssetShelf> read(const std::string& folder);

    [[nodiscard]] bool is_empty() const { return assets_.empty(); }
    [[nodiscard]] std::size_t count() const { return assets_.size(); }
    [[nodiscard]] const Asset* find(std::string_view path) const;

    /// Answers GET and HEAD: "/" is "/index.html"; an unknown path is 404, never a page.
    [[nodiscard]] Response answer(const Request& request) const;

private:
    std::map<std::string, Asset, std::less<>> assets_;  ///< by path, "/index.html"
};

/// True for the names a bundler makes of content: "index-BxY3kQ9z.js".
[[nodiscard]] bool is_hashed_name(std::string_view file_name);

/// Whether an Accept-Encoding header takes a coding ("br;q=0" does not).
[[nodiscard]] bool accepts_coding(std::string_view header, std::string_view coding);

}  // namespace swathbook::server
