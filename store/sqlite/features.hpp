#pragma once

#include <string_view>

#include "core/notebook/entry.hpp"
#include "core/notebook/fold.hpp"
#include "store/sqlite/connection.hpp"

namespace swathbook::store {

/// The feature tables of the GeoPackage are a view for other programs: a row follows from the fold
/// of its thing.
///
///   stand    "boundary" (Polygon, MultiPolygon)       -> stands
///   setback  "geometry" (any)                         -> setbacks
///   pass     "track"    (LineString, MultiLineString) -> passes
///   pass     "covered"  (Polygon, MultiPolygon)       -> coverage
///
/// A field holds a GeoJSON geometry, or {"blob":"DIGEST"} for one kept as a blob. No field, a
/// cleared field, or "removed":true means no row.

/// True for the kinds that have features.
[[nodiscard]] bool has_features(notebook::EntryKind kind);

/// Checks the shapes in a draft's body.
/// @errors as feature_geometry, with the name of the field
[[nodiscard]] Result<void> check_shapes(Connection& connection, notebook::EntryKind kind,
                                        std::string_view body);

/// Writes, changes or removes the rows of one thing. A shape that cannot be read (an entry from
/// elsewhere may hold one) gives no row.
[[nodiscard]] Result<void> write_features(Connection& connection, notebook::EntryKind kind,
                                          const Uuid& subject, const notebook::Fold& state);

}  // namespace swathbook::store
