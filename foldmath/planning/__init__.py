"""Planning: takes what a teacher wants from a sheet of paper, gives the folds that make it."""
