#pragma once

#include <cstdint>
#include <cstring>
#include <vector>

#include "core/base/uuid.hpp"
#include "core/notebook/entry.hpp"

namespace swathbook::notebook::detail {

inline constexpr std::uint32_t nothing = 0xFFFFFFFF;

/// One thing the notebook knows of. Amendments are things of their own kind with the record as
/// subject.
struct Thing {
    Uuid subject;
    EntryKind kind = EntryKind::sprayer;
    std::uint32_t first_field = nothing;  ///< head of a list in FieldSlots
    std::uint32_t first_body = nothing;   ///< records and amendments: head of the list of bodies
};

/// Finds things by kind and subject: open addressing over indices, about 6 bytes a thing beside the
/// thing itself.
class ThingTable {
public:
    ThingTable() : slots_(64, nothing) {}

    [[nodiscard]] std::uint32_t find(EntryKind kind, const Uuid& subject) const {
        return slots_[slot_of(kind, subject)];
    }
    [[nodiscard]] std::uint32_t find_or_add(EntryKind kind, const Uuid& subject) {
        std::size_t slot = slot_of(kind, subject);
        if (slots_[slot] != nothing) {
            return slots_[slot];
        }
        if ((things_.size() + 1) * 3 > slots_.size() * 2) {
            grow();
            slot = slot_of(kind, subject);
        }
        slots_[slot] = static_cast<std::uint32_t>(things_.size());
        things_.push_back(Thing{subject, kind});
        return slots_[slot];
    }
    [[nodiscard]] Thing& at(std::uint32_t index) { return things_[index]; }
    [[nodiscard]] const Thing& at(std::uint32_t index) const { return things_[index]; }
    [[nodiscard]] const std::vector<Thing>& all() const { return things_; }

private:
    [[nodiscard]] std::size_t slot_of(EntryKind kind, const Uuid& subject) const {
        std::uint64_t high = 0;
        std::uint64_t low = 0;
        std::memcpy(&high, subject.bytes.data(), 8);
        std::memcpy(&low, subject.bytes.data() + 8, 8);
        std::uint64_t hash = (high ^ (low * 0x9E3779B97F4A7C15)) + static_cast<std::uint64_t>(kind);
        hash = (hash ^ (hash >> 32)) * 0xD6E8FEB86659FD93;
        hash ^= hash >> 32;
        const std::size_t mask = slots_.size() - 1;
        std::size_t slot = hash & mask;
        while (slots_[slot] != nothing) {
            const Thing& thing = things_[slots_[slot]];
            if (thing.kind == kind && thing.subject == subject) {
                break;
            }
            slot = (slot + 1) & mask;
        }
        return slot;
    }
    void grow() {
        slots_.assign(slots_.size() * 2, nothing);
        for (std::uint32_t i = 0; i < things_.size(); ++i) {
            slots_[slot_of(things_[i].kind, things_[i].subject)] = i;
        }
    }

    std::vector<Thing> things_;
    std::vector<std::uint32_t> slots_;
};

}  // namespace swathbook::notebook::detail
