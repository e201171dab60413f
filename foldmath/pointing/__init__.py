"""What hands can do with the paper as it lies: takes a state, gives folds and other acts, plainest first."""
