"""The doors on the one path: each takes a command's arguments, gives an exit code."""
