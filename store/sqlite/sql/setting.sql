SELECT value FROM settings WHERE name = ?1
