SELECT name FROM schema_migrations ORDER BY name
