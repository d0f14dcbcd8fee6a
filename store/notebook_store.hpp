#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/blake2b.hpp"
#include "core/base/result.hpp"
#include "core/notebook/chain.hpp"
#include "core/notebook/entry.hpp"
#include "core/notebook/fold.hpp"

namespace swathbook::store {

/// An entry that was not taken in, and why.
struct Refusal {
    Uuid entry;
    Error error;
};

/// What became of entries that came from elsewhere.
struct MergeReport {
    std::size_t added = 0;
    std::size_t already_here = 0;
    std::vector<Refusal> refused;
};

/// How far a notebook reaches.
struct Extent {
    std::int64_t last = 0;     ///< number of the last entry; 0 when there is none
    std::int64_t entries = 0;  ///< how many there are
};

/// Called with each entry and its number in this store. The texts live until it returns. A failure
/// ends the walk and is handed on.
using EntryVisitor =
    std::function<Result<void>(std::int64_t number, const notebook::EntryView& entry)>;

/// Where a notebook is kept. Entries are appended and never altered; what append, merge, put_blob
/// and set_setting return is on disk before they return.
///
/// Every function can fail with
/// unavailable (another program holds the notebook: try again), io (disk full, file read-only or
/// not readable), corrupt_data (the file is damaged). After a failure nothing has changed.
class NotebookStore {
public:
    NotebookStore() = default;
    NotebookStore(const NotebookStore&) = delete;
    NotebookStore& operator=(const NotebookStore&) = delete;
    virtual ~NotebookStore() = default;

    /// Seals drafts into this device's chain, in order, all or none.
    ///
    /// @return the entries as they were kept
    /// @errors as seal; not_permitted{subject} for changing a closed record or amending an open
    /// one;
    ///         invalid_input{boundary|geometry|track|covered} for a shape that is no GeoJSON
    [[nodiscard]] virtual Result<std::vector<notebook::Entry>> append(
        std::span<const notebook::Draft> drafts) = 0;

    /// Takes in entries made elsewhere. Each that is already here counts once; each that fails
    /// check_entry, or has the id of another entry, is refused and named; the others are kept.
    [[nodiscard]] virtual Result<MergeReport> merge(std::span<const notebook::Entry> entries) = 0;

    /// Walks all entries with a number greater than `after` (0: all), in order of number. Numbers
    /// only grow, so the last one seen is the cursor for the next walk.
    [[nodiscard]] virtual Result<void> each_entry(std::int64_t after,
                                                  const EntryVisitor& visit) = 0;
    /// How many entries there are, and the number of the last.
    [[nodiscard]] virtual Result<Extent> extent() = 0;
    /// All entries about one thing, in order of number.
    [[nodiscard]] virtual Result<std::vector<notebook::Entry>> entries_of(notebook::EntryKind kind,
                                                                          const Uuid& subject) = 0;
    /// The state all entries amount to.
    [[nodiscard]] virtual Result<notebook::Fold> state() = 0;
    /// Checks every entry and every chain.
    [[nodiscard]] virtual Result<std::vector<notebook::ChainProblem>> chain_problems() = 0;

    /// Keeps bytes under their digest; keeping the same bytes again changes nothing.
    /// @errors out_of_range{blob} above largest_blob
    [[nodiscard]] virtual Result<Digest> put_blob(std::span<const std::uint8_t> bytes) = 0;
    /// @errors not_found{blob}; corrupt_data{blob} when the bytes do not give the digest
    [[nodiscard]] virtual Result<std::vector<std::uint8_t>> blob(const Digest& digest) = 0;

    /// The digests of all blobs, in ascending order.
    [[nodiscard]] virtual Result<std::vector<Digest>> blobs() = 0;

    /// How long a blob is, without reading it.
    /// @errors not_found{blob}
    [[nodiscard]] virtual Result<std::uint64_t> blob_size(const Digest& digest) = 0;

    /// A setting of this copy of the notebook; settings do not travel.
    [[nodiscard]] virtual Result<std::optional<std::string>> setting(std::string_view name) = 0;
    [[nodiscard]] virtual Result<void> set_setting(std::string_view name,
                                                   std::string_view value) = 0;

    /// Whose chain this copy of the notebook writes.
    [[nodiscard]] virtual Uuid device() const = 0;

    static constexpr std::size_t largest_blob = std::size_t{256} << 20;
};

}  // namespace swathbook::store
