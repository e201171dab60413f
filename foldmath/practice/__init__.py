"""Practice: takes a proved lesson, gives the items of a level that fit its folds, grade and seed."""
