INSERT OR IGNORE INTO blobs (digest, content) VALUES (?1, ?2)
