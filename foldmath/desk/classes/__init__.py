"""Whose pages they are: takes a kept class, a file, typed names or how many there are, gives the pupils."""
