#include "core/base/finding.hpp"

namespace swathbook {

std::string_view word_of(Severity severity) {
    switch (severity) {
        case Severity::note: return "note";
        case Severity::advice: return "advice";
        case Severity::warning: return "warning";
        case Severity::stop: return "stop";
    }
    return "note";
}

}  // namespace swathbook
