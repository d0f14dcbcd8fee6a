SELECT digest, content FROM blobs
