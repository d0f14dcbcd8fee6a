#pragma once

#include <string_view>
#include <vector>

#include "core/notebook/record_check.hpp"
#include "core/notebook/rule_tables.hpp"

namespace swathbook::notebook::detail {

/// Fields that a record is taken to hold: those listed, and those the request itself answers.
[[nodiscard]] std::vector<std::string_view> held_fields(const RecordCheckRequest& request);

/// Sorts the requirements of one authority into missing, to_decide, advised and present.
void judge_fields(const RecordCheckRequest& request, const std::vector<std::string_view>& held,
                  AuthorityCheck& check);

[[nodiscard]] const FieldRow* find_field(std::string_view key);
/// Title of a source id; the id itself when it is unknown.
[[nodiscard]] std::string_view source_title(std::string_view id);

}  // namespace swathbook::notebook::detail
