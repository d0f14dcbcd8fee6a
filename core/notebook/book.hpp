#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "core/notebook/detail/text_pool.hpp"
#include "core/notebook/entry.hpp"
#include "core/notebook/fold.hpp"

namespace swathbook::notebook {

/// The unguessable part of one new id.
using RandomBytes = std::array<std::uint8_t, 10>;

/// A notebook held in memory: the state its entries amount to, and where the chain of this device
/// ends. It holds no files; whoever keeps the entries adds them once after opening, in any order,
/// and each new one after it is kept.
class Book {
public:
    explicit Book(const Uuid& device) : device_(device) {}

    /// Takes in one entry, wherever it was made.
    ///
    /// @return true when it is new, false when it was here already
    /// @errors as check_entry; conflict{id} when another entry with that id is here
    [[nodiscard]] Result<bool> add(const EntryView& entry, std::int64_t now_ms);

    /// Seals drafts in order onto the chain of this device, all or none. They are not added: that
    /// comes when they are kept. Sealing again before that would fork the chain.
    ///
    /// @param random one for each draft
    /// @errors as seal; not_permitted{subject} as check_permitted, earlier drafts counted
    [[nodiscard]] Result<std::vector<Entry>> seal(std::span<const Draft> drafts,
                                                  std::int64_t now_ms,
                                                  std::span<const RandomBytes> random);

    /// What the entries amount to. Good until the next add.
    [[nodiscard]] const Fold& state();
    /// Entries taken in, each counted once.
    [[nodiscard]] std::size_t size() const { return hashes_.size(); }
    [[nodiscard]] const ChainHead& head() const { return head_; }

private:
    Uuid device_;
    Fold fold_;
    ChainHead head_;
    HybridTime end_of_chain_;     ///< stamp of the entry whose hash is head_.hash
    detail::Interner ids_;        ///< the 16 bytes of each
    std::vector<Digest> hashes_;  ///< by number of the id
};

}  // namespace swathbook::notebook
