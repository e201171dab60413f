"""Lessons made up from sentences, for tests that need no lesson file."""

from foldmath.lesson.grammar.sentences import written_step
from foldmath.lesson.lesson import Lesson, WrittenProduct
from foldmath.lesson.proving import ProvedLesson, prove
from foldmath.paper.moments.moment import Moment
from foldmath.paper.state import FoldedState, Sheet
from foldmath.plane.numbers import exact
from foldmath.statements.items import Level
from foldmath.statements.products import parse_product
from foldmath.words.steps import WrittenStep
from foldmath.worksheets.folding_part import folding_part
from foldmath.worksheets.picture_book import SIZES
from foldmath.worksheets.worksheet import Worksheet, with_items

LETTER = Sheet(exact(11), exact(17, 2), "in")
"""A sheet of letter paper, on its long side."""

EIGHTHS = ("fold left edge to right edge", "fold top edge to bottom edge", "fold left edge to right edge")
"""Three halvings."""

TWELVE_PAGES = (
    "pleat width into 6",
    "open",
    "fold top edge to bottom edge",
    "open",
    "slit at height 1/2 from 1/6 to 5/6",
    "gather into booklet",
)
FOLDS = (
    "fold left edge to right edge",
    "fold top edge to bottom edge",
    "pleat width into 3",
    "fold left edge to middle",
    "fold at 2/5 moving bottom",
)
"""Even and uneven folds along both sides, from which foldings are drawn."""


def written(*sentences: str) -> tuple[WrittenStep, ...]:
    """Read sentences as if they stood at the beginning of a lesson file."""
    return tuple(written_step(text, 1, 1) for text in sentences)


def lesson(*steps: str, practice: tuple[str, ...] = (), title: str = "Seed trays", **told) -> Lesson:
    """Make a lesson of step sentences and products as a teacher writes them."""
    items = tuple(WrittenProduct(text, parse_product(text), 1, 1) for text in practice)
    known = {"grade": 5, "paper": "letter", "sheet": LETTER, "orientation": "landscape"} | told
    return Lesson(file="seed-trays.toml", title=title, steps=written(*steps), practice=items, **known)


def proved(*steps: str, **told) -> ProvedLesson:
    """Make such a lesson and fold it."""
    return prove(lesson(*steps, **told))


def moments(*steps: str, **told) -> tuple[Moment, ...]:
    """Give what each step does."""
    return proved(*steps, **told).moments


def paper_after(*steps: str, **told) -> FoldedState:
    """Give the paper after the last step."""
    return proved(*steps, **told).states[-1]


def sheet_at(level: Level, made: ProvedLesson) -> Worksheet:
    """Give the worksheet of a lesson at one level."""
    return with_items(folding_part(made), made, level, SIZES["regular"].models)


def core_sheet(made: ProvedLesson) -> Worksheet:
    """Give the worksheet of a lesson at the usual level."""
    return sheet_at(Level.CORE, made)
