SELECT hash FROM entries WHERE id = ?1
