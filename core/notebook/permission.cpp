#include "core/notebook/permission.hpp"

#include <fmt/format.h>

namespace swathbook::notebook {

Result<void> check_permitted(EntryKind kind, const Uuid& record, bool is_closed) {
    if (kind == EntryKind::record && is_closed) {
        return fail(ErrorCode::not_permitted, "subject",
                    fmt::format("Record {} is closed and never changes. Add an amendment with a "
                                "date and a reason.",
                                text_of(record)));
    }
    if (kind == EntryKind::amendment && !is_closed) {
        return fail(ErrorCode::not_permitted, "subject",
                    fmt::format("Record {} is not closed: there is nothing to amend. Change the "
                                "record itself.",
                                text_of(record)));
    }
    return {};
}

}  // namespace swathbook::notebook
