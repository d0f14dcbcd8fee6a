SELECT sequence, id, author, device, made_ms, made_counter, kind, subject, body, previous, hash FROM entries WHERE subject = ?1 AND kind = ?2 ORDER BY sequence
