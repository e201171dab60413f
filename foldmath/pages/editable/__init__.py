"""Pages that a teacher can change: takes a document and its pictures, gives a Word file (ECMA-376)."""
