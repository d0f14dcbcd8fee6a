#include "tests/case_runner/judge.hpp"

#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "core/quantity/parse.hpp"

namespace swathbook::tests {
namespace {

using api::Json;

std::string plain(const Json& value) {
    return value.is_string() ? value.get<std::string>() : value.dump();
}

const Json* element_of(const Json& list, const std::string& selector) {
    if (!list.is_array()) {
        return nullptr;
    }
    const auto equals = selector.find('=');
    if (equals == std::string::npos) {
        const auto index = static_cast<std::size_t>(std::stoul(selector));
        return index < list.size() ? &list[index] : nullptr;
    }
    const std::string member = selector.substr(0, equals);
    const std::string wanted = selector.substr(equals + 1);
    for (const Json& element : list) {
        if (element.is_object() && element.contains(member) && plain(element[member]) == wanted) {
            return &element;
        }
    }
    return nullptr;
}

/// How many of unit `to` one of unit `from` is, tried in every kind; temperatures are compared in
/// one unit only.
std::optional<double> conversion(const std::string& from, const std::string& to) {
    if (from == to) {
        return 1.0;
    }
    for (const KindInfo& info : all_kinds()) {
        const auto a = parse_unit(from, info.kind);
        const auto b = parse_unit(to, info.kind);
        if (a && b) {
            return *a / *b;
        }
    }
    return std::nullopt;
}

std::string number_complaint(const Demand& demand, const Json& value) {
    const bool is_quantity = value.is_object() && value.contains("value") && value.contains("unit");
    if (!is_quantity && !value.is_number()) {
        return fmt::format("{} is {}, not a number", demand.path, value.dump());
    }
    const double got = is_quantity ? value["value"].get<double>() : value.get<double>();
    const std::string got_unit = is_quantity ? value["unit"].get<std::string>() : "";
    const auto wanted_factor = conversion(demand.unit, got_unit);
    const auto tolerance_factor = conversion(demand.tolerance_unit, got_unit);
    if (!wanted_factor || !tolerance_factor) {
        return fmt::format("{} is in \"{}\", which cannot be compared with \"{}\" within \"{}\"",
                           demand.path, got_unit, demand.unit, demand.tolerance_unit);
    }
    const double wanted = std::stod(demand.wanted) * *wanted_factor;
    // A value printed to half its last digit may sit exactly on the border; allow for our own
    // 12-digit rounding.
    const double tolerance = demand.tolerance * *tolerance_factor + std::fabs(wanted) * 1e-11;
    const bool near = std::fabs(got - wanted) <= tolerance;
    if (near == (demand.sort == Demand::Sort::number)) {
        return {};
    }
    return fmt::format("{} is {} {}, {} {} {} within {}", demand.path, got, got_unit,
                       near ? "must not be" : "wanted", wanted, got_unit, tolerance);
}

bool has_finding(const Json& answer, const std::string& code) {
    if (!answer.contains("findings")) {
        return false;
    }
    for (const Json& finding : answer["findings"]) {
        if (finding["code"] == code) {
            return true;
        }
    }
    return false;
}

std::string codes_in(const Json& answer) {
    std::string codes;
    for (const Json& finding : answer.value("findings", Json::array())) {
        codes += " " + finding["code"].get<std::string>();
    }
    return codes;
}

std::string refusal_complaint(const Demand& demand, const Json& answer) {
    const std::string field = demand.path == "-" ? "" : demand.path;
    if (!answer.contains("error")) {
        return "was answered, but must be refused";
    }
    const Json& error = answer["error"];
    if (error["code"] != demand.wanted || error["field"] != field) {
        return fmt::format("refused as {} at \"{}\" ({})", plain(error["code"]),
                           plain(error["field"]), plain(error["detail"]));
    }
    return {};
}

std::string value_complaint(const Demand& demand, const Json& value) {
    if (demand.sort == Demand::Sort::exact) {
        const auto wanted = api::parse_json(demand.wanted);
        return wanted && *wanted == value ? "" : fmt::format("{} is {}", demand.path, value.dump());
    }
    if (demand.sort == Demand::Sort::contains) {
        const auto wanted = api::parse_json(demand.wanted);
        const bool contains = wanted && wanted->is_string() &&
                              plain(value).find(wanted->get<std::string>()) != std::string::npos;
        return contains ? "" : fmt::format("{} is {}", demand.path, value.dump());
    }
    return number_complaint(demand, value);
}

}  // namespace

const Json* at_path(const Json& root, const std::string& path) {
    const Json* here = &root;
    std::size_t at = 0;
    while (at < path.size() && here != nullptr) {
        if (path[at] == '.') {
            ++at;
        } else if (path[at] == '[') {
            const auto end = path.find(']', at);
            here = end == std::string::npos ? nullptr
                                            : element_of(*here, path.substr(at + 1, end - at - 1));
            at = end + 1;
        } else {
            const auto end = std::min(path.find_first_of(".[", at), path.size());
            const std::string name = path.substr(at, end - at);
            here = here->is_object() && here->contains(name) ? &(*here)[name] : nullptr;
            at = end;
        }
    }
    return here;
}

std::string complaint(const Demand& demand, const Json& answer) {
    if (demand.sort == Demand::Sort::refuse) {
        return refusal_complaint(demand, answer);
    }
    if (answer.contains("error")) {
        return fmt::format("was refused: {}", answer["error"].dump());
    }
    if (demand.sort == Demand::Sort::finding || demand.sort == Demand::Sort::no_finding) {
        const bool wanted = demand.sort == Demand::Sort::finding;
        return has_finding(answer, demand.wanted) == wanted
                   ? ""
                   : fmt::format("findings are{}",
                                 codes_in(answer).empty() ? " none" : codes_in(answer));
    }
    const Json* value = at_path(answer, demand.path);
    return value == nullptr ? fmt::format("there is no {} in {}", demand.path, answer.dump())
                            : value_complaint(demand, *value);
}

}  // namespace swathbook::tests
