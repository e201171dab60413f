"""Asking: takes a sentence or a number of parts, gives whether it is true, or how to fold without a ruler."""
