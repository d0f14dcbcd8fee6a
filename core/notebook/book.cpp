#include "core/notebook/book.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/assert.hpp"
#include "core/notebook/permission.hpp"

namespace swathbook::notebook {

Result<bool> Book::add(const EntryView& entry, std::int64_t now_ms) {
    SWATHBOOK_CHECK(check_entry(entry, now_ms));
    const std::uint32_t number = ids_.number_of(
        {reinterpret_cast<const char*>(entry.id.bytes.data()), entry.id.bytes.size()});
    if (number < hashes_.size()) {
        if (hashes_[number] == entry.hash) {
            return false;
        }
        return fail(ErrorCode::conflict, "id",
                    fmt::format("Another entry with the id {} is already here. One of the two was "
                                "forged or damaged.",
                                text_of(entry.id)));
    }
    hashes_.push_back(entry.hash);
    SWATHBOOK_CHECK(fold_.add(entry));
    head_.last = std::max(head_.last, entry.made);
    const bool is_later = head_.hash == Digest{} || end_of_chain_ < entry.made;
    if (entry.device == device_ && is_later) {
        head_.hash = entry.hash;
        end_of_chain_ = entry.made;
    }
    return true;
}

Result<std::vector<Entry>> Book::seal(std::span<const Draft> drafts, std::int64_t now_ms,
                                      std::span<const RandomBytes> random) {
    SWATHBOOK_ASSERT(drafts.size() == random.size(), "each draft has its random bytes");
    const Fold& now = state();
    ChainHead head = head_;
    std::vector<Entry> sealed;
    const auto closes = [](const Uuid& record) {
        return [&record](const Entry& entry) {
            return entry.kind == EntryKind::record && entry.subject == record &&
                   closes_record(entry.body);
        };
    };
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        const Draft& draft = drafts[i];
        const bool is_closed = now.is_closed(draft.subject) ||
                               std::any_of(sealed.begin(), sealed.end(), closes(draft.subject));
        SWATHBOOK_CHECK(check_permitted(draft.kind, draft.subject, is_closed));
        SWATHBOOK_TRY(entry, notebook::seal(draft, device_, head, now_ms, random[i]));
        head = {entry.made, entry.hash};
        sealed.push_back(std::move(entry));
    }
    return sealed;
}

const Fold& Book::state() {
    fold_.settle();
    return fold_;
}

}  // namespace swathbook::notebook
