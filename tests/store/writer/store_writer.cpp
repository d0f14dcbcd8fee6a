// Appends entries one after another and prints the id of each once it is acknowledged, until it is
// killed, or until as many as its second argument says.
#include <unistd.h>

#include <cstdlib>
#include <string>

#include "store/sqlite/sqlite_notebook.hpp"

namespace {

using namespace swathbook;

notebook::Draft draft_number(int number) {
    const std::string name = "stand " + std::to_string(number);
    const std::string boundary =
        R"({"type":"Polygon","coordinates":[[[-98.1,40.2],[-98.0,40.2],[-98.0,40.3],[-98.1,40.2]]]})";
    Uuid subject;
    subject.bytes[0] = 0x50;
    subject.bytes[15] = static_cast<std::uint8_t>(number % 7);
    if (number % 5 == 0) {
        return {"A. Field", notebook::EntryKind::stand, subject,
                R"({"name":")" + name + R"(","boundary":)" + boundary + "}"};
    }
    return {"A. Field", notebook::EntryKind::reading, subject,
            R"({"wind_speed":")" + std::to_string(number) + R"( mph"})"};
}

int write_until_killed(const std::string& path, int most) {
    auto opened = store::SqliteNotebook::open(path, {}, store::system_outside());
    if (!opened) {
        return 3;
    }
    for (int number = 0; number < most; ++number) {
        const std::vector<notebook::Draft> drafts = {draft_number(number)};
        const auto entries = (*opened)->append(drafts);
        if (!entries) {
            return 4;
        }
        const std::string line = text_of(entries->front().id) + "\n";
        if (::write(STDOUT_FILENO, line.data(), line.size()) != static_cast<ssize_t>(line.size())) {
            return 5;
        }
    }
    return 0;
}

}  // namespace

int main(int argc, char** argv) {
    return argc == 3 ? write_until_killed(argv[1], std::atoi(argv[2])) : 2;
}
