"""Projecting: takes a lesson, gives its slides in a window of their own."""
