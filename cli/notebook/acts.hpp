#pragma once

#include <string>
#include <vector>

#include "cli/exit_status.hpp"
#include "core/base/result.hpp"

/// What `swathbook notebook ...` does. Each act opens the notebook, does one thing, and says what
/// it did on standard output.
namespace swathbook::cli {

struct NotebookAsk {
    std::string notebook;  ///< --notebook
    std::string author;    ///< --author
    std::string which;     ///< a thing: id, beginning of an id, or name
    std::string kind;      ///< "sprayer", "job", ...
    std::string file;      ///< to make, to read or to write
    std::string body;      ///< JSON or @FILE
    std::string field;
    std::string date;
    std::string reason;
    std::vector<std::string> words;  ///< name=value
    bool as_json = false;
};

[[nodiscard]] Result<void> make_notebook(const NotebookAsk& ask);
[[nodiscard]] Result<void> add_entry(const NotebookAsk& ask);
[[nodiscard]] Result<void> list_things(const NotebookAsk& ask);
[[nodiscard]] Result<void> show_thing(const NotebookAsk& ask);
[[nodiscard]] Result<void> show_history(const NotebookAsk& ask);
[[nodiscard]] Result<void> close_record(const NotebookAsk& ask);
[[nodiscard]] Result<void> amend_record(const NotebookAsk& ask);
[[nodiscard]] Result<void> check_notebook(const NotebookAsk& ask);
[[nodiscard]] Result<void> back_up_notebook(const NotebookAsk& ask);
[[nodiscard]] Result<void> restore_notebook(const NotebookAsk& ask);
[[nodiscard]] Result<void> export_entries(const NotebookAsk& ask);
[[nodiscard]] Result<void> merge_entries(const NotebookAsk& ask);

}  // namespace swathbook::cli
