"""The booklet: takes a proved lesson with a planned booklet, gives its sheet, to fill and filled."""
