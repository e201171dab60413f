"""Rendering: takes scenes, gives their ink, drawn with matplotlib in a process of its own, or files."""
