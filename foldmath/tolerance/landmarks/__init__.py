"""Landmarks: takes a folding, gives for every fold what is brought onto what."""
