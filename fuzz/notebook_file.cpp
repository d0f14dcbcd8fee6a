// Any bytes as what a notebook reads from others: an entries text, the body of an entry, a GeoJSON
// shape, a GeoPackage geometry, and a whole notebook file. What is taken must hold its own rules;
// what is refused must say so; nothing may read outside its bytes.
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>

#include "core/notebook/body.hpp"
#include "core/notebook/chain.hpp"
#include "core/notebook/entry_text.hpp"
#include "core/notebook/fold.hpp"
#include "store/geopackage/bounds.hpp"
#include "store/geopackage/feature_geometry.hpp"
#include "store/sqlite/sqlite_backup.hpp"

namespace {

using namespace swathbook;

void require(bool holds) {
    if (!holds) {
        std::abort();
    }
}

void try_entries(std::string_view text) {
    const auto entries = notebook::read_entries(text);
    if (!entries) {
        require(entries.error().code == ErrorCode::corrupt_data);
        return;
    }
    require(notebook::read_entries(notebook::write_entries(*entries)).value() == *entries);
    static_cast<void>(notebook::verify_chains(*entries));
    auto folded = notebook::fold(*entries);
    if (!folded) {
        require(folded.error().code == ErrorCode::corrupt_data);
        return;
    }
    const std::vector<notebook::Entry> backwards(entries->rbegin(), entries->rend());
    require(state_text(*folded) == state_text(notebook::fold(backwards).value()));
}

void try_body(std::string_view text) {
    notebook::BodyReader reader(text);
    while (reader.next()) {
    }
    const auto body = notebook::canonical_body(text);
    if (body) {
        require(notebook::is_canonical_body(*body));
        notebook::BodyReader again(*body);
        while (const auto field = again.next()) {
            static_cast<void>(notebook::text_of_json_string(field->value));
        }
        require(!again.is_broken());
    }
    static_cast<void>(notebook::text_of_json_string(text));
}

void try_shape(std::string_view text) {
    const auto blob = store::feature_geometry(text, store::FeatureShape::any, "geometry");
    if (blob) {
        const auto header = store::read_header(*blob);
        require(header && !header->is_empty && header->bounds);
        require(header->bounds->min_x <= header->bounds->max_x);
    }
}

/// The path of a file that is only in memory where the system has such a folder.
std::string scratch_path() {
    const char* folder = ::access("/dev/shm", W_OK) == 0 ? "/dev/shm" : "/tmp";
    return std::string(folder) + "/swathbook_fuzz_" + std::to_string(::getpid()) + ".gpkg";
}

void write_file(const std::string& path, std::string_view bytes) {
    FILE* file = std::fopen(path.c_str(), "wb");
    require(file != nullptr);
    require(std::fwrite(bytes.data(), 1, bytes.size(), file) == bytes.size());
    std::fclose(file);
}

void remove_file(const std::string& path) {
    std::remove(path.c_str());
    std::remove((path + "-journal").c_str());
}

void try_file(std::string_view bytes) {
    static const std::string path = scratch_path();
    write_file(path, bytes);
    const store::OpenOptions unchecked{store::OpenMode::read_write, 0, false};
    if (auto opened = store::SqliteNotebook::open(path, unchecked, store::system_outside())) {
        static_cast<void>((*opened)->state());
        static_cast<void>((*opened)->append(std::vector<notebook::Draft>{
            {"A. Field", notebook::EntryKind::job, Uuid{}, R"({"a":1})"}}));
        static_cast<void>((*opened)->rebuild_features());
    }
    static_cast<void>(store::verify_notebook(path));
    remove_file(path);
}

/// The bytes of a small sound notebook.
std::string sound_notebook() {
    const std::string path = scratch_path();
    remove_file(path);
    {
        auto made =
            store::SqliteNotebook::open(path, {store::OpenMode::create}, store::system_outside());
        require(made.has_value());
        const std::string boundary =
            R"({"type":"Polygon","coordinates":[[[-98,40],[-97,40],[-97,41],[-98,40]]]})";
        require((*made)
                    ->append(std::vector<notebook::Draft>{
                        {"A. Field", notebook::EntryKind::stand, Uuid{},
                         R"({"name":"North","boundary":)" + boundary + "}"},
                        {"A. Field", notebook::EntryKind::record, Uuid{}, R"({"closed":true})"}})
                    .has_value());
        const std::vector<std::uint8_t> photo(300, 7);
        require((*made)->put_blob(photo).has_value());
    }
    std::string bytes;
    FILE* file = std::fopen(path.c_str(), "rb");
    require(file != nullptr);
    for (int byte = 0; (byte = std::fgetc(file)) != EOF;) {
        bytes.push_back(static_cast<char>(byte));
    }
    std::fclose(file);
    remove_file(path);
    return bytes;
}

/// A sound notebook is larger than an input: the input says which of its bytes to spoil, four bytes
/// a time: three of place, one of value.
void try_spoilt_file(std::string_view patches) {
    static const std::string sound = sound_notebook();
    std::string bytes = sound;
    const auto at = [&](std::size_t i) { return static_cast<unsigned char>(patches[i]); };
    for (std::size_t i = 0; i + 4 <= patches.size(); i += 4) {
        const std::size_t place = at(i) | at(i + 1) << 8U | at(i + 2) << 16U;
        bytes[place % bytes.size()] = patches[i + 3];
    }
    try_file(bytes);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    if (size == 0) {
        return 0;
    }
    const std::string_view bytes(reinterpret_cast<const char*>(data), size);
    constexpr std::string_view database = "SQLite format 3";
    if (bytes.substr(0, database.size()) == database) {
        try_file(bytes);
        return 0;
    }
    constexpr std::string_view spoil = "spoil";
    if (bytes.substr(0, spoil.size()) == spoil) {
        try_spoilt_file(bytes.substr(spoil.size()));
        return 0;
    }
    try_entries(bytes);
    try_body(bytes);
    try_shape(bytes);
    static_cast<void>(store::read_header({data, size}));
    return 0;
}
