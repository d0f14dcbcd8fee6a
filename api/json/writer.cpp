#include "api/json/writer.hpp"

#include <array>
#include <cmath>
#include <cstddef>
#include <iterator>

#include <fmt/format.h>

#include "core/base/assert.hpp"

namespace swathbook::api {
namespace {

constexpr std::array powers_of_ten{1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,
                                   1e8,  1e9,  1e10, 1e11, 1e12, 1e13, 1e14, 1e15,
                                   1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};

bool is_plain(std::string_view value) {
    for (const char letter : value) {
        if (static_cast<unsigned char>(letter) < 0x20 || letter == '"' || letter == '\\') {
            return false;
        }
    }
    return true;
}

void append_escaped(std::string& out, std::string_view value) {
    for (const char letter : value) {
        switch (letter) {
            case '"': out += "\\\""; break;
            case '\\': out += "\\\\"; break;
            case '\n': out += "\\n"; break;
            case '\t': out += "\\t"; break;
            case '\r': out += "\\r"; break;
            default:
                if (static_cast<unsigned char>(letter) < 0x20) {
                    fmt::format_to(std::back_inserter(out), "\\u{:04x}",
                                   static_cast<unsigned>(letter));
                } else {
                    out += letter;
                }
        }
    }
}

}  // namespace

double to_12_digits(double number) {
    const double size = std::fabs(number);
    if (!(size >= 1e-11 && size < 1e12)) {
        return number;
    }
    // Both steps below round once: 12-digit integers and powers of ten up to 1e22 are exact
    // doubles.
    std::size_t decimals = 11;
    if (size >= 1.0) {
        while (decimals > 0 && size >= powers_of_ten[12 - decimals]) {
            --decimals;
        }
    } else {
        while (decimals < 22 && size * powers_of_ten[decimals] < 1e11) {
            ++decimals;
        }
    }
    const double scale = powers_of_ten[decimals];
    return std::round(number * scale) / scale;
}

void JsonWriter::separate() {
    if (needs_comma_) {
        out_ += ',';
    }
    needs_comma_ = true;
}

void JsonWriter::open(char bracket) {
    separate();
    out_ += bracket;
    needs_comma_ = false;
}

void JsonWriter::close(char bracket) {
    out_ += bracket;
    needs_comma_ = true;
}

void JsonWriter::key(std::string_view name) {
    text(name);
    out_ += ':';
    needs_comma_ = false;
}

void JsonWriter::text(std::string_view value) {
    separate();
    out_ += '"';
    if (is_plain(value)) {
        out_ += value;
    } else {
        append_escaped(out_, value);
    }
    out_ += '"';
}

void JsonWriter::number(double value) {
    SWATHBOOK_ASSERT(std::isfinite(value), "an answer never holds NaN or infinity");
    separate();
    const double rounded = to_12_digits(value);
    fmt::format_to(std::back_inserter(out_), "{}", rounded == 0.0 ? 0.0 : rounded);
}

void JsonWriter::integer(long long value) {
    separate();
    fmt::format_to(std::back_inserter(out_), "{}", value);
}

void JsonWriter::boolean(bool value) {
    separate();
    out_ += value ? "true" : "false";
}

void JsonWriter::null() {
    separate();
    out_ += "null";
}

void JsonWriter::raw(std::string_view json) {
    separate();
    out_ += json;
}

}  // namespace swathbook::api
