DELETE FROM setbacks WHERE thing = ?1
