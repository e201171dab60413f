"""Marking: takes what is typed into the grid of a class, gives each mark at once, and then what follows."""
