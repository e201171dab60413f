"""Worksheets: takes a proved lesson, gives what worksheet, key and exit ticket say, and its HTML."""
