#pragma once

#include <gtest/gtest.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>
#include <memory>
#include <string>
#include <vector>

#include "store/sqlite/sqlite_notebook.hpp"

namespace swathbook::store {

inline constexpr std::int64_t april_ninth = 1775743385000;  // 2026-04-09T14:03:05Z

/// A clock that a test sets, and ids that a test can repeat.
struct TestOutside {
    std::int64_t now_ms = april_ninth;
    std::uint64_t seed = 1;

    [[nodiscard]] Outside outside() {
        return Outside{[this] { return now_ms; },
                       [this](std::span<std::uint8_t> bytes) -> Result<void> {
                           for (std::uint8_t& byte : bytes) {
                               seed = seed * 6364136223846793005 + 1442695040888963407;
                               byte = static_cast<std::uint8_t>(seed >> 56);
                           }
                           return {};
                       }};
    }
};

/// A folder that is gone after the test.
class TempFolder {
public:
    explicit TempFolder(const std::string& where = testing::TempDir()) {
        std::string pattern = where + "swathbook_store_XXXXXX";
        path_ = mkdtemp(pattern.data()) == nullptr ? "" : pattern;
    }
    ~TempFolder() {
        if (!path_.empty() && std::system(("rm -rf '" + path_ + "'").c_str()) != 0) {
            ADD_FAILURE() << "cannot remove " << path_;
        }
    }
    TempFolder(const TempFolder&) = delete;
    TempFolder& operator=(const TempFolder&) = delete;
    [[nodiscard]] std::string file(const std::string& name) const { return path_ + "/" + name; }

private:
    std::string path_;
};

inline Uuid subject_number(std::uint8_t number) {
    Uuid id;
    id.bytes[0] = 0x50;
    id.bytes[15] = number;
    return id;
}

inline notebook::Draft draft(notebook::EntryKind kind, std::uint8_t subject, std::string body) {
    return {"A. Field", kind, subject_number(subject), std::move(body)};
}

/// What a command prints, and the status it ends with.
struct CommandResult {
    int status = -1;
    std::string output;
};
inline CommandResult run_command(const std::string& command) {
    CommandResult result;
    FILE* pipe = popen((command + " 2>&1").c_str(), "r");
    if (pipe == nullptr) {
        return result;
    }
    for (int character = 0; (character = fgetc(pipe)) != EOF;) {
        result.output.push_back(static_cast<char>(character));
    }
    result.status = WEXITSTATUS(pclose(pipe));
    return result;
}

/// The validator and reader that Debian ships with GDAL, as independent judges of the file.
inline CommandResult validate_geopackage(const std::string& path) {
    return run_command("/usr/bin/python3 -m osgeo_utils.samples.validate_gpkg '" + path + "'");
}

}  // namespace swathbook::store
