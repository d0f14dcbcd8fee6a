SELECT DISTINCT subject FROM entries WHERE kind = ?1
