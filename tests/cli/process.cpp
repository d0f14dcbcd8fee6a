#include "tests/cli/process.hpp"

#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

#include <gtest/gtest.h>

namespace swathbook::tests {
namespace {

std::string content_of(const std::filesystem::path& file) {
    std::ifstream stream(file, std::ios::binary);
    std::stringstream text;
    text << stream.rdbuf();
    return text.str();
}

std::vector<char*> pointers_to(std::vector<std::string>& words) {
    std::vector<char*> pointers;
    for (std::string& word : words) {
        pointers.push_back(word.data());
    }
    pointers.push_back(nullptr);
    return pointers;
}

/// A folder of its own for the streams of one process.
class StreamFolder {
public:
    StreamFolder() {
        std::string pattern =
            (std::filesystem::temp_directory_path() / "swathbook-XXXXXX").string();
        EXPECT_NE(mkdtemp(pattern.data()), nullptr);
        path_ = pattern;
    }
    StreamFolder(const StreamFolder&) = delete;
    StreamFolder& operator=(const StreamFolder&) = delete;
    ~StreamFolder() { std::filesystem::remove_all(path_); }

    [[nodiscard]] std::string file(const char* name) const { return (path_ / name).string(); }

private:
    std::filesystem::path path_;
};

}  // namespace

Ended run(const Start& start) {
    const StreamFolder folder;
    std::ofstream(folder.file("in"), std::ios::binary) << start.input;
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, 0, folder.file("in").c_str(), O_RDONLY, 0);
    posix_spawn_file_actions_addopen(&actions, 1, folder.file("out").c_str(), O_WRONLY | O_CREAT,
                                     0600);
    posix_spawn_file_actions_addopen(&actions, 2, folder.file("err").c_str(), O_WRONLY | O_CREAT,
                                     0600);

    std::vector<std::string> words = start.words;
    std::vector<std::string> environment = start.environment;
    environment.push_back(std::string("PATH=") + std::getenv("PATH"));
    for (const std::string name : {"LSAN_OPTIONS", "TSAN_OPTIONS"}) {  // of a sanitized build
        if (const char* options = std::getenv(name.c_str())) {
            environment.push_back(name + "=" + options);
        }
    }
    pid_t child = 0;
    const int fault = posix_spawnp(&child, words[0].c_str(), &actions, nullptr,
                                   pointers_to(words).data(), pointers_to(environment).data());
    posix_spawn_file_actions_destroy(&actions);
    EXPECT_EQ(fault, 0) << "cannot start " << words[0];
    int ended = 0;
    if (fault != 0 || waitpid(child, &ended, 0) != child) {
        return {};
    }
    return {WIFEXITED(ended) ? WEXITSTATUS(ended) : 128 + WTERMSIG(ended),
            content_of(folder.file("out")), content_of(folder.file("err"))};
}

Ended swathbook(std::vector<std::string> arguments, std::string input,
                std::vector<std::string> environment) {
    arguments.insert(arguments.begin(), SWATHBOOK_PROGRAM);
    return run({std::move(arguments), std::move(input), std::move(environment)});
}

Ended swathbook_line(const std::string& line) {
    const std::string folder = std::filesystem::path(SWATHBOOK_PROGRAM).parent_path().string();
    return run({{"/bin/bash", "-c", "PATH=" + folder + ":$PATH; " + line}, "", {}});
}

}  // namespace swathbook::tests
