#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "api/json/json.hpp"
#include "api/json/writer.hpp"
#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/language/catalogue.hpp"
#include "core/quantity/kind.hpp"

namespace swathbook::api {

/// Whether descriptions keep the words that are there for people and generators only. A module that
/// is fetched by phones leaves them out: who shows them has them from the generated types.
#ifdef SWATHBOOK_WORDLESS
inline constexpr bool keeps_words = false;
#else
inline constexpr bool keeps_words = true;
#endif

/// Where in a request we are; becomes text ("catches[2].amount") only when something is wrong
/// there.
struct Path {
    const Path* parent = nullptr;
    std::string_view name{};
    std::size_t index = 0;  ///< used when `name` is empty and there is a parent

    [[nodiscard]] Path member(std::string_view member_name) const { return {this, member_name, 0}; }
    [[nodiscard]] Path element(std::size_t i) const { return {this, {}, i}; }
    [[nodiscard]] std::string text() const;
};

/// A unit text with its numbers looked up once.
struct DisplayUnit {
    std::string_view text{};
    double si = 1.0;
    double zero = 0.0;
};

/// The units a field's quantities are written in, US and metric.
struct Display {
    DisplayUnit us;
    DisplayUnit metric;
    [[nodiscard]] const DisplayUnit& in(UnitSystem units) const {
        return units == UnitSystem::us ? us : metric;
    }
};

/// The usual units of a kind, or the given texts in their place when not empty.
[[nodiscard]] Display display_of(Kind kind, std::string_view us = {}, std::string_view metric = {});

struct WriteStyle {
    UnitSystem units = UnitSystem::us;
    const Display* display = nullptr;                ///< overrides the kind's usual units
    const language::Catalogue* catalogue = nullptr;  ///< of the language wanted; none for English
    bool is_spoken = false;                          ///< texts here are sentences of the core
};

/// The broad shape of a type: what a command-line flag, a form or a table must know.
enum class Shape : std::uint8_t {
    quantity,
    rate,
    number,
    integer,
    boolean,
    text,
    choice,
    list,
    maybe,
    object,
    geometry
};

class ObjectType;

/// How one C++ type is read from JSON, written to JSON, and described to people and programs. There
/// is one object per type, made at first use and kept; everything that derives from a description
/// goes through this interface.
class Type {
public:
    Type() = default;
    Type(const Type&) = delete;
    Type& operator=(const Type&) = delete;
    Type(Type&&) = delete;
    Type& operator=(Type&&) = delete;
    virtual ~Type() = default;

    [[nodiscard]] virtual Shape shape() const = 0;
    /// Reads `json` into the object at `into`. On failure `into` may be half written: the caller
    /// drops it.
    [[nodiscard]] virtual Result<void> read(const Json& json, void* into,
                                            const Path& path) const = 0;
    virtual void write(JsonWriter& out, const void* from, const WriteStyle& style) const = 0;
    /// False for an empty optional: such members are left out of an answer.
    [[nodiscard]] virtual bool is_present(const void*) const { return true; }
    /// The JSON Schema of this type; objects put themselves into `definitions` and return a
    /// reference.
    [[nodiscard]] virtual Json schema(Json& definitions) const = 0;
    /// The TypeScript name of this type; objects and choices put their declaration into
    /// `declarations`.
    [[nodiscard]] virtual std::string typescript(Json& declarations) const = 0;

    [[nodiscard]] virtual const Type* inner() const { return nullptr; }  ///< of lists and optionals
    [[nodiscard]] virtual const ObjectType* as_object() const { return nullptr; }
    [[nodiscard]] virtual const KindInfo* kind() const { return nullptr; }  ///< of quantities
    [[nodiscard]] virtual std::vector<std::pair<std::string_view, std::string_view>> choices()
        const {
        return {};
    }
    /// What a person could type, for help texts: "26 ft", "yes", "boom|boomless".
    [[nodiscard]] virtual std::string example() const = 0;
};

/// One member of a described struct.
struct Field {
    std::string_view name;  ///< snake_case: JSON key, flag, column
    std::string_view doc;   ///< one sentence for people
    const Type& (*type)() = nullptr;
    void* (*member)(void*) = nullptr;
    bool is_required = false;
    std::string_view us_unit{};
    std::string_view metric_unit{};
    std::string_view short_label{};  ///< empty: the name, in words
    std::string_view sample{};       ///< an amount of the usual size; empty: the kind's own
    bool is_in_full = false;
    bool is_spoken = false;

    /// What stands before the value on screen and paper: "Interval ±".
    [[nodiscard]] std::string label() const;

    [[nodiscard]] constexpr Field required() const {
        Field copy = *this;
        copy.is_required = true;
        return copy;
    }
    /// Units an answer writes this field in, where the kind's usual ones do not fit ("fl oz" for a
    /// catch).
    [[nodiscard]] constexpr Field shown_in(std::string_view us, std::string_view metric) const {
        Field copy = *this;
        copy.us_unit = us;
        copy.metric_unit = metric;
        return copy;
    }
    /// A label, where the name does not read well as one.
    [[nodiscard]] constexpr Field labelled(std::string_view text) const {
        Field copy = *this;
        copy.short_label = text;
        return copy;
    }
    /// An amount as it might be typed here, where the kind's own is of another size: "20 in".
    [[nodiscard]] constexpr Field like(std::string_view text) const {
        Field copy = *this;
        copy.sample = text;
        return copy;
    }
    /// For people too exactly as programs get it: every digit of a longitude, a key to copy.
    [[nodiscard]] constexpr Field in_full() const {
        Field copy = *this;
        copy.is_in_full = true;
        return copy;
    }
    /// Text that the core composes, to be said in the language of the request; all other text is
    /// what somebody typed, or a word for programs.
    [[nodiscard]] constexpr Field spoken() const {
        Field copy = *this;
        copy.is_spoken = true;
        return copy;
    }
};

/// "mean_course_time" as people read it: "Mean course time".
[[nodiscard]] std::string label_from_name(std::string_view name);

using Fields = std::span<const Field>;

/// A struct with named members.
class ObjectType final : public Type {
public:
    /// @param fields live as long as the type
    ObjectType(std::string_view name, Fields fields);

    [[nodiscard]] Shape shape() const override { return Shape::object; }
    [[nodiscard]] Result<void> read(const Json& json, void* into, const Path& path) const override;
    void write(JsonWriter& out, const void* from, const WriteStyle& style) const override;
    [[nodiscard]] Json schema(Json& definitions) const override;
    [[nodiscard]] std::string typescript(Json& declarations) const override;
    [[nodiscard]] const ObjectType* as_object() const override { return this; }
    [[nodiscard]] std::string example() const override { return "{...}"; }

    [[nodiscard]] std::string_view name() const { return name_; }
    [[nodiscard]] Fields fields() const { return fields_; }
    /// Writes the members without the braces, so that an answer can carry more than its own
    /// members.
    void write_members(JsonWriter& out, const void* from, const WriteStyle& style) const;
    /// Reads an object, passing over the keys in `also_allowed`.
    [[nodiscard]] Result<void> read_members(const Json& json, void* into, const Path& path,
                                            std::span<const std::string_view> also_allowed) const;

private:
    std::string_view name_;
    Fields fields_;
    std::vector<Display>
        displays_;  ///< one per field; empty texts where the field has no units of its own
};

/// "Unknown field "widht"; did you mean "width"?" : the nearest of the names, or all of them when
/// none is near.
[[nodiscard]] std::string suggest(std::string_view wrong, std::span<const std::string_view> names);

}  // namespace swathbook::api
