#pragma once

#include <span>
#include <string>
#include <vector>

#include "api/json/json.hpp"
#include "cli/request/flags.hpp"
#include "core/base/result.hpp"

namespace swathbook::cli {

/// Makes JSON of the words that stood after a flag.
///   * words of one value are joined, so that `--width 26 ft` needs no quotes;
///   * in a list, a word that begins with a digit, a sign or a bracket begins the next value:
///     `--catches 14.1 fl oz 13.8 fl oz` are two;
///     and `--flows 0.405 0.410 0.398 gal/min` are three flows;
///   * `@FILE` is what the file holds; `{` and `[` begin JSON; objects may be 'name=value;
///   name=value'.
/// What a value may be is for the operation to judge: it is passed on as it was typed.
/// @errors invalid_input or not_found, with the flag as field
[[nodiscard]] Result<api::Json> value_of(const Flag& flag, std::span<const std::string> words);

/// Puts a value where the flag's path says, making the objects on the way.
/// @errors inconsistent when the way leads through something that is no object
[[nodiscard]] Result<void> put(api::Json& request, const Flag& flag, api::Json value);

}  // namespace swathbook::cli
