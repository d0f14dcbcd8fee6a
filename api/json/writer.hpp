#pragma once

#include <string>
#include <string_view>

namespace swathbook::api {

/// Writes JSON text straight into a string. Answers are written once and never walked, so no tree
/// is built for them.
///
/// Numbers are rounded to 12 significant digits: more than any measurement carries, fewer than the
/// digits in which the mathematical libraries of two machines may differ, so that every face prints
/// the same bytes.
class JsonWriter {
public:
    void open_object() { open('{'); }
    void close_object() { close('}'); }
    void open_list() { open('['); }
    void close_list() { close(']'); }

    void key(std::string_view name);
    void text(std::string_view value);
    void number(double value);
    void integer(long long value);
    void boolean(bool value);
    void null();
    /// JSON text made elsewhere, put in as it is.
    void raw(std::string_view json);

    [[nodiscard]] std::string take() { return std::move(out_); }

private:
    void open(char bracket);
    void close(char bracket);
    void separate();

    std::string out_;
    bool needs_comma_ = false;
};

/// The nearest double to the number written with 12 significant decimal digits.
/// @accuracy exact for 1e-11 <= |x| < 1e15; outside, the number is returned unchanged
[[nodiscard]] double to_12_digits(double number);

}  // namespace swathbook::api
