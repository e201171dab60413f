"""Files: takes a lesson file or a list of pupils, gives their values with their places, and their slips."""
