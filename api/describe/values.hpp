#pragma once

#include "api/describe/type.hpp"
#include "core/quantity/label_rate.hpp"

/// The types that hold one value, many, or perhaps one. Each is a singleton reached through
/// type_of<T>() in describe.hpp.
namespace swathbook::api {

[[nodiscard]] const Type& number_type();
[[nodiscard]] const Type& integer_type();
[[nodiscard]] const Type& boolean_type();
[[nodiscard]] const Type& text_type();
[[nodiscard]] const Type& label_rate_type();

/// A quantity as it stands in C++: where its parts lie and which of them there are.
struct QuantityLayout {
    Kind kind;
    void (*put)(void* into, double si, double half_step_si, std::string_view typed);
    double (*value)(const void* from);
    const double* (*low)(const void* from);  ///< null when there is none
    const double* (*high)(const void* from);
};

/// Reads "26 ft" or {"value": 26, "unit": "ft"}; writes {"value", "unit"[, "low", "high"]}.
class QuantityType final : public Type {
public:
    explicit QuantityType(const QuantityLayout& layout);
    [[nodiscard]] Shape shape() const override { return Shape::quantity; }
    [[nodiscard]] Result<void> read(const Json& json, void* into, const Path& path) const override;
    void write(JsonWriter& out, const void* from, const WriteStyle& style) const override;
    [[nodiscard]] Json schema(Json& definitions) const override;
    [[nodiscard]] std::string typescript(Json& declarations) const override;
    [[nodiscard]] const KindInfo* kind() const override { return &info_; }
    [[nodiscard]] std::string example() const override;

private:
    QuantityLayout layout_;
    const KindInfo& info_;
    Display usual_;
};

/// One of a closed set of words.
struct ChoiceRow {
    long long value;
    std::string_view word;
    std::string_view doc;
};

class ChoiceType final : public Type {
public:
    ChoiceType(std::string_view name, std::vector<ChoiceRow> rows, void (*put)(void*, long long),
               long long (*get)(const void*))
        : name_(name), rows_(std::move(rows)), put_(put), get_(get) {}
    [[nodiscard]] Shape shape() const override { return Shape::choice; }
    [[nodiscard]] Result<void> read(const Json& json, void* into, const Path& path) const override;
    void write(JsonWriter& out, const void* from, const WriteStyle& style) const override;
    [[nodiscard]] Json schema(Json& definitions) const override;
    [[nodiscard]] std::string typescript(Json& declarations) const override;
    [[nodiscard]] std::vector<std::pair<std::string_view, std::string_view>> choices()
        const override;
    [[nodiscard]] std::string example() const override;

private:
    std::string_view name_;
    std::vector<ChoiceRow> rows_;
    void (*put_)(void*, long long);
    long long (*get_)(const void*);
};

/// How a std::vector of some type is reached without knowing the type.
struct ListLayout {
    const Type& (*inner)();
    void (*renew)(void* list, std::size_t size);  ///< empties it, then makes `size` fresh elements
    std::size_t (*size)(const void* list);
    const void* (*at)(const void* list, std::size_t index);
};

/// Every list in a request and an answer. One class for all of them keeps the WebAssembly module
/// small.
class ListType final : public Type {
public:
    explicit ListType(const ListLayout& layout) : layout_(layout) {}
    [[nodiscard]] Shape shape() const override { return Shape::list; }
    [[nodiscard]] Result<void> read(const Json& json, void* into, const Path& path) const override;
    void write(JsonWriter& out, const void* from, const WriteStyle& style) const override;
    [[nodiscard]] Json schema(Json& definitions) const override;
    [[nodiscard]] std::string typescript(Json& declarations) const override;
    [[nodiscard]] const Type* inner() const override { return &layout_.inner(); }
    [[nodiscard]] std::string example() const override;

private:
    ListLayout layout_;
};

/// How a std::optional of some type is reached without knowing the type.
struct MaybeLayout {
    const Type& (*inner)();
    void* (*fill)(void* maybe);              ///< puts a fresh value in and says where it is
    const void* (*held)(const void* maybe);  ///< null when there is none
};

/// Every value that may be left out.
class MaybeType final : public Type {
public:
    explicit MaybeType(const MaybeLayout& layout) : layout_(layout) {}
    [[nodiscard]] Shape shape() const override { return Shape::maybe; }
    [[nodiscard]] Result<void> read(const Json& json, void* into, const Path& path) const override;
    void write(JsonWriter& out, const void* from, const WriteStyle& style) const override;
    [[nodiscard]] bool is_present(const void* from) const override;
    [[nodiscard]] Json schema(Json& definitions) const override;
    [[nodiscard]] std::string typescript(Json& declarations) const override;
    [[nodiscard]] const Type* inner() const override { return &layout_.inner(); }
    [[nodiscard]] const ObjectType* as_object() const override {
        return layout_.inner().as_object();
    }
    [[nodiscard]] std::string example() const override;

private:
    MaybeLayout layout_;
};

}  // namespace swathbook::api
