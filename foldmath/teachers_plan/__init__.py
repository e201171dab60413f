"""The teacher's plan: takes a proved lesson and its core worksheet, gives what the plan says."""
