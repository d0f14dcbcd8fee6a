INSERT INTO setbacks (geom, thing, name, author, changed, details) VALUES (?1, ?2, ?3, ?4, ?5, ?6)
