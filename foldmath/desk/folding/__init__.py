"""Folding by pointing: takes a lesson's steps, gives the sheet as it lies and what can be done."""
