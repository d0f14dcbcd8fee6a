SELECT digest FROM blobs ORDER BY digest
