"""What every visit needs: takes a request, and refuses it unless the teacher's own page sent it."""
