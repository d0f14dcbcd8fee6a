UPDATE gpkg_contents SET last_change = ?2 WHERE table_name = ?1
