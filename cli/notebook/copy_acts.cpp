// Acts on a notebook as a whole: checking it, copying it, sending its entries to another.

#include <fmt/format.h>

#include "cli/clock.hpp"
#include "cli/files.hpp"
#include "cli/notebook/acts.hpp"
#include "cli/notebook/open_notebook.hpp"
#include "cli/terminal.hpp"
#include "core/notebook/entry_text.hpp"
#include "exchange/bundle.hpp"
#include "store/sqlite/sqlite_backup.hpp"

namespace swathbook::cli {
namespace {

std::string path_of(const NotebookAsk& ask) {
    const char* usual = std::getenv("SWATHBOOK_NOTEBOOK");
    return !ask.notebook.empty() ? ask.notebook : usual != nullptr ? usual : "";
}

void print_report(std::string_view what, const store::VerifyReport& report) {
    write_output(fmt::format("{}: {} entries, {} attachments, {}\n", what, report.entries,
                             report.blobs, report.is_sound() ? "sound" : "NOT SOUND"));
    for (const std::string& problem : report.problems) {
        write_output(problem + "\n");
    }
}

Result<void> soundness(const store::VerifyReport& report) {
    if (report.is_sound()) {
        return {};
    }
    return fail(
        ErrorCode::corrupt_data, "notebook",
        fmt::format(
            "The notebook has {} faults, listed above. Keep the file as it is and restore the "
            "last sound backup: swathbook notebook restore BACKUP NEW.",
            report.problems.size()));
}

constexpr std::size_t largest_bundle = std::size_t{2} << 30;

/// A bundle, or the text that `notebook export` writes.
Result<exchange::BundleReport> take_in(store::NotebookStore& notebook, std::string_view bytes) {
    if (exchange::looks_like_bundle(bytes)) {
        return exchange::take_bundle(notebook, bytes);
    }
    SWATHBOOK_TRY(entries, notebook::read_entries(bytes));
    SWATHBOOK_TRY(merged, notebook.merge(entries));
    return exchange::BundleReport{std::move(merged), 0};
}

}  // namespace

Result<void> check_notebook(const NotebookAsk& ask) {
    const std::string path = path_of(ask);
    if (path.empty()) {
        SWATHBOOK_CHECK(open_notebook(path, store::OpenMode::read_only));
    }
    SWATHBOOK_TRY(report, store::verify_notebook(path));
    print_report(path, report);
    return soundness(report);
}

Result<void> back_up_notebook(const NotebookAsk& ask) {
    SWATHBOOK_TRY(notebook, open_notebook(ask.notebook, store::OpenMode::read_write));
    SWATHBOOK_TRY(report, store::back_up(*notebook, ask.file));
    print_report(ask.file, report);
    return {};
}

Result<void> restore_notebook(const NotebookAsk& ask) {
    SWATHBOOK_TRY(report, store::restore(ask.which, ask.file, store::system_outside()));
    print_report(ask.file, report);
    return {};
}

Result<void> export_entries(const NotebookAsk& ask) {
    SWATHBOOK_TRY(notebook, open_notebook(ask.notebook, store::OpenMode::read_only));
    if (ask.file.ends_with(".zip")) {
        SWATHBOOK_TRY(bundle, exchange::make_bundle(*notebook, now_text()));
        return write_file(ask.file, bundle);
    }
    std::vector<notebook::Entry> entries;
    SWATHBOOK_CHECK(
        notebook->each_entry(0, [&entries](std::int64_t, const notebook::EntryView& entry) {
            entries.push_back(notebook::copy_of(entry));
            return Result<void>();
        }));
    const std::string text = notebook::write_entries(entries);
    if (ask.file.empty() || ask.file == "-") {
        write_output(text);
        return {};
    }
    return write_file(ask.file, text);
}

Result<void> merge_entries(const NotebookAsk& ask) {
    SWATHBOOK_TRY(text, read_file(ask.file, largest_bundle));
    SWATHBOOK_TRY(notebook, open_notebook(ask.notebook, store::OpenMode::read_write));
    SWATHBOOK_TRY(taken, take_in(*notebook, text));
    const store::MergeReport& merged = taken.entries;
    write_output(fmt::format(
        "{} entries added, {} were here already, {} refused{}\n", merged.added, merged.already_here,
        merged.refused.size(),
        taken.blobs == 0 ? std::string() : fmt::format("; {} attachments are here", taken.blobs)));
    for (const store::Refusal& refusal : merged.refused) {
        write_output(fmt::format("{}: {} [{}]\n", text_of(refusal.entry), refusal.error.detail,
                                 word_of(refusal.error.code)));
    }
    if (!merged.refused.empty()) {
        return fail(ErrorCode::corrupt_data, ask.file,
                    fmt::format("{} entries were refused, listed above; the others were kept.",
                                merged.refused.size()));
    }
    return {};
}

}  // namespace swathbook::cli
