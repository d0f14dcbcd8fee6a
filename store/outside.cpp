#include "store/outside.hpp"

#include <sys/random.h>

#include <cerrno>
#include <ctime>

namespace swathbook::store {

namespace {

std::int64_t system_now_ms() {
    std::timespec now{};
    std::timespec_get(&now, TIME_UTC);
    return static_cast<std::int64_t>(now.tv_sec) * 1000 + now.tv_nsec / 1000000;
}

Result<void> system_random(std::span<std::uint8_t> bytes) {
    std::size_t filled = 0;
    while (filled < bytes.size()) {
        const ssize_t got = getrandom(bytes.data() + filled, bytes.size() - filled, 0);
        if (got < 0 && errno != EINTR) {
            return fail(ErrorCode::io, "",
                        "The system gave no random bytes for an id. Try again; if it stays so, "
                        "this system cannot keep a notebook.");
        }
        filled += got > 0 ? static_cast<std::size_t>(got) : 0;
    }
    return {};
}

}  // namespace

Outside system_outside() {
    return Outside{&system_now_ms, &system_random};
}

}  // namespace swathbook::store
