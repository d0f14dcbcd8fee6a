DELETE FROM coverage WHERE thing = ?1
