UPDATE coverage SET geom = ?1, name = ?3, author = ?4, changed = ?5, details = ?6 WHERE thing = ?2
