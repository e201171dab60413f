"""Practice: takes what a teacher changes of a lesson's items and words, gives them as they will print."""
