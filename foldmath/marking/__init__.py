"""Marking: takes pupils' answers as a teacher types them, gives what they say and what comes next."""
