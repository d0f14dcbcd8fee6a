INSERT OR REPLACE INTO settings (name, value) VALUES (?1, ?2)
