"""Judging: takes a question and an answer, gives a mark with what explains it."""
