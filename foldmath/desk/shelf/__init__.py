"""The teacher's folder: takes the name of a lesson, gives its file, and keeps what she changes in it."""
