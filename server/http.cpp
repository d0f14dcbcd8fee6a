#include "server/http.hpp"

#include <algorithm>

namespace swathbook::server {
namespace {

char lower(char letter) {
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

}  // namespace

bool same_word(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](char left, char right) { return lower(left) == lower(right); });
}

std::string_view Request::query() const {
    const std::size_t mark = target.find('?');
    return mark == std::string_view::npos ? std::string_view() : target.substr(mark + 1);
}

std::optional<std::string_view> Request::header(std::string_view name) const {
    for (const HeaderLine& line : headers) {
        if (same_word(line.name, name)) {
            return line.value;
        }
    }
    return std::nullopt;
}

std::size_t Request::count(std::string_view name) const {
    return static_cast<std::size_t>(
        std::count_if(headers.begin(), headers.end(),
                      [name](const HeaderLine& line) { return same_word(line.name, name); }));
}

std::optional<std::string_view> query_value(std::string_view query, std::string_view name) {
    while (!query.empty()) {
        const std::size_t end = std::min(query.find('&'), query.size());
        const std::string_view pair = query.substr(0, end);
        const std::size_t mark = std::min(pair.find('='), pair.size());
        if (pair.substr(0, mark) == name) {
            return pair.substr(std::min(mark + 1, pair.size()));
        }
        query.remove_prefix(std::min(end + 1, query.size()));
    }
    return std::nullopt;
}

}  // namespace swathbook::server
