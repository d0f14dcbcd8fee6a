#include <fmt/format.h>

#include "api/describe/values.hpp"

namespace swathbook::api {
namespace {

/// More than any job has; a list of empty objects would otherwise ask for memory without end.
constexpr std::size_t longest_list = 100000;

}  // namespace

Result<void> ListType::read(const Json& json, void* into, const Path& path) const {
    if (!json.is_array()) {
        return fail(ErrorCode::invalid_input, path.text(),
                    fmt::format("Expected a list [...], got {}.", json.type_name()));
    }
    if (json.size() > longest_list) {
        return fail(ErrorCode::out_of_range, path.text(),
                    fmt::format("The list has {} entries; the limit is {}. Split the request.",
                                json.size(), longest_list));
    }
    layout_.renew(into, json.size());
    for (std::size_t i = 0; i < json.size(); ++i) {
        // The list itself is ours to change; one accessor serves reading and writing.
        void* element = const_cast<void*>(
            layout_.at(into, i));  // NOLINT(cppcoreguidelines-pro-type-const-cast)
        SWATHBOOK_CHECK(layout_.inner().read(json[i], element, path.element(i)));
    }
    return {};
}

void ListType::write(JsonWriter& out, const void* from, const WriteStyle& style) const {
    out.open_list();
    for (std::size_t i = 0; i < layout_.size(from); ++i) {
        layout_.inner().write(out, layout_.at(from, i), style);
    }
    out.close_list();
}

Json ListType::schema(Json& definitions) const {
    return {{"type", "array"}, {"items", layout_.inner().schema(definitions)}};
}

std::string ListType::typescript(Json& declarations) const {
    return "Array<" + layout_.inner().typescript(declarations) + ">";
}

std::string ListType::example() const {
    return fmt::format("[{}, ...]", layout_.inner().example());
}

Result<void> MaybeType::read(const Json& json, void* into, const Path& path) const {
    return layout_.inner().read(json, layout_.fill(into), path);
}

void MaybeType::write(JsonWriter& out, const void* from, const WriteStyle& style) const {
    if (const void* held = layout_.held(from)) {
        layout_.inner().write(out, held, style);
    } else {
        out.null();
    }
}

bool MaybeType::is_present(const void* from) const {
    return layout_.held(from) != nullptr;
}

Json MaybeType::schema(Json& definitions) const {
    return layout_.inner().schema(definitions);
}

std::string MaybeType::typescript(Json& declarations) const {
    return layout_.inner().typescript(declarations);
}

std::string MaybeType::example() const {
    return layout_.inner().example();
}

}  // namespace swathbook::api
