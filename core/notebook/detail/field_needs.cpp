#include "core/notebook/detail/field_needs.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace swathbook::notebook::detail {

namespace {

using Rows = std::vector<const RequirementRow*>;

bool holds(const std::vector<std::string_view>& held, std::string_view key) {
    return std::find(held.begin(), held.end(), key) != held.end();
}

bool is_option(const RequirementRow& row) {
    return row.condition.size() == 2 && row.condition[0] >= 'A' && row.condition[0] <= 'Z';
}

RecordField as_field(const RequirementRow& row) {
    const FieldRow* field = find_field(row.field);
    RecordField made;
    made.key = row.field;
    made.label = field == nullptr ? row.field : field->label_en;
    made.label_es = field == nullptr ? row.field : field->label_es;
    made.note = row.note;
    made.source = source_title(row.source);
    return made;
}

/// Two sources of one authority may want the same field: it is listed once.
void put(std::vector<RecordField>& list, const RequirementRow& row) {
    const bool is_there = std::any_of(
        list.begin(), list.end(), [&](const RecordField& field) { return field.key == row.field; });
    if (!is_there) {
        list.push_back(as_field(row));
    }
}

/// Where an absent field belongs.
std::vector<RecordField>& place_of(const RequirementRow& row, const RecordCheckRequest& request,
                                   AuthorityCheck& check) {
    if (row.status == "recommended") {
        return check.advised;
    }
    if (row.condition == "commodity") {
        return request.commodity.value_or(false) ? check.missing : check.to_decide;
    }
    // The Worker Protection Standard's rows are conditional on the standard alone, which is settled
    // before its fields are judged.
    const bool is_settled = row.status == "conditional" && row.authority == "40 CFR 170.311";
    if (row.condition == "ask" || (row.status == "conditional" && !is_settled)) {
        return check.to_decide;
    }
    return check.missing;
}

/// Options of one group ("A1", "A2"): one complete option is enough. Otherwise the fields of the
/// option nearest to complete are missing, with a note that names the others.
void judge_options(const Rows& group, const std::vector<std::string_view>& held,
                   AuthorityCheck& check) {
    char best = group.front()->condition[1];
    std::size_t fewest = group.size() + 1;
    for (char option = '1'; option <= '9'; ++option) {
        const auto belongs = [&](const RequirementRow* row) { return row->condition[1] == option; };
        if (std::none_of(group.begin(), group.end(), belongs)) {
            continue;
        }
        const auto absent = static_cast<std::size_t>(std::count_if(
            group.begin(), group.end(),
            [&](const RequirementRow* row) { return belongs(row) && !holds(held, row->field); }));
        if (absent < fewest) {
            fewest = absent;
            best = option;
        }
    }
    std::string others;
    for (const RequirementRow* row : group) {
        if (row->condition[1] != best) {
            others += fmt::format("{}{}", others.empty() ? "" : " + ", as_field(*row).label);
        }
    }
    for (const RequirementRow* row : group) {
        if (holds(held, row->field)) {
            put(check.present, *row);
        } else if (row->condition[1] == best) {
            put(check.missing, *row);
            check.missing.back().note += fmt::format("; or instead: {}", others);
        }
    }
}

bool is_wanted(const RequirementRow& row, const RecordCheckRequest& request) {
    const bool is_other_crop = row.condition == "commodity" && request.commodity == false;
    return row.field != "retain_until" && !is_other_crop;
}

}  // namespace

const FieldRow* find_field(std::string_view key) {
    const auto rows = field_rows();
    const auto found =
        std::find_if(rows.begin(), rows.end(), [&](const FieldRow& row) { return row.key == key; });
    return found == rows.end() ? nullptr : &*found;
}

std::string_view source_title(std::string_view id) {
    for (const SourceRow& row : source_rows()) {
        if (row.id == id) {
            return row.title;
        }
    }
    return id;
}

std::vector<std::string_view> held_fields(const RecordCheckRequest& request) {
    std::vector<std::string_view> held(request.fields.begin(), request.fields.end());
    held.emplace_back("date");
    if (request.end_time) {
        held.emplace_back("time_end");
    }
    if (request.completed) {
        held.emplace_back("completed_by_date");
    }
    if (request.restricted_use) {
        held.emplace_back("rup_flag");
    }
    return held;
}

void judge_fields(const RecordCheckRequest& request, const std::vector<std::string_view>& held,
                  AuthorityCheck& check) {
    std::vector<std::pair<char, Rows>> groups;
    for (const RequirementRow& row : requirement_rows()) {
        if (row.authority != check.authority || !is_wanted(row, request)) {
            continue;
        }
        if (is_option(row)) {
            const char letter = row.condition[0];
            auto group = std::find_if(groups.begin(), groups.end(),
                                      [&](const auto& item) { return item.first == letter; });
            if (group == groups.end()) {
                groups.emplace_back(letter, Rows{});
                group = groups.end() - 1;
            }
            group->second.push_back(&row);
        } else if (holds(held, row.field)) {
            put(check.present, row);
        } else {
            put(place_of(row, request, check), row);
        }
    }
    for (const auto& [letter, rows] : groups) {
        judge_options(rows, held, check);
    }
}

}  // namespace swathbook::notebook::detail
