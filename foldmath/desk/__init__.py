"""The desk: takes a folder of lessons, gives pages for the browser that do all that the commands do.

A door on the one path, like ``cli``: it asks the rooms below and shows what they answer.
"""
