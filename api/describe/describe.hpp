#pragma once

#include <array>
#include <optional>
#include <string>
#include <type_traits>
#include <vector>

#include "api/describe/values.hpp"
#include "core/quantity/reading.hpp"

/// How a struct or an enum is described once, so that JSON, JSON Schema, TypeScript, command-line
/// flags and help all follow from it:
///
///   template <> struct Description<CourseRequest> {
///       static constexpr std::string_view name = "CourseRequest";
///       static constexpr auto fields() {
///           return std::array{
///               field<&CourseRequest::width>("width", "Ground width served.").required()};
///       }
///   };
///   template <> struct Description<Method> {
///       static constexpr std::string_view name = "Method";
///       static Choices<Method> choices() { return {{Method::refill, "refill", "Refill of a known
///       area."}}; }
///   };
namespace swathbook::api {

template <class T>
struct Description;

template <class T>
[[nodiscard]] const Type& type_of();

template <class E>
struct Choice {
    E value;
    std::string_view word;
    std::string_view doc;

    constexpr Choice(E what, std::string_view own_word, std::string_view explained)
        : value(what), word(own_word), doc(keeps_words ? explained : std::string_view{}) {}
};
template <class E>
using Choices = std::vector<Choice<E>>;

namespace detail {

template <class Member>
struct MemberOf;
template <class Struct, class Value>
struct MemberOf<Value Struct::*> {
    using Owner = Struct;
    using Type = Value;
};

template <class T>
struct Maker;  // one specialisation per family of types, below

template <class T>
ListLayout list_layout() {
    using List = std::vector<T>;
    return {[]() -> const Type& { return type_of<T>(); },
            [](void* list, std::size_t size) {
                static_cast<List*>(list)->clear();
                static_cast<List*>(list)->resize(size);
            },
            [](const void* list) { return static_cast<const List*>(list)->size(); },
            [](const void* list, std::size_t i) -> const void* {
                return &(*static_cast<const List*>(list))[i];
            }};
}

template <class T>
MaybeLayout maybe_layout() {
    using Maybe = std::optional<T>;
    return {[]() -> const Type& { return type_of<T>(); },
            [](void* maybe) -> void* { return &static_cast<Maybe*>(maybe)->emplace(); },
            [](const void* maybe) -> const void* {
                const auto& held = *static_cast<const Maybe*>(maybe);
                return held ? &*held : nullptr;
            }};
}

template <Kind K>
QuantityLayout quantity_layout() {
    using Q = Quantity<K>;
    return {K,
            [](void* into, double si, double, std::string_view) {
                *static_cast<Q*>(into) = Q::from_si(si);
            },
            [](const void* from) { return static_cast<const Q*>(from)->si(); },
            [](const void*) -> const double* { return nullptr; },
            [](const void*) -> const double* { return nullptr; }};
}

template <Kind K>
QuantityLayout reading_layout() {
    using R = Reading<K>;
    QuantityLayout layout = quantity_layout<K>();
    layout.put = [](void* into, double si, double half_step_si, std::string_view typed) {
        auto& reading = *static_cast<R*>(into);
        reading.value = Quantity<K>::from_si(si);
        reading.half_step_si = half_step_si;
        reading.text = std::string(typed);
    };
    layout.value = [](const void* from) { return static_cast<const R*>(from)->value.si(); };
    return layout;
}

template <Kind K>
const double* bound(const std::optional<Quantity<K>>& quantity) {
    static_assert(sizeof(Quantity<K>) == sizeof(double),
                  "a quantity is its SI value and nothing else");
    return quantity ? reinterpret_cast<const double*>(&*quantity)
                    : nullptr;  // NOLINT: same layout, asserted above
}

template <Kind K>
QuantityLayout estimate_layout() {
    using E = Estimate<K>;
    QuantityLayout layout = quantity_layout<K>();
    layout.put = [](void* into, double si, double, std::string_view) {
        *static_cast<E*>(into) = E(Quantity<K>::from_si(si));
    };
    layout.value = [](const void* from) { return static_cast<const E*>(from)->value.si(); };
    layout.low = [](const void* from) { return bound<K>(static_cast<const E*>(from)->low); };
    layout.high = [](const void* from) { return bound<K>(static_cast<const E*>(from)->high); };
    return layout;
}

/// The fields as this build keeps them.
template <std::size_t Count>
constexpr std::array<Field, Count> in_this_build(std::array<Field, Count> fields) {
    for (Field& field : fields) {
        if (!keeps_words && !field.is_required) {
            field.doc = {};  // a refusal tells what is asked for: those of the required stay
        }
        field.short_label = keeps_words ? field.short_label : std::string_view{};
    }
    return fields;
}

template <class T>
    requires requires { Description<T>::fields(); }
const Type& make() {
    // worked out by the compiler
    static constexpr auto fields = detail::in_this_build(Description<T>::fields());
    static const ObjectType type(Description<T>::name, fields);
    return type;
}

template <class T>
    requires requires { Description<T>::choices(); }
const Type& make() {
    static const ChoiceType type(
        Description<T>::name,
        [] {
            std::vector<ChoiceRow> rows;
            for (const auto& choice : Description<T>::choices()) {
                rows.push_back({static_cast<long long>(choice.value), choice.word, choice.doc});
            }
            return rows;
        }(),
        [](void* into, long long value) { *static_cast<T*>(into) = static_cast<T>(value); },
        [](const void* from) { return static_cast<long long>(*static_cast<const T*>(from)); });
    return type;
}

/// A type with a reader and writer of its own: Description<T>::custom() returns its Type.
template <class T>
    requires requires { Description<T>::custom(); }
const Type& make() {
    return Description<T>::custom();
}

template <class T>
struct Maker {
    static const Type& get() { return make<T>(); }
};
template <>
struct Maker<double> {
    static const Type& get() { return number_type(); }
};
template <>
struct Maker<int> {
    static const Type& get() { return integer_type(); }
};
template <>
struct Maker<bool> {
    static const Type& get() { return boolean_type(); }
};
template <>
struct Maker<std::string> {
    static const Type& get() { return text_type(); }
};
template <>
struct Maker<LabelRate> {
    static const Type& get() { return label_rate_type(); }
};
template <class T>
struct Maker<std::vector<T>> {
    static const Type& get() {
        static const ListType type(list_layout<T>());
        return type;
    }
};
template <class T>
struct Maker<std::optional<T>> {
    static const Type& get() {
        static const MaybeType type(maybe_layout<T>());
        return type;
    }
};
template <Kind K>
struct Maker<Quantity<K>> {
    static const Type& get() {
        static const QuantityType type(quantity_layout<K>());
        return type;
    }
};
template <Kind K>
struct Maker<Reading<K>> {
    static const Type& get() {
        static const QuantityType type(reading_layout<K>());
        return type;
    }
};
template <Kind K>
struct Maker<Estimate<K>> {
    static const Type& get() {
        static const QuantityType type(estimate_layout<K>());
        return type;
    }
};

}  // namespace detail

/// The one Type object of a C++ type.
template <class T>
const Type& type_of() {
    return detail::Maker<T>::get();
}

/// A member, its JSON name, and one sentence on what it is.
template <auto Member>
[[nodiscard]] constexpr Field field(std::string_view name, std::string_view doc) {
    using Traits = detail::MemberOf<decltype(Member)>;
    Field made;
    made.name = name;
    made.doc = doc;
    made.type = []() -> const Type& { return type_of<typename Traits::Type>(); };
    made.member = [](void* owner) -> void* {
        return &(static_cast<typename Traits::Owner*>(owner)->*Member);
    };
    return made;
}

}  // namespace swathbook::api
