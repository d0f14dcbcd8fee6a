#pragma once

#include <string>
#include <vector>

#include "store/outside.hpp"
#include "store/sqlite/sqlite_notebook.hpp"

namespace swathbook::store {

/// What a full check of a notebook file found.
struct VerifyReport {
    std::int64_t entries = 0;
    std::int64_t blobs = 0;
    std::vector<std::string> problems;  ///< one sentence each; empty when all is well

    [[nodiscard]] bool is_sound() const { return problems.empty(); }
};

/// Checks a notebook from end to end: pages, foreign keys, every entry's hash, every chain, every
/// blob's digest. Nothing is written.
/// @errors as SqliteNotebook::open
[[nodiscard]] Result<VerifyReport> verify_notebook(const std::string& path);

/// Copies an open notebook to a new file while other programs may go on using it; the copy is
/// checked as by verify_notebook before it gets its name.
///
/// @errors conflict{path} when the file exists; io{path}; corrupt_data{path} when the copy fails
///         its check (then no file is left)
[[nodiscard]] Result<VerifyReport> back_up(SqliteNotebook& notebook, const std::string& path);

/// Makes a working notebook from a backup: checks the backup, copies it, and gives the copy a
/// device of its own, so that its chain does not fork with that of the notebook it was made from.
///
/// @errors as back_up
[[nodiscard]] Result<VerifyReport> restore(const std::string& backup, const std::string& path,
                                           const Outside& outside);

}  // namespace swathbook::store
