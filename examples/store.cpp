// A notebook in one file: open, append, close, and read back what it amounts to.
#include <unistd.h>

#include "examples/example.hpp"
#include "store/sqlite/sqlite_notebook.hpp"

namespace swathbook {
namespace {

Result<bool> show_notebook(const std::string& path) {
    const Uuid sprayer = make_uuid(0, {1, 2, 3, 4, 5, 6, 7, 8, 9, 10});
    {
        store::OpenOptions options;
        options.mode = store::OpenMode::create;
        SWATHBOOK_TRY(book, store::SqliteNotebook::open(path, options, store::system_outside()));
        // All drafts or none; they are on the disk when this returns.
        const std::vector<notebook::Draft> drafts{
            {"Ada Quill", notebook::EntryKind::sprayer, sprayer, R"({"name": "Boom rig"})"},
            {"Ada Quill", notebook::EntryKind::sprayer, sprayer, R"({"tank_volume": "47 gal"})"},
            {"Ada Quill", notebook::EntryKind::sprayer, sprayer, R"({"tank_volume": "45 gal"})"}};
        SWATHBOOK_CHECK(book->append(drafts));
    }
    SWATHBOOK_TRY(book, store::SqliteNotebook::open(path, {}, store::system_outside()));
    SWATHBOOK_TRY(entries, book->entries_of(notebook::EntryKind::sprayer, sprayer));
    SWATHBOOK_TRY(state, book->state());
    SWATHBOOK_TRY(problems, book->chain_problems());
    // By hand: three entries were made and none is overwritten; the last tank volume stands.
    const std::string body = state.body(notebook::EntryKind::sprayer, sprayer);
    std::printf("As it stands: %s\n", body.c_str());
    return examples::agrees("Entries kept", static_cast<double>(entries.size()), {3, "", 0}) &&
           body == R"({"name":"Boom rig","tank_volume":"45 gal"})" && problems.empty();
}

}  // namespace
}  // namespace swathbook

int main() {
    std::string folder = "/tmp/swathbook_example_XXXXXX";
    if (mkdtemp(folder.data()) == nullptr) {
        return 1;
    }
    const std::string path = folder + "/season.gpkg";
    const int status = swathbook::examples::status_of(swathbook::show_notebook(path));
    unlink(path.c_str());
    rmdir(folder.c_str());
    return status;
}
