"""Choosing a lesson: takes all lessons there are, gives the page that shows them and opens one."""
