"""Tags: takes what is painted, and what it is, gives the tag tree by which a file is read aloud."""
