#include "core/base/notes.hpp"

namespace swathbook {

Step::Step() = default;
Step::Step(std::string_view what, std::string_view relation, std::string_view value,
           std::string_view publication)
    : text(what), expression(relation), result(value), source(publication) {}
Step::Step(const Step& other) = default;
Step::Step(Step&& other) noexcept = default;
Step& Step::operator=(const Step& other) = default;
Step& Step::operator=(Step&& other) noexcept = default;
Step::~Step() = default;

void Notes::find(Severity severity, std::string_view code, std::string_view text,
                 std::string_view source) {
    findings_.emplace_back(code, severity, text, source);
}

void Notes::add(Step step) {
    steps_.push_back(std::move(step));
}

}  // namespace swathbook
