SELECT hash FROM entries WHERE device = ?1 ORDER BY made_ms DESC, made_counter DESC LIMIT 1
