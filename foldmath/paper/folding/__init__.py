"""Folding, turning and cutting: takes the paper as it lies and what is done to it, gives how it lies then."""
