#pragma once

#include <string>

#include "api/describe/type.hpp"
#include "api/json/json.hpp"
#include "cli/terminal.hpp"

namespace swathbook::cli {

/// An answer as a person reads it: values with units and 95 % intervals, tables for lists, then the
/// findings, loudest first, then the working when the answer carries it. Which values there are, in
/// which order and of what type comes from the description of the answer.
[[nodiscard]] std::string print_answer(const api::ObjectType& type, const api::Json& answer,
                                       const Paper& paper);

/// Only the plain values and the findings: what fits on a small screen.
[[nodiscard]] std::string print_summary(const api::ObjectType& type, const api::Json& answer,
                                        const Paper& paper);

/// One value in words: "3.81 mph (3.79 to 3.83)", "yes", "boomless", "3, 4, 5".
[[nodiscard]] std::string value_text(const api::Json& value);
/// The same, of a member of an answer: a word for programs is written as words, "flow and speed".
[[nodiscard]] std::string value_text(const api::Field& field, const api::Json& value);

}  // namespace swathbook::cli
