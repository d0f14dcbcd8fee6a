// Two devices change one thing; whoever reads the entries, in whatever order, sees the same.
#include <algorithm>

#include "core/notebook/chain.hpp"
#include "core/notebook/fold.hpp"
#include "examples/example.hpp"

namespace swathbook {
namespace {

constexpr std::int64_t noon_ms = 1936008000000;  // 2031-05-08T12:00Z; the core has no clock
constexpr std::int64_t minute_ms = 60'000;

Uuid id_of(std::uint8_t number) {
    return make_uuid(noon_ms, {0, 0, 0, 0, 0, 0, 0, 0, 0, number});
}

Result<notebook::Entry> written(std::uint8_t device, std::int64_t at_ms, std::string body) {
    const notebook::Draft draft{"Ada Quill", notebook::EntryKind::sprayer, id_of(9),
                                std::move(body)};
    // Each device has a chain of its own; both start here. The ten bytes stand for random ones.
    return notebook::seal(draft, id_of(device), notebook::ChainHead{}, at_ms, {device});
}

Result<bool> show_fold() {
    SWATHBOOK_TRY(first, written(1, noon_ms, R"({"name": "Boom rig", "tips": 9})"));
    SWATHBOOK_TRY(second, written(2, noon_ms + minute_ms, R"({"tips": 8})"));
    std::vector<notebook::Entry> entries{first, second};
    SWATHBOOK_TRY(forwards, notebook::fold(entries));
    std::reverse(entries.begin(), entries.end());
    entries.push_back(first);  // heard twice: counts once
    SWATHBOOK_TRY(backwards, notebook::fold(entries));

    // By hand: the name was written once and stands; of the tips the later writing stands, 8.
    const std::string sprayer = forwards.body(notebook::EntryKind::sprayer, id_of(9));
    std::printf("The sprayer as it stands: %s\n", sprayer.c_str());
    const bool is_same = notebook::state_text(forwards) == notebook::state_text(backwards);
    std::printf("In the other order: %s\n", is_same ? "the same" : "DIFFERENT");

    // A changed entry no longer gives its hash.
    entries[0].body = R"({"tips":80})";
    const auto problems = notebook::verify_chains(entries);
    std::printf("After a change by hand, faults found: %zu\n", problems.size());
    return is_same && sprayer == R"({"name":"Boom rig","tips":8})" && problems.size() == 1;
}

}  // namespace
}  // namespace swathbook

int main() {
    return swathbook::examples::status_of(swathbook::show_fold());
}
