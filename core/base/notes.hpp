#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/finding.hpp"

namespace swathbook {

/// Which units an answer is written in. Inputs carry their own.
enum class UnitSystem : std::uint8_t { us, metric };

/// One line of an answer's working: enough to check it with a pencil.
struct Step {
    std::string text;  ///< what is being worked out, e.g. "Ground speed"
    std::string
        expression;      ///< the relation with the numbers put in, e.g. "176 ft / 31.5 s * 0.6818"
    std::string result;  ///< the value with its unit, e.g. "3.81 mph"
    std::string source{};  ///< publication of the relation; empty when it is unit arithmetic

    // Out of line, as those of Error.
    Step();
    Step(std::string_view what, std::string_view relation, std::string_view value,
         std::string_view publication = {});
    Step(const Step& other);
    Step(Step&& other) noexcept;
    Step& operator=(const Step& other);
    Step& operator=(Step&& other) noexcept;
    ~Step();
};

/// What an operation says beside its answer. The caller makes one, passes it down, and reads it
/// afterwards. Working is written only when wanted: formatting text costs more than the arithmetic
/// it shows.
class Notes {
public:
    explicit Notes(UnitSystem units = UnitSystem::us, bool working = false)
        : units_(units), working_(working) {}

    [[nodiscard]] UnitSystem units() const { return units_; }
    [[nodiscard]] bool wants_working() const { return working_; }

    void find(Severity severity, std::string_view code, std::string_view text,
              std::string_view source = {});
    /// Takes a callable that returns a Step, so that no text is built when nobody asked for it.
    template <class MakeStep>
    void show(MakeStep&& make_step) {
        if (working_) {
            add(std::forward<MakeStep>(make_step)());
        }
    }

    [[nodiscard]] const std::vector<Finding>& findings() const { return findings_; }
    [[nodiscard]] const std::vector<Step>& steps() const { return steps_; }

private:
    void add(Step step);

    UnitSystem units_;
    bool working_;
    std::vector<Finding> findings_;
    std::vector<Step> steps_;
};

}  // namespace swathbook
