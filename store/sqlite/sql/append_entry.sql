INSERT INTO entries (id, author, device, made_ms, made_counter, kind, subject, body, previous, hash)
VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10)
