#pragma once

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <cstdlib>
#include <string>
#include <vector>

#include <gtest/gtest.h>

extern char** environ;

namespace swathbook::tests {

/// `swathbook serve` as a process of its own.
class ServeProcess {
public:
    explicit ServeProcess(std::vector<std::string> options) {
        options.insert(options.begin(), {SWATHBOOK_PROGRAM, "serve"});
        std::array<int, 2> ends{-1, -1};
        EXPECT_EQ(pipe2(ends.data(), O_CLOEXEC), 0);
        said_ = ends[0];
        posix_spawn_file_actions_t actions;
        posix_spawn_file_actions_init(&actions);
        posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO);
        posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
        std::vector<char*> words;
        for (std::string& option : options) {
            words.push_back(option.data());
        }
        words.push_back(nullptr);
        EXPECT_EQ(posix_spawn(&child_, SWATHBOOK_PROGRAM, &actions, nullptr, words.data(), environ),
                  0);
        posix_spawn_file_actions_destroy(&actions);
        close(ends[1]);
        for (char letter = 0; read(said_, &letter, 1) == 1 && letter != '\n';) {
            address_ += letter;
        }
    }
    ~ServeProcess() {
        close(said_);
        if (child_ > 0) {
            end(SIGKILL);
        }
    }
    ServeProcess(const ServeProcess&) = delete;
    ServeProcess& operator=(const ServeProcess&) = delete;

    /// "http://localhost:41234/#token=..."; empty when it did not start.
    [[nodiscard]] const std::string& address() const { return address_; }
    [[nodiscard]] std::uint16_t port() const {
        const std::size_t colon = address_.rfind(':');
        return static_cast<std::uint16_t>(std::atoi(address_.c_str() + colon + 1));
    }
    [[nodiscard]] std::string token() const { return address_.substr(address_.find('=') + 1); }
    void tell(int signal) const { kill(child_, signal); }
    /// Waits for the end; the exit status, or 128 + signal.
    int wait() {
        int status = 0;
        waitpid(child_, &status, 0);
        child_ = -1;
        return WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
    }
    int end(int signal) {
        tell(signal);
        return wait();
    }

private:
    pid_t child_ = -1;
    int said_ = -1;
    std::string address_;
};

}  // namespace swathbook::tests
