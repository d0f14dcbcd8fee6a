#include "cli/files.hpp"

#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>

#include <fmt/format.h>

namespace swathbook::cli {
namespace {

struct CloseFile {
    void operator()(std::FILE* file) const { std::fclose(file); }
};
using File = std::unique_ptr<std::FILE, CloseFile>;

auto failed(const std::string& name, std::string_view act) {
    const int fault = errno;
    return fail(fault == ENOENT ? ErrorCode::not_found : ErrorCode::io, "",
                fmt::format("The file \"{}\" cannot be {}: {}.", name, act, std::strerror(fault)));
}

Result<std::string> read_all(std::FILE* from, const std::string& name, std::size_t most) {
    std::string content;
    std::array<char, 1U << 16U> part{};
    while (const std::size_t got = std::fread(part.data(), 1, part.size(), from)) {
        content.append(part.data(), got);
        if (content.size() > most) {
            return fail(
                ErrorCode::out_of_range, "",
                fmt::format("\"{}\" holds more than {} bytes, the most that is read. Split it.",
                            name, most));
        }
    }
    if (std::ferror(from) != 0) {
        return failed(name, "read");
    }
    return content;
}

}  // namespace

Result<std::string> read_file(const std::string& name, std::size_t most) {
    if (name == "-") {
        return read_all(stdin, "standard input", most);
    }
    const File file(std::fopen(name.c_str(), "rb"));
    if (!file) {
        return failed(name, "opened");
    }
    return read_all(file.get(), name, most);
}

Result<void> write_file(const std::string& name, std::string_view content) {
    const std::string beside = fmt::format("{}.{}.part", name, getpid());
    File file(std::fopen(beside.c_str(), "wbx"));
    if (!file) {
        return failed(beside, "made");
    }
    const bool is_written =
        std::fwrite(content.data(), 1, content.size(), file.get()) == content.size() &&
        std::fflush(file.get()) == 0 && fsync(fileno(file.get())) == 0;
    if (!is_written || std::fclose(file.release()) != 0 ||
        std::rename(beside.c_str(), name.c_str()) != 0) {
        auto fault = failed(name, "written");
        std::remove(beside.c_str());
        return fault;
    }
    return {};
}

}  // namespace swathbook::cli
