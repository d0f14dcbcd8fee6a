#include "exchange/bundle.hpp"

#include <fmt/format.h>

#include "api/json/json.hpp"
#include "core/base/blake2b.hpp"
#include "core/notebook/entry_text.hpp"
#include "exchange/zip_file.hpp"

namespace swathbook::exchange {
namespace {

using api::Json;

constexpr std::string_view form = "swathbook bundle 1";
constexpr std::size_t largest_entries = std::size_t{1} << 30;
constexpr std::size_t largest_manifest = std::size_t{64} << 20;

struct Part {
    std::string name;
    Digest digest{};
};

tl::unexpected<Error> another_kind() {
    return fail(ErrorCode::invalid_input, "bundle",
                "This file is not a copy of a Swathbook notebook. Nothing was taken in.");
}

tl::unexpected<Error> damaged(std::string_view part) {
    return fail(ErrorCode::corrupt_data, "bundle",
                fmt::format("This copy is damaged ({}). Nothing was taken in. Make the copy again "
                            "on the other device.",
                            part));
}

Json line_of(const ZipPart& part) {
    return {{"name", part.name},
            {"digest", hex_of(blake2b_256(part.content))},
            {"size", part.content.size()}};
}

Result<void> check_form(const Json& manifest) {
    const auto said = manifest.is_object() ? manifest.find("form") : manifest.end();
    if (said == manifest.end() || !said->is_string() ||
        !said->get_ref<const std::string&>().starts_with("swathbook bundle")) {
        return another_kind();
    }
    if (said->get_ref<const std::string&>() != form) {
        return fail(ErrorCode::unsupported, "bundle",
                    fmt::format("This copy was made by a newer Swathbook (\"{}\"). Nothing was "
                                "taken in. Update this one first.",
                                said->get_ref<const std::string&>()));
    }
    return {};
}

Result<std::vector<Part>> parts_of(const Json& manifest) {
    SWATHBOOK_CHECK(check_form(manifest));
    const auto list = manifest.find("parts");
    if (list == manifest.end() || !list->is_array()) {
        return damaged("manifest.json");
    }
    std::vector<Part> parts;
    for (const Json& line : *list) {
        if (!line.is_object() || !line.contains("name") || !line["name"].is_string() ||
            !line.contains("digest") || !line["digest"].is_string()) {
            return damaged("manifest.json");
        }
        SWATHBOOK_TRY(digest, parse_digest(line["digest"].get_ref<const std::string&>(), "bundle"));
        parts.push_back({line["name"].get<std::string>(), digest});
    }
    return parts;
}

bool is_blob(const Part& part) {
    return part.name.starts_with("blobs/");
}

/// Every part read once and compared with its digest; nothing is kept yet.
Result<void> check_parts(const ZipReader& zip, const std::vector<Part>& parts) {
    for (const Part& part : parts) {
        SWATHBOOK_TRY(content,
                      zip.read(part.name, is_blob(part) ? store::NotebookStore::largest_blob
                                                        : largest_entries));
        if (blake2b_256(content) != part.digest) {
            return damaged(part.name);
        }
    }
    return {};
}

Result<std::size_t> keep_blobs(store::NotebookStore& notebook, const ZipReader& zip,
                               const std::vector<Part>& parts) {
    std::size_t count = 0;
    for (const Part& part : parts) {
        if (!is_blob(part)) {
            continue;
        }
        SWATHBOOK_TRY(content, zip.read(part.name, store::NotebookStore::largest_blob));
        const auto* bytes = reinterpret_cast<const std::uint8_t*>(content.data());  // NOLINT
        SWATHBOOK_CHECK(notebook.put_blob({bytes, content.size()}));
        ++count;
    }
    return count;
}

}  // namespace

bool looks_like_bundle(std::string_view bytes) {
    return bytes.starts_with("PK\x03\x04");
}

Result<std::string> make_bundle(store::NotebookStore& notebook, std::string_view made_at) {
    std::vector<notebook::Entry> entries;
    SWATHBOOK_CHECK(
        notebook.each_entry(0, [&entries](std::int64_t, const notebook::EntryView& entry) {
            entries.push_back(notebook::copy_of(entry));
            return Result<void>();
        }));
    SWATHBOOK_TRY(state, notebook.state());
    std::vector<ZipPart> parts;
    parts.push_back({"entries.txt", notebook::write_entries(entries)});
    SWATHBOOK_TRY(digests, notebook.blobs());
    for (const Digest& digest : digests) {
        SWATHBOOK_TRY(bytes, notebook.blob(digest));
        parts.push_back({"blobs/" + hex_of(digest), std::string(bytes.begin(), bytes.end())});
    }
    Json lines = Json::array();
    for (const ZipPart& part : parts) {
        lines.push_back(line_of(part));
    }
    const Json manifest = {{"form", form},
                           {"made", made_at},
                           {"device", text_of(notebook.device())},
                           {"entries", entries.size()},
                           {"state", hex_of(blake2b_256(notebook::state_text(state)))},
                           {"parts", std::move(lines)}};
    parts.push_back({"manifest.json", manifest.dump(1)});
    return write_zip(parts);
}

Result<BundleReport> take_bundle(store::NotebookStore& notebook, std::string_view bytes) {
    if (!looks_like_bundle(bytes)) {
        return another_kind();
    }
    SWATHBOOK_TRY(zip, ZipReader::open(bytes));
    if (!zip.holds("manifest.json") || !zip.holds("entries.txt")) {
        return another_kind();
    }
    SWATHBOOK_TRY(manifest_text, zip.read("manifest.json", largest_manifest));
    auto manifest = api::parse_json(manifest_text);
    if (!manifest) {
        return damaged("manifest.json");
    }
    SWATHBOOK_TRY(parts, parts_of(*manifest));
    SWATHBOOK_CHECK(check_parts(zip, parts));
    SWATHBOOK_TRY(text, zip.read("entries.txt", largest_entries));
    SWATHBOOK_TRY(entries, notebook::read_entries(text));
    // Attachments first: an entry never names one that is not here.
    BundleReport report;
    SWATHBOOK_TRY(blobs, keep_blobs(notebook, zip, parts));
    report.blobs = blobs;
    SWATHBOOK_TRY(merged, notebook.merge(entries));
    report.entries = std::move(merged);
    return report;
}

}  // namespace swathbook::exchange
