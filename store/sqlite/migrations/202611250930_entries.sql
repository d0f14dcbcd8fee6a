-- The entries of a notebook, what belongs to this copy, and bulk data. Entries are never altered.
CREATE TABLE entries (
    sequence INTEGER PRIMARY KEY AUTOINCREMENT,
    id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
    author TEXT NOT NULL,
    device BLOB NOT NULL CHECK (length(device) = 16),
    made_ms INTEGER NOT NULL,
    made_counter INTEGER NOT NULL,
    kind TEXT NOT NULL,
    subject BLOB NOT NULL CHECK (length(subject) = 16),
    body TEXT NOT NULL,
    previous BLOB NOT NULL CHECK (length(previous) = 32),
    hash BLOB NOT NULL CHECK (length(hash) = 32)
);
CREATE INDEX entries_by_subject ON entries (subject, kind);
CREATE INDEX entries_by_device ON entries (device, made_ms, made_counter);
CREATE INDEX entries_by_time ON entries (made_ms, made_counter);

CREATE TRIGGER entries_are_never_altered BEFORE UPDATE ON entries
BEGIN
    SELECT RAISE(ABORT, 'an entry is never altered');
END;
CREATE TRIGGER entries_are_never_removed BEFORE DELETE ON entries
BEGIN
    SELECT RAISE(ABORT, 'an entry is never removed');
END;

CREATE TABLE blobs (
    digest BLOB PRIMARY KEY NOT NULL CHECK (length(digest) = 32),
    content BLOB NOT NULL
);

CREATE TABLE settings (
    name TEXT PRIMARY KEY NOT NULL,
    value TEXT NOT NULL
);
