#include "core/base/finding.hpp"

namespace swathbook {

Finding::Finding() = default;
Finding::Finding(std::string_view word, Severity how_loud, std::string_view sentences,
                 std::string_view publication)
    : code(word), severity(how_loud), text(sentences), source(publication) {}
Finding::Finding(const Finding& other) = default;
Finding::Finding(Finding&& other) noexcept = default;
Finding& Finding::operator=(const Finding& other) = default;
Finding& Finding::operator=(Finding&& other) noexcept = default;
Finding::~Finding() = default;

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
