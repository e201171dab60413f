"""The booklet: takes a proved lesson with a planned booklet, gives its sheet, to fill and filled."""

from foldmath.booklets.papers import BookletPapers, booklet_papers, printed_booklet

__all__ = ["BookletPapers", "booklet_papers", "printed_booklet"]
