"""A booklet from one sheet: takes the paper as it lies, gives its leaves, its pages and how it closes."""
