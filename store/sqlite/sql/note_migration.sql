INSERT INTO schema_migrations (name) VALUES (?1)
