#pragma once

#include "core/base/result.hpp"
#include "store/sqlite/connection.hpp"

namespace swathbook::store {

/// Gives a connection the five functions that the spatial-index triggers of a GeoPackage call:
/// ST_IsEmpty, ST_MinX, ST_MaxX, ST_MinY, ST_MaxY. They read null from what is no geometry.
/// @source OGC 12-128r18 annex F.3
[[nodiscard]] Result<void> add_spatial_functions(Connection& connection);

}  // namespace swathbook::store
