// swathbook-serve: the local server. Reads the order that `swathbook serve` writes (JSON) on
// standard input, prints the address to open, and runs until SIGINT or SIGTERM. A program of its
// own, so that the threads and the HTTP library cost nothing to who only asks a question.

#include <sys/stat.h>

#include <csignal>
#include <string>

#include <fmt/format.h>

#include "api/json/json.hpp"
#include "cli/files.hpp"
#include "cli/helper_program.hpp"
#include "cli/notebook/open_notebook.hpp"
#include "cli/terminal.hpp"
#include "cli/version.hpp"
#include "server/server.hpp"

namespace swathbook::cli {
namespace {

bool is_file(const std::string& path) {
    struct stat known{};
    return stat(path.c_str(), &known) == 0 && S_ISREG(known.st_mode);
}

/// The built web app: beside the program where it is installed, in web/dist of the source tree.
std::string usual_web_folder() {
    const std::string program = folder_of_this_program();
    for (const std::string_view place :
         {"/web", "/../share/swathbook/web", "/../web/dist", "/../../../web/dist"}) {
        const std::string folder = program + std::string(place);
        if (is_file(folder + "/index.html")) {
            return folder;
        }
    }
    return "";
}

Result<server::ServerOptions> options_in(const api::Json& order) {
    server::ServerOptions options;
    options.port = order.value("port", std::uint16_t{0});
    options.host_names = order.value("host_names", std::vector<std::string>());
    options.web_folder = order.value("web", "");
    if (options.web_folder.empty()) {
        options.web_folder = usual_web_folder();
    }
    if (const std::string path = order.value("notebook", ""); !path.empty()) {
        SWATHBOOK_TRY(notebook, open_notebook(path, store::OpenMode::read_write));
        options.notebook = std::move(notebook);
        options.notebook_name = path.substr(path.rfind('/') + 1);
    }
    options.paper_program = folder_of_this_program() + "/swathbook-paper";
    options.version = version;
    return options;
}

void say_what_runs(const server::Server& server, const std::string& notebook) {
    write_output(server.address() + "\n");
    std::fflush(stdout);
    write_error(notebook.empty()
                    ? "swathbook: no notebook: the app keeps what it writes in the browser "
                      "(--notebook FILE opens one)\n"
                    : fmt::format("swathbook: notebook {}\n", notebook));
    if (!server.has_web_app()) {
        write_error(
            "swathbook: no web app: it is not built, or not where it is looked for; --web FOLDER "
            "names its folder. The addresses under /api/ work.\n");
    }
    write_error("swathbook: open the address above in a browser of this computer; Ctrl-C ends\n");
}

Result<void> serve(const sigset_t& endings) {
    SWATHBOOK_TRY(text, read_file("-"));
    SWATHBOOK_TRY(order, api::parse_json(text));
    if (!order.is_object()) {
        return fail(ErrorCode::invalid_input, "",
                    "swathbook-serve is started by 'swathbook serve'.");
    }
    SWATHBOOK_TRY(options, options_in(order));
    const std::string notebook = options.notebook_name;
    SWATHBOOK_TRY(server, server::Server::start(std::move(options)));
    say_what_runs(*server, notebook);
    int signal = 0;
    sigwait(&endings, &signal);
    write_error("swathbook: ending; what was asked is finished first\n");
    pthread_sigmask(SIG_UNBLOCK, &endings, nullptr);  // a second Ctrl-C does not wait
    server->stop();
    server->wait();
    return {};
}

}  // namespace
}  // namespace swathbook::cli

int main() {
    using namespace swathbook::cli;  // NOLINT: the program is its main function
    // Kept back before the first thread starts, so that only sigwait sees them.
    sigset_t endings;
    sigemptyset(&endings);
    sigaddset(&endings, SIGINT);
    sigaddset(&endings, SIGTERM);
    pthread_sigmask(SIG_BLOCK, &endings, nullptr);
    std::signal(SIGPIPE, SIG_IGN);
    try {
        const auto served = serve(endings);
        return static_cast<int>(finish_output(served ? ExitStatus::ok : report(served.error())));
    } catch (const std::exception& error) {  // only libraries throw, and only by a fault of ours
        return static_cast<int>(report({swathbook::ErrorCode::internal, "",
                                        fmt::format("The program failed: {}.", error.what())}));
    }
}
