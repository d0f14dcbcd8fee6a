#include <fcntl.h>
#include <poll.h>
#include <spawn.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <csignal>

#include "server/paper.hpp"

extern char** environ;

namespace swathbook::server {
namespace {

constexpr int most_milliseconds = 60'000;

/// A file that exists only in memory: no pipe can fill up, nothing is left behind.
class MemoryFile {
public:
    MemoryFile() : descriptor_(memfd_create("swathbook", MFD_CLOEXEC)) {}
    ~MemoryFile() {
        if (descriptor_ >= 0) {
            close(descriptor_);
        }
    }
    MemoryFile(const MemoryFile&) = delete;
    MemoryFile& operator=(const MemoryFile&) = delete;

    [[nodiscard]] int descriptor() const { return descriptor_; }
    [[nodiscard]] bool fill(std::string_view text) const {
        while (!text.empty()) {
            const ssize_t written = write(descriptor_, text.data(), text.size());
            if (written <= 0) {
                return false;
            }
            text.remove_prefix(static_cast<std::size_t>(written));
        }
        return lseek(descriptor_, 0, SEEK_SET) == 0;
    }
    [[nodiscard]] std::string content() const {
        struct stat known{};
        std::string text(
            fstat(descriptor_, &known) == 0 ? static_cast<std::size_t>(known.st_size) : 0, '\0');
        const ssize_t got = pread(descriptor_, text.data(), text.size(), 0);
        text.resize(got > 0 ? static_cast<std::size_t>(got) : 0);
        return text;
    }

private:
    int descriptor_;
};

/// Waits until the child has ended; true when it did so by itself, in time, with status 0.
bool ended_well(pid_t child) {
    // By number: the header of Debian 12's C library lacks the words that C++ needs.
    const int watch = static_cast<int>(syscall(SYS_pidfd_open, child, 0));
    pollfd news{watch, POLLIN, 0};
    if (watch < 0 || poll(&news, 1, most_milliseconds) != 1) {
        kill(child, SIGKILL);
    }
    if (watch >= 0) {
        close(watch);
    }
    int status = 0;
    return waitpid(child, &status, 0) == child && WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

}  // namespace

ProgramEnd run_program(const std::string& path, const std::string& argument,
                       std::string_view input) {
    const MemoryFile in;
    const MemoryFile out;
    const MemoryFile err;
    if (err.descriptor() < 0 || !in.fill(input)) {
        return {};
    }
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_adddup2(&actions, in.descriptor(), STDIN_FILENO);
    posix_spawn_file_actions_adddup2(&actions, out.descriptor(), STDOUT_FILENO);
    posix_spawn_file_actions_adddup2(&actions, err.descriptor(), STDERR_FILENO);
    posix_spawn_file_actions_addclosefrom_np(&actions, STDERR_FILENO + 1);  // sockets stay here
    // Signals that this process keeps back are not kept back there.
    posix_spawnattr_t attributes;
    posix_spawnattr_init(&attributes);
    sigset_t none;
    sigemptyset(&none);
    posix_spawnattr_setsigmask(&attributes, &none);
    posix_spawnattr_setflags(&attributes, POSIX_SPAWN_SETSIGMASK);
    std::string program = path;
    std::string word = argument;
    const std::array<char*, 3> words{program.data(), word.data(), nullptr};
    pid_t child = 0;
    const int fault =
        posix_spawn(&child, path.c_str(), &actions, &attributes, words.data(), environ);
    posix_spawn_file_actions_destroy(&actions);
    posix_spawnattr_destroy(&attributes);
    if (fault != 0) {
        return {};
    }
    const bool is_well = ended_well(child);
    return {is_well, out.content(), err.content()};
}

}  // namespace swathbook::server
