"""The lesson: takes a lesson file, gives a ``Lesson`` that is checked and a ``ProvedLesson`` that folds."""
