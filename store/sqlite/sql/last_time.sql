SELECT made_ms, made_counter FROM entries ORDER BY made_ms DESC, made_counter DESC LIMIT 1
