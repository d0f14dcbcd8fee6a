#include "core/notebook/chain.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "core/base/sort.hpp"

namespace swathbook::notebook {

namespace {

using Links = std::vector<const Link*>;

bool same_hash_first(const Link* a, const Link* b) {
    return std::tie(a->device, a->hash, a->id, a->made, a->previous, a->is_altered) <
           std::tie(b->device, b->hash, b->id, b->made, b->previous, b->is_altered);
}

const Link* find_hash(const Links& by_hash, const Uuid& device, const Digest& hash) {
    const auto place = std::lower_bound(
        by_hash.begin(), by_hash.end(), std::tie(device, hash),
        [](const Link* link, const auto& key) { return std::tie(link->device, link->hash) < key; });
    const bool is_found =
        place != by_hash.end() && (*place)->device == device && (*place)->hash == hash;
    return is_found ? *place : nullptr;
}

/// Marks every member of each group of neighbours that `same` holds for.
template <class Same, class Report>
void each_group(const Links& links, Same same, Report report) {
    for (std::size_t begin = 0; begin < links.size();) {
        std::size_t end = begin + 1;
        while (end < links.size() && same(*links[begin], *links[end])) {
            ++end;
        }
        if (end - begin > 1) {
            for (std::size_t i = begin; i < end; ++i) {
                report(*links[i]);
            }
        }
        begin = end;
    }
}

}  // namespace

std::string_view word_of(ChainFault fault) {
    switch (fault) {
        case ChainFault::altered: return "altered";
        case ChainFault::missing_link: return "missing_link";
        case ChainFault::fork: return "fork";
        case ChainFault::out_of_order: return "out_of_order";
        case ChainFault::same_id: return "same_id";
    }
    return "altered";
}

std::string text_of(const ChainProblem& problem) {
    const auto meaning = [&]() -> std::string_view {
        switch (problem.fault) {
            case ChainFault::altered:
                return "its content does not give its hash: it was changed after it was made";
            case ChainFault::missing_link:
                return "the entry made before it on that device is not here: fetch the missing "
                       "entries";
            case ChainFault::fork:
                return "another entry claims the same place in the chain: the device's notebook "
                       "was copied and both copies went on";
            case ChainFault::out_of_order:
                return "it is not stamped later than the entry before it";
            case ChainFault::same_id: return "another entry has the same id but other content";
        }
        return "";
    };
    return fmt::format("Entry {} of device {}: {}.", text_of(problem.entry),
                       text_of(problem.device), meaning());
}

Link link_of(const EntryView& entry) {
    return Link{entry.id,       entry.device, entry.made,
                entry.previous, entry.hash,   hash_of(entry) != entry.hash};
}

std::vector<ChainProblem> verify_chains(std::span<const Link> given) {
    Links links;
    links.reserve(given.size());
    for (const Link& link : given) {
        links.push_back(&link);
    }
    sort_list(links, same_hash_first);
    links.erase(std::unique(links.begin(), links.end(),
                            [](const Link* a, const Link* b) { return *a == *b; }),
                links.end());

    std::vector<ChainProblem> problems;
    const auto report = [&problems](const Link& link, ChainFault fault) {
        problems.push_back(ChainProblem{link.device, link.id, fault});
    };
    for (const Link* link : links) {
        if (link->is_altered) {
            report(*link, ChainFault::altered);
        }
        if (link->previous == Digest{}) {
            continue;
        }
        const Link* before = find_hash(links, link->device, link->previous);
        if (before == nullptr) {
            report(*link, ChainFault::missing_link);
        } else if (link->made <= before->made) {
            report(*link, ChainFault::out_of_order);
        }
    }

    Links sorted = links;
    sort_list(sorted, [](const Link* a, const Link* b) {
        return std::tie(a->device, a->previous) < std::tie(b->device, b->previous);
    });
    each_group(
        sorted,
        [](const Link& a, const Link& b) {
            return a.device == b.device && a.previous == b.previous;
        },
        [&](const Link& link) { report(link, ChainFault::fork); });
    sort_list(sorted, [](const Link* a, const Link* b) { return a->id < b->id; });
    each_group(
        sorted, [](const Link& a, const Link& b) { return a.id == b.id; },
        [&](const Link& link) { report(link, ChainFault::same_id); });

    sort_list(problems);
    problems.erase(std::unique(problems.begin(), problems.end()), problems.end());
    return problems;
}

std::vector<ChainProblem> verify_chains(std::span<const Entry> entries) {
    std::vector<Link> links;
    links.reserve(entries.size());
    for (const Entry& entry : entries) {
        links.push_back(link_of(view_of(entry)));
    }
    return verify_chains(links);
}

}  // namespace swathbook::notebook
