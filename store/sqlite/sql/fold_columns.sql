SELECT id, author, device, made_ms, made_counter, kind, subject, body FROM entries ORDER BY sequence
