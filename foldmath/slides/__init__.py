"""Projection: takes a proved lesson and its core worksheet, gives the slides for the front of the room."""
