DELETE FROM passes WHERE thing = ?1
