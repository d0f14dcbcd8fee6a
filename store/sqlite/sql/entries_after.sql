SELECT sequence, id, author, device, made_ms, made_counter, kind, subject, body, previous, hash FROM entries WHERE sequence > ?1 ORDER BY sequence
