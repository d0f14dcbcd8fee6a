#pragma once

#include <string_view>

#include "server/desk.hpp"
#include "server/http.hpp"

/// Entries and attachments in and out of the notebook; docs/serving.md is the protocol. Each
/// answer is given once what it says is on disk.
namespace swathbook::server {

/// GET /api/sync/notebook -> {"device", "notebook", "name", "cursor", "entries"}
[[nodiscard]] Response sync_notebook(Desk& desk, const Request& request, std::string_view rest);

/// POST /api/sync/push, entries as text -> {"stored": [id], "refused": [{"id", "code", "detail"}]}.
/// An id is in "stored" when the notebook now holds exactly the entry that was sent; one that was
/// sent both right and wrong is in "refused" only. 400 when the text cannot be read: then nothing
/// was stored.
[[nodiscard]] Response sync_push(Desk& desk, const Request& request, std::string_view rest);

/// GET /api/sync/pull?after=N&limit=M -> {"cursor", "more", "entries"}: the entries after number N,
/// at most M and about 4 MiB, but at least one. 409 when N is beyond the last: the cursor is of
/// another notebook.
[[nodiscard]] Response sync_pull(Desk& desk, const Request& request, std::string_view rest);

/// GET and HEAD /api/sync/blob/DIGEST: the bytes.
[[nodiscard]] Response sync_get_blob(Desk& desk, const Request& request, std::string_view digest);
/// PUT /api/sync/blob/DIGEST: keeps the bytes; twice is once. 422 when they do not give the digest.
[[nodiscard]] Response sync_put_blob(Desk& desk, const Request& request, std::string_view digest);

}  // namespace swathbook::server
