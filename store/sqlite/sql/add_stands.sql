INSERT INTO stands (geom, thing, name, author, changed, details) VALUES (?1, ?2, ?3, ?4, ?5, ?6)
