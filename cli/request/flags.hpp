#pragma once

#include <span>
#include <string>
#include <vector>

#include "api/describe/type.hpp"

namespace swathbook::cli {

/// One command-line flag, made from the description of one member of a request.
struct Flag {
    std::string name;                 ///< "--course-length"; of a member's member "--product.rate"
    std::vector<std::string> path;    ///< JSON keys from the request: {"product", "rate"}
    const api::Type* type = nullptr;  ///< of one value: never a list or an optional
    bool is_list = false;             ///< takes several values
    bool is_required = false;
    std::string doc;
    std::string_view sample;  ///< an amount as it might be typed; empty: the kind's own
};

/// The flags of a request: one for each member, and for members that are objects one more for each
/// of theirs (`--product JSON` or `--product.name`, `--product.rate`). Lists of objects take their
/// elements whole.
[[nodiscard]] std::vector<Flag> flags_of(const api::ObjectType& request);

/// What stands for a value in help: "LENGTH", "NUMBER", "boom|boomless", "JSON".
[[nodiscard]] std::string placeholder_of(const Flag& flag);

/// Help for a flag: what it is, whether it must be given, how it is written.
[[nodiscard]] std::string help_of(const Flag& flag);

}  // namespace swathbook::cli
