"""Pages to read: takes what is marked, gives the first page, lists of distances, and strips."""
