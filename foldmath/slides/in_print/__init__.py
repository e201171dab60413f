"""Slides on paper: takes the slides of a lesson, gives documents of 16 by 9 with the pictures they place."""
