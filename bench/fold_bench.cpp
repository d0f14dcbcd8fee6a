// How long the state of a long notebook takes: one million entries read from its file and folded,
// beside the same fold of the same file in Python with its sqlite3 and json modules. Both states
// are written as text and their digests compared: a fast wrong state is no state.
#include <fmt/format.h>
#include <sys/resource.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <string>
#include <vector>

#include "core/base/blake2b.hpp"
#include "store/sqlite/sqlite_notebook.hpp"

namespace {

using namespace swathbook;
using notebook::EntryKind;

constexpr std::size_t entry_count = 1000000;
constexpr std::size_t batch = 20000;
constexpr std::uint32_t thing_count = 100000;
constexpr std::uint32_t device_count = 20;
constexpr std::int64_t april_ninth = 1775743385000;
constexpr double target_seconds = 3.0;

/// The same numbers in every run.
class Dice {
public:
    std::uint32_t below(std::uint32_t limit) {
        state_ = state_ * 6364136223846793005 + 1442695040888963407;
        return static_cast<std::uint32_t>((state_ >> 33) % limit);
    }

private:
    std::uint64_t state_ = 20260409;
};

Uuid id_number(std::uint8_t family, std::uint32_t number) {
    Uuid id;
    id.bytes[0] = family;
    for (std::size_t i = 0; i < 4; ++i) {
        id.bytes[12 + i] = static_cast<std::uint8_t>(number >> (24 - 8 * i));
    }
    return id;
}

std::string some_body(Dice& dice, EntryKind kind) {
    constexpr std::array names = {"area",  "note",  "pressure", "rate",
                                  "speed", "swath", "wind_dir", "wind_speed"};
    std::string body = "{";
    if (kind == EntryKind::record && dice.below(5) == 0) {
        body += R"("closed":true,)";
    }
    const std::uint32_t first = dice.below(5);
    for (std::uint32_t i = first; i < first + 4; ++i) {
        body += i > first ? "," : "";
        body += dice.below(50) == 0 ? fmt::format("\"{}\":null", names[i])
                                    : fmt::format("\"{}\":\"{}.{} gal/ac\"", names[i],
                                                  dice.below(100), dice.below(10));
    }
    return body + "}";
}

/// Entries of twenty devices whose clocks disagree, so that many arrive out of order.
class Writers {
public:
    notebook::Entry next(Dice& dice, std::size_t number) {
        constexpr std::array kinds = {EntryKind::job, EntryKind::load, EntryKind::reading,
                                      EntryKind::calibration, EntryKind::record};
        const std::uint32_t device = dice.below(device_count);
        const std::uint32_t thing = dice.below(thing_count);
        const EntryKind kind = kinds[thing % 20 == 0 ? 4 : thing % 4];
        const std::int64_t now = april_ninth + static_cast<std::int64_t>(number) + device * 3000;
        std::array<std::uint8_t, 10> random{};
        for (std::uint8_t& byte : random) {
            byte = static_cast<std::uint8_t>(dice.below(256));
        }
        const notebook::Draft draft{"A. Field", kind, id_number(0x50, thing),
                                    some_body(dice, kind)};
        notebook::ChainHead& head = heads_[device];
        auto entry = notebook::seal(draft, id_number(0xD0, device), head, now, random).value();
        head = {entry.made, entry.hash};
        return entry;
    }

private:
    std::array<notebook::ChainHead, device_count> heads_;
};

bool write_notebook(store::SqliteNotebook& notebook) {
    Dice dice;
    Writers writers;
    for (std::size_t done = 0; done < entry_count; done += batch) {
        std::vector<notebook::Entry> entries;
        for (std::size_t i = 0; i < batch; ++i) {
            entries.push_back(writers.next(dice, done + i));
        }
        const auto merged = notebook.merge(entries);
        if (!merged || merged->added != batch) {
            fmt::print(stderr, "the notebook could not be written\n");
            return false;
        }
    }
    return true;
}

/// Processor time of this process: the figure stays the same when other programs are busy.
double processor_seconds() {
    return static_cast<double>(std::clock()) / static_cast<double>(CLOCKS_PER_SEC);
}

/// Megabytes this process has held at most.
double peak_mb() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    return static_cast<double>(usage.ru_maxrss) / 1024.0;
}

struct Rival {
    double seconds = 0.0;
    std::string digest;
};

Rival ask_python(const std::string& path) {
    Rival rival;
    const std::string command =
        fmt::format("/usr/bin/python3 '{}/fold_by_python.py' '{}'", SWATHBOOK_BENCH_FOLDER, path);
    FILE* pipe = popen(command.c_str(), "r");
    std::array<char, 65> digest{};
    if (pipe != nullptr && std::fscanf(pipe, "%lf %64s\n", &rival.seconds, digest.data()) == 2) {
        rival.digest = digest.data();
    }
    if (pipe != nullptr) {
        pclose(pipe);
    }
    return rival;
}

int compare(const std::string& path) {
    const store::Outside outside = store::system_outside();
    {
        auto made = store::SqliteNotebook::open(path, {store::OpenMode::create}, outside);
        if (!made || !write_notebook(**made)) {
            return 1;
        }
    }
    auto opened = store::SqliteNotebook::open(path, {store::OpenMode::read_only}, outside);
    if (!opened) {
        fmt::print(stderr, "{}\n", opened.error().detail);
        return 1;
    }
    const double memory_before = peak_mb();
    const double start = processor_seconds();
    const auto state = (*opened)->state();
    const double seconds = processor_seconds() - start;
    const double memory = peak_mb() - memory_before;
    if (!state) {
        fmt::print(stderr, "{}\n", state.error().detail);
        return 1;
    }
    const std::string digest = hex_of(blake2b_256(notebook::state_text(*state)));
    const std::size_t conflicts = state->conflicts().size();
    const Rival rival = ask_python(path);
    if (rival.digest != digest || conflicts == 0) {
        fmt::print(stderr, "the states differ: {} here, {} by Python\n", digest, rival.digest);
        return 1;
    }
    fmt::print(
        "fold: {} entries read and folded in {:.2f} s of one processor (target {}), {:.0f} MB more "
        "memory\n",
        entry_count, seconds, target_seconds, memory);
    fmt::print(
        "Python with sqlite3 and json, same file: {:.2f} s; ratio {:.1f}; same state, {} "
        "conflicts\n",
        rival.seconds, rival.seconds / seconds, conflicts);
    return seconds <= target_seconds ? 0 : 2;
}

}  // namespace

int main() {
    std::string folder = "/tmp/swathbook_fold_XXXXXX";
    if (mkdtemp(folder.data()) == nullptr) {
        return 1;
    }
    const std::string path = folder + "/bench.gpkg";
    const int status = compare(path);
    std::remove(path.c_str());
    std::remove((path + "-journal").c_str());
    rmdir(folder.c_str());
    return status;
}
