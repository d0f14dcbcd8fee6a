#include "cli/helper_program.hpp"

#include <sys/mman.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <climits>
#include <cstdio>
#include <cstring>

#include <fmt/format.h>

#include "cli/terminal.hpp"

namespace swathbook::cli {
namespace {

/// Puts the text into a file in memory that becomes standard input.
bool feed(std::string_view input) {
    const int file = memfd_create("swathbook", 0);
    if (file < 0) {
        return false;
    }
    while (!input.empty()) {
        const ssize_t written = write(file, input.data(), input.size());
        if (written <= 0) {
            return false;
        }
        input.remove_prefix(static_cast<std::size_t>(written));
    }
    return lseek(file, 0, SEEK_SET) == 0 && dup2(file, STDIN_FILENO) == STDIN_FILENO;
}

}  // namespace

std::string folder_of_this_program() {
    std::array<char, PATH_MAX> path{};
    const ssize_t size = readlink("/proc/self/exe", path.data(), path.size());
    const std::string_view whole(path.data(), size > 0 ? static_cast<std::size_t>(size) : 0);
    return std::string(whole.substr(0, whole.rfind('/')));
}

ExitStatus run_helper(const std::string& name, const std::vector<std::string>& arguments,
                      std::string_view input) {
    std::string path = folder_of_this_program() + "/" + name;
    std::vector<std::string> words = arguments;
    words.insert(words.begin(), path);
    std::vector<char*> pointers;
    for (std::string& word : words) {
        pointers.push_back(word.data());
    }
    pointers.push_back(nullptr);
    std::fflush(stdout);
    if (feed(input)) {
        execv(path.c_str(), pointers.data());
    }
    return report(
        {ErrorCode::io, "",
         fmt::format("The program \"{}\" cannot be started: {}. It belongs beside swathbook; build "
                     "or install both.",
                     path, std::strerror(errno))});
}

}  // namespace swathbook::cli
