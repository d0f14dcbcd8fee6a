#include "cli/clock.hpp"

#include <chrono>

#include "core/notebook/hybrid_time.hpp"

namespace swathbook::cli {

std::string now_text() {
    const auto now = std::chrono::system_clock::now().time_since_epoch();
    return notebook::utc_text(std::chrono::duration_cast<std::chrono::seconds>(now).count() * 1000);
}

}  // namespace swathbook::cli
