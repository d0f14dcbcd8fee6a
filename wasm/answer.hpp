#pragma once

#include <span>
#include <vector>

#include "api/json/writer.hpp"
#include "core/notebook/chain.hpp"
#include "core/notebook/fold.hpp"

namespace swathbook::wasm {

using api::JsonWriter;

/// What the notebook holds, as members of a JSON answer.

/// A thing as it stands, as members of an open object: its fields, who changed it last and when,
/// and for a record how it was closed and amended.
void write_thing(JsonWriter& out, const notebook::Fold& state, notebook::EntryKind kind,
                 const Uuid& id);
/// "conflicts", each with one sentence for people.
void write_conflicts(JsonWriter& out, const notebook::Fold& state);
/// "problems" of chains.
void write_problems(JsonWriter& out, const std::vector<notebook::ChainProblem>& problems);
/// "entries" of one thing, in the order given.
void write_history(JsonWriter& out, std::span<const notebook::Entry* const> entries);
/// "list" of entries without their content.
void write_sealed(JsonWriter& out, std::span<const notebook::Entry> entries);
/// "list" of entries, each with its own travelling text.
void write_parsed(JsonWriter& out, std::span<const notebook::Entry> entries);

}  // namespace swathbook::wasm
