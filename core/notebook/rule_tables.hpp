#pragma once

#include <span>
#include <string_view>

namespace swathbook::notebook {

/// The dated rule tables of data/rules/, row by row as they stand there (source.txt explains the
/// columns). rule_tables.gen.cpp is written from them by tools/make_rule_tables.py.

struct FieldRow {
    std::string_view key;
    std::string_view label_en;
    std::string_view label_es;
    std::string_view type;
    std::string_view format;
    std::string_view phase;
    std::string_view note;
};

struct RequirementRow {
    std::string_view field;
    std::string_view authority;
    std::string_view status;     ///< required, conditional, contract, recommended, legacy
    std::string_view condition;  ///< empty, ask, commodity, or an option such as A1
    std::string_view source;
    std::string_view note;
};

struct AuthorityRow {
    std::string_view key;
    std::string_view applies_when;  ///< always, restricted_use, worker_protection
    std::string_view valid_from;    ///< first day in force; empty when not recorded
    std::string_view valid_until;   ///< first day no longer in force; empty while in force
    std::string_view ended_by;
    std::string_view deadline;  ///< "5 d" or "24 h"; empty when none is known
    std::string_view deadline_basis;
    std::string_view deadline_source;
    std::string_view keep_years;
    std::string_view keep_basis;
    std::string_view keep_source;
    std::string_view fields_basis;
    std::string_view citation;
    std::string_view note;
};

struct SourceRow {
    std::string_view id;
    std::string_view title;
    std::string_view address;
};

[[nodiscard]] std::span<const FieldRow> field_rows();
[[nodiscard]] std::span<const RequirementRow> requirement_rows();
[[nodiscard]] std::span<const AuthorityRow> authority_rows();
[[nodiscard]] std::span<const SourceRow> source_rows();

}  // namespace swathbook::notebook
