#include "cli/answer/print_answer.hpp"

#include <algorithm>
#include <vector>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "cli/answer/remarks.hpp"
#include "cli/answer/table.hpp"
#include "cli/answer/words.hpp"
#include "core/quantity/print.hpp"

namespace swathbook::cli {
namespace {

using api::Json;
using api::Shape;

constexpr std::size_t indent_step = 2;
constexpr std::size_t widest_label = 34;

struct Fact {
    std::string label;
    std::string value;
};

/// A heading with the facts under it, one a line, values in one column.
std::string print_facts(const std::vector<Fact>& facts, std::size_t indent, const Paper& paper) {
    std::size_t label_width = 0;
    for (const Fact& fact : facts) {
        label_width = std::max(label_width, std::min(columns_of(fact.label), widest_label));
    }
    std::string out;
    const std::size_t value_column = indent + label_width + 2;
    for (const Fact& fact : facts) {
        const std::size_t room = paper.width > value_column + 20 ? paper.width : value_column + 20;
        std::string value = wrapped(fact.value, room, value_column);
        value.erase(0, std::min(value_column, value.size()));
        out += std::string(indent, ' ') + padded(fact.label, label_width + 2) +
               (value.empty() ? "\n" : value);
    }
    return out;
}

std::string heading(std::string_view label, std::size_t indent, const Paper& paper) {
    return "\n" + std::string(indent, ' ') + paper.in(Ink::bold, label) + "\n";
}

bool is_amount(const Json& value) {
    return value.is_object() && value.contains("value") && value.contains("unit");
}

bool is_scalar(const Json& value) {
    return is_amount(value) || !value.is_structured();
}

/// Nothing to show: an empty list or text.
bool is_blank(const Json& value) {
    return (value.is_array() && value.empty()) ||
           (value.is_string() && value.get_ref<const std::string&>().empty());
}

bool is_list_of_objects(const Json& value) {
    return value.is_array() && !value.empty() && value[0].is_object() && !is_amount(value[0]);
}

const api::ObjectType* object_of(const api::Type* type) {
    while (type != nullptr && type->inner() != nullptr) {
        type = type->inner();
    }
    return type == nullptr ? nullptr : type->as_object();
}

std::string print_object(const api::ObjectType& type, const Json& object, std::size_t indent,
                         const Paper& paper);

/// An element without its place in the list: equal loads differ in nothing else.
Json without_number(Json element) {
    element.erase("number");
    return element;
}

/// Each element as a row; where that is too wide, as a column; where neither fits, one block each.
std::string print_list(const api::ObjectType& type, const Json& list, std::size_t indent,
                       const Paper& paper) {
    Table table = table_of(type, list);
    const std::vector<Column> common = take_common(table);
    const std::size_t room = std::max<std::size_t>(paper.width, 80) - indent;
    if (table.is_complete && fit(table, room)) {
        std::string out = print_table(table, indent, paper);
        for (const Column& column : common) {
            out += wrapped(fmt::format("{}{}: {}", column.heading, words().text(", of all"),
                                       column.cells.front()),
                           paper.width, indent);
        }
        return out;
    }
    std::string out;
    for (const Table& part : turned(table_of(type, list), room)) {
        out += (out.empty() ? "" : "\n") + print_table(part, indent, paper);
    }
    if (!out.empty()) {
        return out;
    }
    for (std::size_t i = 0; i < list.size(); ++i) {
        std::size_t last = i;
        while (last + 1 < list.size() &&
               without_number(list[last + 1]) == without_number(list[i])) {
            ++last;
        }
        const bool is_run = last > i;
        out += std::string(indent, ' ') +
               (is_run ? words().text(fmt::format("{} to {}, all alike", i + 1, last + 1)) + "\n"
                       : fmt::format("{}.\n", i + 1)) +
               print_object(type, is_run ? without_number(list[i]) : list[i], indent + indent_step,
                            paper);
        i = last;
    }
    return out;
}

/// An object whose members are all small objects ("strictest": carrier, wind, re-entry) is a table
/// with a row for each; nothing when it is not.
std::string print_members_as_rows(const api::ObjectType& type, const Json& object,
                                  std::size_t indent, const Paper& paper) {
    std::vector<Row> rows;
    for (const api::Field& field : type.fields()) {
        const auto found = object.find(field.name);
        if (found == object.end()) {
            continue;
        }
        if (!found->is_object() || is_amount(*found) || field.type().as_object() == nullptr) {
            return {};
        }
        rows.push_back({words().label_of(type.name(), field), field.type().as_object(), &*found});
    }
    Table table = table_of(rows);
    const bool fits = rows.size() > 2 && table.is_complete &&
                      fit(table, std::max<std::size_t>(paper.width, 80) - indent);
    return fits ? print_table(table, indent, paper) : std::string();
}

std::string print_structured(std::string_view owner, const api::Field& field, const Json& value,
                             std::size_t indent, const Paper& paper) {
    const std::string title = heading(words().label_of(owner, field), indent, paper);
    const api::ObjectType* type = object_of(&field.type());
    if (type == nullptr) {
        return title + wrapped(value.dump(), paper.width, indent + indent_step);
    }
    return title + (value.is_array() ? print_list(*type, value, indent + indent_step, paper)
                                     : print_object(*type, value, indent + indent_step, paper));
}

/// First the plain values in one column, then whatever has parts, each under its heading.
std::string print_object(const api::ObjectType& type, const Json& object, std::size_t indent,
                         const Paper& paper) {
    if (std::string table = print_members_as_rows(type, object, indent, paper); !table.empty()) {
        return table;
    }
    std::vector<Fact> facts;
    std::string parts;
    for (const api::Field& field : type.fields()) {
        const auto found = object.find(field.name);
        if (found == object.end() || is_blank(*found)) {
            continue;
        }
        const bool is_plain =
            is_scalar(*found) || (found->is_array() && !is_list_of_objects(*found));
        if (is_plain) {
            facts.push_back({words().label_of(type.name(), field), value_text(field, *found)});
        } else {
            parts += print_structured(type.name(), field, *found, indent, paper);
        }
    }
    return print_facts(facts, indent, paper) + parts;
}

}  // namespace

namespace {

/// Short elements on one line, sentences each on a line of its own.
std::string list_text(const Json& list) {
    constexpr std::size_t longest_short = 24;
    std::vector<std::string> texts;
    bool is_short = true;
    for (const Json& element : list) {
        texts.push_back(value_text(element));
        is_short = is_short && texts.back().size() <= longest_short;
    }
    return fmt::format("{}", fmt::join(texts, is_short ? ", " : "\n"));
}

}  // namespace

std::string value_text(const Json& value) {
    if (is_amount(value)) {
        const std::string unit = value["unit"].get<std::string>();
        std::string text =
            show_number(value["value"].get<double>()) + (unit.empty() ? "" : " ") + unit;
        if (value.contains("low") && value.contains("high")) {
            text += fmt::format("  ({} {} {})", show_number(value["low"].get<double>()),
                                words().text("to"), show_number(value["high"].get<double>()));
        }
        return text;
    }
    if (value.is_array()) {
        return list_text(value);
    }
    switch (value.type()) {
        case Json::value_t::boolean: return words().text(value.get<bool>() ? "yes" : "no");
        case Json::value_t::string: return with_signs(value.get<std::string>());
        case Json::value_t::number_float: return show_number(value.get<double>());
        case Json::value_t::null: return words().text("not entered");
        default: return value.dump();
    }
}

namespace {

/// "max_single_rate", a word for programs, in words for people.
bool is_program_word(std::string_view text) {
    return text.find('_') != std::string_view::npos &&
           text.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_, ") ==
               std::string_view::npos;
}

}  // namespace

std::string value_text(const api::Field& field, const Json& value) {
    if (field.is_in_full && !value.is_structured()) {
        return value.is_string() ? value.get<std::string>() : value.dump();
    }
    const api::Type* type = &field.type();
    while (type->inner() != nullptr) {
        type = type->inner();
    }
    if (type->shape() == Shape::choice && value.is_string()) {
        return words().choice(value.get_ref<const std::string&>());
    }
    std::string text = value_text(value);
    if (is_program_word(text)) {
        std::replace(text.begin(), text.end(), '_', ' ');
    }
    return text;
}

std::string print_summary(const api::ObjectType& type, const Json& answer, const Paper& paper) {
    std::vector<Fact> facts;
    for (const api::Field& field : type.fields()) {
        const auto found = answer.find(field.name);
        if (found != answer.end() && !is_blank(*found) && is_scalar(*found)) {
            facts.push_back({words().label_of(type.name(), field), value_text(field, *found)});
        }
    }
    return print_facts(facts, 0, paper) + print_findings(answer, paper);
}

std::string print_answer(const api::ObjectType& type, const Json& answer, const Paper& paper) {
    std::string out = print_object(type, answer, 0, paper);
    if (out.starts_with('\n')) {
        out.erase(0, 1);
    }
    return out + print_findings(answer, paper) + print_working(answer, paper);
}

}  // namespace swathbook::cli
