// swathbook-paper: makes the PDF (or HTML) of a packet or of the blank worksheet. Reads the order
// that `swathbook packet` or `swathbook worksheet` writes (JSON) on standard input; its one
// argument is the file to write, or "-" for standard output: then a fault is told as the JSON of a
// refused operation. A program of its own, because fonts and PDF take longer to load than all the
// other answers take to give.

#include <string>

#include "api/call.hpp"
#include "cli/files.hpp"
#include "cli/terminal.hpp"
#include "reports/html/render.hpp"
#include "reports/order.hpp"
#include "reports/pdf/render.hpp"

namespace swathbook::cli {
namespace {

constexpr std::string_view standard_output = "-";

/// A page for a browser when the file is named so, else PDF.
Result<std::string> printed_for(const std::string& file, const reports::Document& document) {
    if (file.ends_with(".html")) {
        return reports::html::page(document);
    }
    return reports::pdf::render(document);
}

Result<void> print(const std::string& file) {
    SWATHBOOK_TRY(text, read_file("-"));
    SWATHBOOK_TRY(document, reports::document_of(text));
    SWATHBOOK_TRY(bytes, printed_for(file, document));
    if (file == standard_output) {
        write_output(bytes);
        return {};
    }
    SWATHBOOK_CHECK(write_file(file, bytes));
    write_output(file + "\n");
    return {};
}

ExitStatus tell(const std::string& file, const Error& error) {
    if (file != standard_output) {
        return report(error);
    }
    write_error(api::error_json(error) + "\n");
    return exit_status_of(error.code);
}

}  // namespace
}  // namespace swathbook::cli

int main(int count, char** words) {
    using namespace swathbook::cli;  // NOLINT: the program is its main function
    if (count != 2) {
        return static_cast<int>(
            usage_fault("swathbook-paper is started by 'swathbook packet'.", "packet"));
    }
    const auto printed = print(words[1]);
    return static_cast<int>(
        finish_output(printed ? ExitStatus::ok : tell(words[1], printed.error())));
}
