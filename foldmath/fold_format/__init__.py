"""Exchange: takes a proved lesson, gives a FOLD file; takes such a file, gives the lesson that folds it."""
