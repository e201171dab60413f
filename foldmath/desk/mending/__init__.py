"""Mending: takes a lesson file that cannot be read, or can, gives its text to be corrected and saved."""
