SELECT coalesce(max(sequence), 0), count(*) FROM entries
