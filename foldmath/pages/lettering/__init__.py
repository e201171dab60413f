"""Letters of any script: which font has them, in which order they stand, how they join."""
