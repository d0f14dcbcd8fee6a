#include "core/base/assert.hpp"

#include <cstdio>
#include <cstdlib>

namespace swathbook::detail {

void assertion_failed(const char* condition, const char* reason, const char* file, int line) {
    std::fprintf(stderr, "%s:%d: %s (%s)\n", file, line, reason, condition);
    std::abort();
}

}  // namespace swathbook::detail
