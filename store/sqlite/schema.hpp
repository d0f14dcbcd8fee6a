#pragma once

#include <cstddef>
#include <string>

#include "core/base/result.hpp"
#include "store/sqlite/connection.hpp"

namespace swathbook::store {

/// Checks that an open file is a notebook of ours that this version knows.
/// @errors invalid_input{path} when it is another kind of file;
///         unsupported{path} when a newer version made it
[[nodiscard]] Result<void> check_identity(Connection& connection);

/// Applies the migrations that the file lacks, each in one transaction.
/// @param most apply at most the first `most` migrations (tests make old files so)
[[nodiscard]] Result<void> migrate(Connection& connection,
                                   std::size_t most = static_cast<std::size_t>(-1));

/// True when every migration has been applied.
[[nodiscard]] Result<bool> is_current(Connection& connection);

/// Every table, index and trigger with its text, sorted: compared with store/schema.snapshot.
[[nodiscard]] Result<std::string> schema_text(Connection& connection);

}  // namespace swathbook::store
