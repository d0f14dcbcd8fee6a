#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "api/describe/describe.hpp"
#include "core/base/notes.hpp"

namespace swathbook::api {

/// How an answer is wanted; every request may say it beside its own fields.
struct CallOptions {
    UnitSystem units = UnitSystem::us;
    bool working = false;
    const language::Catalogue* catalogue = nullptr;  ///< of the language wanted; none for English
};

/// One named computation: request in, answer out, no side effects.
struct Operation {
    std::string_view name;
    std::string_view summary;  ///< one sentence: what a person gets from it
    std::vector<int> stories;  ///< numbers in docs/stories.md
    const ObjectType& (*request)() = nullptr;
    const ObjectType& (*answer)() = nullptr;
    Result<void> (*run)(const Json& body, const CallOptions& options, JsonWriter& out) = nullptr;
};

namespace detail {

template <class Function>
struct OperationTraits;
template <class AnswerType, class RequestType>
struct OperationTraits<Result<AnswerType> (*)(const RequestType&, Notes&)> {
    using Request = RequestType;
    using Answer = AnswerType;
};

/// Reads the body into the request at `into`, passing over the options that every request may
/// carry.
[[nodiscard]] Result<void> read_request(const ObjectType& type, const Json& body, void* into);
/// Writes answer, findings and (when asked for) working as one object.
void write_answer(const ObjectType& type, const void* answer, const Notes& notes,
                  const language::Catalogue* catalogue, JsonWriter& out);

template <auto Function>
Result<void> run(const Json& body, const CallOptions& options, JsonWriter& out) {
    using Traits = OperationTraits<decltype(Function)>;
    typename Traits::Request request{};
    SWATHBOOK_CHECK(read_request(*type_of<typename Traits::Request>().as_object(), body, &request));
    Notes notes(options.units, options.working);
    SWATHBOOK_TRY(answer, Function(request, notes));
    write_answer(*type_of<typename Traits::Answer>().as_object(), &answer, notes, options.catalogue,
                 out);
    return {};
}

}  // namespace detail

/// Makes an Operation of a core function `Result<Answer> f(const Request&, Notes&)` whose structs
/// are described.
template <auto Function>
[[nodiscard]] Operation operation(std::string_view name, std::string_view summary,
                                  std::vector<int> stories) {
    using Traits = detail::OperationTraits<decltype(Function)>;
    Operation made;
    made.name = name;
    made.summary = summary;
    made.stories = std::move(stories);
    made.request = []() -> const ObjectType& {
        return *type_of<typename Traits::Request>().as_object();
    };
    made.answer = []() -> const ObjectType& {
        return *type_of<typename Traits::Answer>().as_object();
    };
    made.run = &detail::run<Function>;
    return made;
}

/// All operations, in alphabetical order.
[[nodiscard]] std::span<const Operation> operations();
/// @errors not_found with the nearest name
[[nodiscard]] Result<const Operation*> find_operation(std::string_view name);

}  // namespace swathbook::api
