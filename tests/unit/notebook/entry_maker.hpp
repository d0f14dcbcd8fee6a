#pragma once

#include <string>
#include <vector>

#include "core/notebook/entry.hpp"

namespace swathbook::notebook {

/// A small id that is easy to tell apart in a failing test.
inline Uuid id_number(std::uint8_t family, std::uint32_t number) {
    Uuid id;
    id.bytes[0] = family;
    id.bytes[12] = static_cast<std::uint8_t>(number >> 24);
    id.bytes[13] = static_cast<std::uint8_t>(number >> 16);
    id.bytes[14] = static_cast<std::uint8_t>(number >> 8);
    id.bytes[15] = static_cast<std::uint8_t>(number);
    return id;
}
inline Uuid device_number(std::uint32_t number) {
    return id_number(0xD0, number);
}
inline Uuid subject_number(std::uint32_t number) {
    return id_number(0x50, number);
}

inline constexpr std::int64_t april_ninth = 1775743385000;  // 2026-04-09T14:03:05Z

/// Keeps the chains of a few devices, so that a test can write entries one after another.
class Scribe {
public:
    Entry write(std::uint32_t device, std::int64_t now_ms, EntryKind kind, std::uint32_t subject,
                const std::string& body) {
        if (heads_.size() <= device) {
            heads_.resize(device + 1);
        }
        std::array<std::uint8_t, 10> random{};
        random[9] = static_cast<std::uint8_t>(++count_);
        random[8] = static_cast<std::uint8_t>(count_ >> 8);
        Entry entry = seal(Draft{"A. Field", kind, subject_number(subject), body},
                           device_number(device), heads_[device], now_ms, random)
                          .value();
        heads_[device] = ChainHead{entry.made, entry.hash};
        return entry;
    }

private:
    std::vector<ChainHead> heads_;
    std::uint32_t count_ = 0;
};

}  // namespace swathbook::notebook
