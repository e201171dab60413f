"""The booklet of a lesson: takes its table in the file, gives the pages that are planned."""
