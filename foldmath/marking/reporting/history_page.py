"""The history of classes as pages: a plot for each class, and under it what came and went, pupil by pupil."""

from collections.abc import Sequence

from foldmath.drawing.scenes import Area, Meaning, Scene, Spot, Stroke, Tone
from foldmath.marking.reporting.history import ClassHistory, State
from foldmath.marking.reporting.papers import MarkPapers
from foldmath.pages.page_shapes import upright
from foldmath.pages.pdf.paginating import PAGE_WORDS, PageMaster
from foldmath.pages.printing import Document
from foldmath.pages.templating import render
from foldmath.phrases import phrase
from foldmath.statements.rules import RULES
from foldmath.words.saying import say

HISTORY = "history.pdf"
CAME_AND_WENT = phrase("What came and went")
"""The title of the file."""


MOST_DAYS, MOST_RULES = 8, 10
"""So many of the last days and of the commonest rules stand on a page."""

BAR_MM, HIGH_MM = 14.0, 12.0

_CODES = {rule.name: rule.code for rule in RULES}


def history_papers(histories: Sequence[ClassHistory], paper: str, language: str) -> MarkPapers:
    """Write the history of classes.

    Args:
        histories: of the classes.
        paper: to print on, ``letter`` or ``A4``.
        language: of the page.
    """
    most = max((max(one.pupils_with(rule), default=0) for one in histories for rule in one.rules), default=1)
    title = say(CAME_AND_WENT, language)
    html = render(
        "marking/history.html",
        language,
        histories=histories,
        language=language,
        title=title,
        code=lambda rule: _CODES.get(rule, rule),
        days=MOST_DAYS,
        rules=MOST_RULES,
        states=State,
    )
    pictures = {f"bar-{count}": _bar(count, most) for count in range(most + 1)}
    document = Document(html, PageMaster(upright(paper), title, "", PAGE_WORDS), answers=True)
    return MarkPapers({HISTORY: document}, pictures)


def _bar(count: int, most: int) -> Scene:
    """Draw one bar over its line, as high as many pupils show a rule on a day."""
    left, right, foot = 2.0, BAR_MM - 2.0, 0.5
    top = foot + (HIGH_MM - 1.0) * count / max(most, 1)
    corners = (Spot(left, foot), Spot(right, foot), Spot(right, top), Spot(left, top))
    bar = (Area(corners, Tone.BACK_SIDE), Stroke(corners, Meaning.GRID, closed=True)) if count else ()
    line = Stroke((Spot(0.0, foot), Spot(BAR_MM, foot)), Meaning.GRID)
    return Scene(width_mm=BAR_MM, height_mm=HIGH_MM, marks=(*bar, line), words=f"{count}")
