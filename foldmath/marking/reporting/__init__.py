"""What is said: takes a marked class, gives the report, the notes to pupils, the marks and their history."""
