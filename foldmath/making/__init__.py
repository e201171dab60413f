"""The one path: a lesson file in, pages out, placed whole as sets of files."""

from foldmath.making.booklet import booklet
from foldmath.making.editable import make_with_copy
from foldmath.making.languages import languages_named, one_language, said_in
from foldmath.making.making import draw, export_fold, make, project
from foldmath.making.order import (
    EVERY_PART,
    Made,
    Order,
    Part,
    lesson_on,
    page_paper,
    parts_named,
    proved_lesson,
)
from foldmath.making.sets.file_set import Access, FileSet
from foldmath.making.sets.placing import Placed, place

__all__ = [
    "EVERY_PART",
    "Access",
    "FileSet",
    "Made",
    "Order",
    "Part",
    "Placed",
    "booklet",
    "draw",
    "export_fold",
    "languages_named",
    "lesson_on",
    "make",
    "make_with_copy",
    "one_language",
    "page_paper",
    "parts_named",
    "place",
    "project",
    "proved_lesson",
    "said_in",
]
