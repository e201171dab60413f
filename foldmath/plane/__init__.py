"""The exact plane: takes rational numbers, gives points, lines, polygons and the motions between them."""
