#include "server/assets.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <iterator>

#include <fmt/format.h>

#include "core/base/blake2b.hpp"
#include "server/status.hpp"

namespace swathbook::server {
namespace {

namespace fs = std::filesystem;

constexpr std::uintmax_t most_bytes = std::uintmax_t{256} << 20;
constexpr std::string_view page_path = "/index.html";

struct MediaType {
    std::string_view ending;
    std::string_view type;
};
constexpr std::array media_types{
    MediaType{".html", "text/html; charset=utf-8"},
    MediaType{".js", "text/javascript; charset=utf-8"},
    MediaType{".mjs", "text/javascript; charset=utf-8"},
    MediaType{".css", "text/css; charset=utf-8"},
    MediaType{".wasm", "application/wasm"},
    MediaType{".json", "application/json"},
    MediaType{".map", "application/json"},
    MediaType{".webmanifest", "application/manifest+json"},
    MediaType{".svg", "image/svg+xml"},
    MediaType{".png", "image/png"},
    MediaType{".jpg", "image/jpeg"},
    MediaType{".jpeg", "image/jpeg"},
    MediaType{".webp", "image/webp"},
    MediaType{".avif", "image/avif"},
    MediaType{".ico", "image/x-icon"},
    MediaType{".woff2", "font/woff2"},
    MediaType{".txt", "text/plain; charset=utf-8"},
    MediaType{".tsv", "text/tab-separated-values; charset=utf-8"},
    MediaType{".csv", "text/csv; charset=utf-8"},
    MediaType{".pdf", "application/pdf"},
    MediaType{".xml", "application/xml"},
    MediaType{".mp3", "audio/mpeg"},
    MediaType{".wav", "audio/wav"},
};

std::string_view type_of(std::string_view name) {
    for (const MediaType& known : media_types) {
        if (name.ends_with(known.ending)) {
            return known.type;
        }
    }
    return "application/octet-stream";
}

Result<std::string> content_of(const fs::path& file) {
    std::ifstream stream(file, std::ios::binary);
    std::string content{std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
    if (!stream.good() && !stream.eof()) {
        return fail(ErrorCode::io, "web",
                    fmt::format("The file \"{}\" of the web app cannot be read.", file.string()));
    }
    return content;
}

/// The compressed form beside a file; nothing when there is none.
Result<std::string> twin_of(const fs::path& file, std::string_view ending) {
    fs::path twin = file;
    twin += ending;
    std::error_code fault;
    if (!fs::is_regular_file(fs::symlink_status(twin, fault))) {
        return std::string();
    }
    return content_of(twin);
}

bool is_twin(const fs::path& file) {
    const fs::path ending = file.extension();
    std::error_code fault;
    fs::path plain = file;
    return (ending == ".br" || ending == ".gz") && fs::exists(plain.replace_extension(), fault);
}

Result<Asset> read_asset(const fs::path& file, std::string_view path) {
    Asset asset;
    const std::string name = file.filename().string();
    asset.type = type_of(name);
    SWATHBOOK_TRY(plain, content_of(file));
    SWATHBOOK_TRY(gzip, twin_of(file, ".gz"));
    SWATHBOOK_TRY(brotli, twin_of(file, ".br"));
    constexpr std::size_t tag_digits = 32;
    asset.tag = hex_of(blake2b_256(plain)).substr(0, tag_digits);
    asset.is_forever = path.starts_with("/assets/") && is_hashed_name(name);
    asset.plain = std::move(plain);
    asset.gzip = std::move(gzip);
    asset.brotli = std::move(brotli);
    return asset;
}

bool is_in_list(std::string_view list, std::string_view wanted) {
    while (!list.empty()) {
        const std::size_t end = std::min(list.find(','), list.size());
        std::string_view item = list.substr(0, end);
        item.remove_prefix(std::min(item.find_first_not_of(" \t"), item.size()));
        item = item.substr(0, item.find_last_not_of(" \t") + 1);
        item.remove_prefix(item.starts_with("W/") ? 2 : 0);
        if (item == wanted || item == "*") {
            return true;
        }
        list.remove_prefix(std::min(end + 1, list.size()));
    }
    return false;
}

Response no_web_app() {
    Response response;
    response.status = Status::unavailable;
    response.type = "text/html; charset=utf-8";
    response.body =
        "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">"
        "<title>Swathbook: no web app</title></head><body>\n"
        "<h1>The server runs; the web app is not here</h1>\n"
        "<p>The computing and sync addresses under /api/ work. To see the app, build it "
        "(<code>./dev serve</code> does), or start the server with "
        "<code>swathbook serve --web FOLDER</code>, where FOLDER holds its index.html.</p>\n"
        "</body></html>\n";
    return response;
}

Response nothing_there(std::string_view path) {
    return refusal(
        {ErrorCode::not_found, "",
         fmt::format("There is nothing at \"{}\". The app begins at \"/\".", path.substr(0, 200))});
}

}  // namespace

Result<AssetShelf> AssetShelf::read(const std::string& folder) {
    AssetShelf shelf;
    std::error_code fault;
    std::uintmax_t bytes = 0;
    fs::recursive_directory_iterator walk(folder, fault);
    for (; !fault && walk != fs::recursive_directory_iterator(); walk.increment(fault)) {
        const fs::path& file = walk->path();
        if (file.filename().string().starts_with(".")) {
            walk.disable_recursion_pending();
            continue;
        }
        if (walk->is_symlink(fault) || !walk->is_regular_file(fault) || is_twin(file)) {
            continue;
        }
        bytes += walk->file_size(fault);
        if (bytes > most_bytes) {
            return fail(ErrorCode::out_of_range, "web",
                        fmt::format("\"{}\" holds more than {} bytes, the most that is served. Is "
                                    "it the folder of the built app?",
                                    folder, most_bytes));
        }
        const std::string path = "/" + file.lexically_relative(folder).generic_string();
        SWATHBOOK_TRY(asset, read_asset(file, path));
        shelf.assets_.emplace(path, std::move(asset));
    }
    if (shelf.find(page_path) == nullptr) {
        return fail(ErrorCode::not_found, "web",
                    fmt::format("There is no web app in \"{}\": it holds no index.html{}. Build "
                                "it, or leave --web out.",
                                folder, fault ? " (" + fault.message() + ")" : ""));
    }
    return shelf;
}

const Asset* AssetShelf::find(std::string_view path) const {
    const auto found = assets_.find(path);
    return found == assets_.end() ? nullptr : &found->second;
}

Response AssetShelf::answer(const Request& request) const {
    const bool is_root = request.path() == "/";
    if (is_root && is_empty()) {
        return no_web_app();
    }
    const Asset* asset = find(is_root ? page_path : request.path());
    if (asset == nullptr) {
        return nothing_there(request.path());
    }
    const std::string_view codings = request.header("Accept-Encoding").value_or("");
    const bool as_brotli = !asset->brotli.empty() && accepts_coding(codings, "br");
    const bool as_gzip = !as_brotli && !asset->gzip.empty() && accepts_coding(codings, "gzip");
    const std::string tag = fmt::format("\"{}{}\"", asset->tag,
                                        as_brotli ? "-br"
                                        : as_gzip ? "-gz"
                                                  : "");
    Response response;
    response.type = asset->type;
    response.headers.emplace_back("ETag", tag);
    response.headers.emplace_back(
        "Cache-Control", asset->is_forever ? "public, max-age=31536000, immutable" : "no-cache");
    if (!asset->gzip.empty() || !asset->brotli.empty()) {
        response.headers.emplace_back("Vary", "Accept-Encoding");
    }
    if (is_in_list(request.header("If-None-Match").value_or(""), tag)) {
        response.status = Status::not_modified;
        response.type = {};
        return response;
    }
    if (as_brotli || as_gzip) {
        response.headers.emplace_back("Content-Encoding", as_brotli ? "br" : "gzip");
    }
    response.kept_body = as_brotli ? asset->brotli : as_gzip ? asset->gzip : asset->plain;
    return response;
}

bool is_hashed_name(std::string_view file_name) {
    constexpr std::size_t hash_length = 8;
    const std::string_view stem = file_name.substr(0, file_name.find('.'));
    if (stem.size() <= hash_length + 1 || stem[stem.size() - hash_length - 1] != '-') {
        return false;
    }
    bool is_no_word = false;  // "-velocity" is eight letters too
    for (const char letter : stem.substr(stem.size() - hash_length)) {
        const bool is_lower = letter >= 'a' && letter <= 'z';
        const bool is_other = (letter >= 'A' && letter <= 'Z') || (letter >= '0' && letter <= '9');
        if (!is_lower && !is_other && letter != '_' && letter != '-') {
            return false;
        }
        is_no_word = is_no_word || is_other;
    }
    return is_no_word;
}

bool accepts_coding(std::string_view header, std::string_view coding) {
    while (!header.empty()) {
        const std::size_t end = std::min(header.find(','), header.size());
        std::string_view item = header.substr(0, end);
        header.remove_prefix(std::min(end + 1, header.size()));
        item.remove_prefix(std::min(item.find_first_not_of(" \t"), item.size()));
        const std::string_view name = item.substr(0, item.find_first_of("; \t"));
        if (same_word(name, coding)) {
            const std::size_t quality = item.find("q=");
            const std::string_view weight =
                quality == std::string_view::npos ? "1" : item.substr(quality + 2);
            return weight.find_first_of("123456789") != std::string_view::npos;
        }
    }
    return false;
}

}  // namespace swathbook::server
