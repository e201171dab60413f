"""What was asked: takes a lesson, a roster and a code, gives what stands on each pupil's page."""
