"""Printing: takes a lesson and wishes for its pages, gives them as they will print, and writes them."""
