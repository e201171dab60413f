"""The typeface of the pages: takes a variable font as a library brings it, gives two weights of it."""
