"""Sets of files: takes what a command made as bytes, puts it in its folder whole."""
