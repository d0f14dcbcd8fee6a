DELETE FROM stands WHERE thing = ?1
