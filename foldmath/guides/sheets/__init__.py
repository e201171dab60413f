"""Sheets at exact scale: takes what is marked, gives pages with places found for numbers and words."""
