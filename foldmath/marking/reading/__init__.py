"""Answers in: takes a sheet as a teacher typed it, gives answers, and the cells that cannot be read."""
