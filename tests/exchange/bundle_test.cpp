#include "exchange/bundle.hpp"

#include <fstream>
#include <span>

#include <gmock/gmock.h>

#include "core/notebook/fold.hpp"
#include "exchange/zip_file.hpp"
#include "tests/store/temp_notebook.hpp"

namespace swathbook::exchange {
namespace {

using notebook::EntryKind;
using store::draft;
using store::SqliteNotebook;
using testing::HasSubstr;

class BundleTest : public testing::Test {
protected:
    store::TempFolder folder;
    store::TestOutside world;
    std::unique_ptr<SqliteNotebook> notebook = make("one.gpkg");

    std::unique_ptr<SqliteNotebook> make(const std::string& name) {
        world.seed += 77;
        return SqliteNotebook::open(folder.file(name), {store::OpenMode::create}, world.outside())
            .value();
    }
    static std::string state(SqliteNotebook& of) {
        return notebook::state_text(of.state().value());
    }
    std::string bundle() {
        const std::string photo(100'000, '\x5a');
        EXPECT_TRUE(notebook->put_blob(std::span(
            reinterpret_cast<const std::uint8_t*>(photo.data()), photo.size())));  // NOLINT
        EXPECT_TRUE(notebook->append(
            std::vector{draft(EntryKind::sprayer, 1, R"({"name":"Boom rig"})"),
                        draft(EntryKind::record, 2, R"({"closed":true,"name":"Año"})")}));
        return make_bundle(*notebook, "2026-04-09T14:03:05Z").value();
    }
};

TEST_F(BundleTest, another_notebook_comes_to_the_same_state_and_twice_changes_nothing) {
    const std::string bytes = bundle();
    auto other = make("two.gpkg");
    const auto first = take_bundle(*other, bytes).value();
    EXPECT_EQ(first.entries.added, 2U);
    EXPECT_EQ(first.blobs, 1U);
    EXPECT_EQ(state(*other), state(*notebook));
    EXPECT_EQ(other->blobs().value(), notebook->blobs().value());
    const auto again = take_bundle(*other, bytes).value();
    EXPECT_EQ(again.entries.added, 0U);
    EXPECT_EQ(again.entries.already_here, 2U);
    EXPECT_EQ(state(*other), state(*notebook));
}

// Python's zipfile and b2sum as judges: the file is a zip as others read it, the digests are
// theirs.
TEST_F(BundleTest, standard_tools_read_it_and_agree_with_its_digests) {
    const std::string path = folder.file("copy.zip");
    std::ofstream(path, std::ios::binary) << bundle();
    const auto judged = store::run_command(
        "python3 -c \"import zipfile,json,hashlib,sys; z=zipfile.ZipFile('" + path +
        "'); assert z.testzip() is None; m=json.loads(z.read('manifest.json')); "
        "[sys.exit('differs '+p['name']) for p in m['parts'] "
        "if hashlib.blake2b(z.read(p['name']),digest_size=32).hexdigest()!=p['digest']]; "
        "print(m['form'], len(m['parts']))\"");
    EXPECT_EQ(judged.status, 0) << judged.output;
    EXPECT_EQ(judged.output, "swathbook bundle 1 2\n");
}

TEST_F(BundleTest, any_damaged_byte_is_found_or_harmless_and_nothing_is_half_taken) {
    const std::string bytes = bundle();
    const std::string empty = state(*make("empty.gpkg"));
    int refused = 0;
    for (std::size_t at = 0; at < bytes.size(); at += 1 + bytes.size() / 41) {
        std::string hurt = bytes;
        hurt[at] = static_cast<char>(hurt[at] ^ 0x55);
        auto other = make("hurt" + std::to_string(at) + ".gpkg");
        const auto taken = take_bundle(*other, hurt);
        EXPECT_EQ(state(*other), taken ? state(*notebook) : empty) << "byte " << at;
        refused += taken ? 0 : 1;
    }
    EXPECT_GT(refused, 25);
    for (std::size_t size : {std::size_t{0}, std::size_t{3}, bytes.size() / 2, bytes.size() - 1}) {
        EXPECT_FALSE(take_bundle(*notebook, std::string_view(bytes).substr(0, size))) << size;
    }
}

TEST_F(BundleTest, other_files_and_newer_bundles_are_refused_by_name) {
    auto refusal = [&](std::string_view bytes) { return take_bundle(*notebook, bytes).error(); };
    EXPECT_EQ(refusal("%PDF-1.7").code, ErrorCode::invalid_input);
    EXPECT_EQ(refusal(write_zip(std::vector<ZipPart>{{"a.txt", "a"}}).value()).code,
              ErrorCode::invalid_input);
    const auto newer = write_zip(std::vector<ZipPart>{
        {"entries.txt", ""}, {"manifest.json", R"({"form":"swathbook bundle 9","parts":[]})"}});
    EXPECT_EQ(refusal(newer.value()).code, ErrorCode::unsupported);
    EXPECT_THAT(refusal(newer.value()).detail, HasSubstr("newer"));
    const auto lying = write_zip(std::vector<ZipPart>{
        {"entries.txt", "x"},
        {"manifest.json", R"({"form":"swathbook bundle 1","parts":[{"name":"entries.txt",)"
                          R"("digest":"00"}]})"}});
    EXPECT_FALSE(take_bundle(*notebook, lying.value()));
}

TEST_F(BundleTest, a_part_that_swells_past_the_limit_is_stopped) {
    const auto zip =
        write_zip(std::vector<ZipPart>{{"big", std::string(std::size_t{8} << 20, 'a')}}).value();
    EXPECT_LT(zip.size(), std::size_t{1} << 16);
    const auto reader = ZipReader::open(zip).value();
    EXPECT_EQ(reader.read("big", std::size_t{1} << 20).error().code, ErrorCode::out_of_range);
    EXPECT_EQ(reader.read("big", std::size_t{8} << 20).value().size(), std::size_t{8} << 20);
    EXPECT_EQ(reader.read("small", 1).error().code, ErrorCode::corrupt_data);
}

}  // namespace
}  // namespace swathbook::exchange
