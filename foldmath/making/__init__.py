"""The one path: a lesson file in, pages out."""

from foldmath.making.booklet import booklet
from foldmath.making.making import draw, make, make_class, project
from foldmath.making.order import Made, Order, lesson_on, page_paper, proved_lesson

__all__ = [
    "Made",
    "Order",
    "booklet",
    "draw",
    "lesson_on",
    "make",
    "make_class",
    "page_paper",
    "project",
    "proved_lesson",
]
