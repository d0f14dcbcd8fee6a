// Any bytes as the request of any operation: it is answered or refused, and what comes back is JSON
// that reads back. The first line of the input is the operation's name; a name that does not exist
// stands for one that does, so that no input is wasted.

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "api/call.hpp"
#include "api/operation.hpp"

namespace {

using namespace swathbook;  // NOLINT: a program of one function

std::string_view operation_in(std::string_view line) {
    if (api::find_operation(line)) {
        return line;
    }
    std::size_t sum = 0;
    for (const char letter : line) {
        sum = sum * 31 + static_cast<unsigned char>(letter);
    }
    const auto all = api::operations();
    return all[sum % all.size()].name;
}

void demand(bool holds) {
    if (!holds) {
        std::abort();
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view input(reinterpret_cast<const char*>(data), size);
    const std::size_t line_end = std::min(input.find('\n'), input.size());
    const std::string_view request = input.substr(std::min(line_end + 1, input.size()));
    const api::Called called = api::call(operation_in(input.substr(0, line_end)), request);
    const auto answer = api::parse_json(called.json);
    demand(answer.has_value() && answer->is_object());
    demand(answer->contains("error") == called.error.has_value());
    if (called.error) {
        const api::Json& error = (*answer)["error"];
        demand(error.contains("code") && error.contains("field") && error.contains("detail"));
        demand(*called.error != ErrorCode::internal);
    }
    return 0;
}
