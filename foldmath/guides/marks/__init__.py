"""What is marked: takes a proved lesson, gives its fold lines, ticks and cuts, exact, on the sheet."""
