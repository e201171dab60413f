"""Pages of guides that are read: takes a template, gives its pages, each with the check ruler at its foot."""

from collections.abc import Mapping
from functools import partial
from typing import Any

from foldmath.guides.pieces.check_ruler import ruler_marks
from foldmath.guides.pieces.letters import Letters
from foldmath.guides.pieces.setting import Drawn, blocks, set_blocks
from foldmath.pages.pdf.exact import ExactDrawing, Rectangle
from foldmath.pages.pdf.flowables import Painted
from foldmath.pages.pdf.paginating import PAGE_WORDS, Copy, FilledPage, PageMaster, filled_pages
from foldmath.pages.pdf.styles import PageShape
from foldmath.phrases import phrase
from foldmath.words.saying import say

FOOT = phrase("guide sheets")
"""What stands at the right of the foot."""


def text_pages(
    template: str,
    language: str,
    shape: PageShape,
    letters: Letters,
    drawings: Mapping[str, Drawn],
    /,
    *,
    title: str,
    **told: Any,
) -> list[FilledPage]:
    """Fill a template and share it out to pages.

    Args:
        template: the name of its file.
        language: of its words.
        shape: of a page.
        letters: how large they are.
        drawings: that it places, by their names.
        title: of the lesson, also at the foot.
        told: what the template says.
    """
    flowables = set_blocks(blocks(template, language, title=title, **told), letters.sheet, drawings)
    master = PageMaster(shape, title, say(FOOT, language), PAGE_WORDS)
    return filled_pages(Copy(flowables, master, _foot(language, title, letters)))


def _foot(language: str, title: str, letters: Letters) -> Painted:
    ruler = letters.ruler
    width, height = ruler.width_mm, ruler.height_mm
    marks = ruler_marks(Rectangle(0.0, 0.0, width, height), turned=False, ruler=ruler)
    drawings = {"ruler": partial(ExactDrawing, width, height, marks)}
    (foot,) = set_blocks(blocks("foot", language, title=title), letters.sheet, drawings)
    return foot
