#pragma once

#include <cstdint>
#include <cstring>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace swathbook::notebook::detail {

/// Keeps copies of texts in large blocks; a copy stays where it is for as long as the pool lives.
class TextPool {
public:
    [[nodiscard]] std::string_view keep(std::string_view text) {
        if (text.empty()) {
            return {};
        }
        if (text.size() > left_) {
            const std::size_t size = text.size() > block_size ? text.size() : block_size;
            free_ = blocks_.emplace_back(size).data();
            left_ = size;
        }
        char* place = free_;
        std::memcpy(place, text.data(), text.size());
        free_ += text.size();
        left_ -= text.size();
        return {place, text.size()};
    }

private:
    static constexpr std::size_t block_size = std::size_t{1} << 18;
    std::vector<std::vector<char>> blocks_;
    char* free_ = nullptr;
    std::size_t left_ = 0;
};

/// Gives each different text a small number and keeps it once.
class Interner {
public:
    [[nodiscard]] std::uint32_t number_of(std::string_view text) {
        const auto found = numbers_.find(text);
        if (found != numbers_.end()) {
            return found->second;
        }
        const auto number = static_cast<std::uint32_t>(texts_.size());
        texts_.push_back(pool_.keep(text));
        numbers_.emplace(texts_.back(), number);
        return number;
    }
    [[nodiscard]] std::string_view text(std::uint32_t number) const { return texts_[number]; }

private:
    TextPool pool_;
    std::vector<std::string_view> texts_;
    std::unordered_map<std::string_view, std::uint32_t> numbers_;
};

}  // namespace swathbook::notebook::detail
