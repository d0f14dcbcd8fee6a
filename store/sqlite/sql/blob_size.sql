SELECT length(content) FROM blobs WHERE digest = ?1
