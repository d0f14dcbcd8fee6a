SELECT content FROM blobs WHERE digest = ?1
