"""A booklet as a lesson plans it: its form, and what stands on each page, with nothing laid out yet."""

from enum import Enum

from foldmath.lesson.booklet.race import Race
from foldmath.paper.booklet.booklet import Booklet
from foldmath.paper.lengths import Length
from foldmath.paper.steps import Axis
from foldmath.phrases import Said
from foldmath.plane.numbers import Exact
from foldmath.statements.items.story import StoryItem
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, fraction, lowest_terms
from foldmath.values import frozen
from foldmath.words.steps import WrittenStep


@frozen
class Title:
    """The name of the booklet, large, with a line for the writer's name below it."""

    text: Said


@frozen
class Heading:
    """The name of a page."""

    text: Said


@frozen
class Prompt:
    """A question to answer or the beginning of a sentence to go on with."""

    text: Said


@frozen
class Lines:
    """Ruled lines to write on.

    Args:
        count: how many; None for as many as the page has room for.
        answer: what would be right there, for the key; empty where anything may be.
    """

    count: int | None = None
    answer: Said = ""


@frozen
class Frame:
    """A frame to draw in, as high as the page has room for.

    Args:
        caption: what to draw; may be empty.
    """

    caption: Said = ""


class About(Enum):
    """Which sentence of a fold is recorded."""

    COUNT = "count"
    SIZE = "size"


@frozen
class RecordFold:
    """The sentence of a fold with boxes for its numbers.

    Args:
        step: the step of the lesson, counted from 0.
        about: which of its sentences.
    """

    step: int
    about: About = About.SIZE


@frozen
class RecordProduct:
    """A product with a box for its answer."""

    text: str
    product: Product


@frozen
class FoldPicture:
    """The folded sheet before a step with the fold's arrow; the step counted from 0."""

    step: int


@frozen
class ModelPicture:
    """The area model of a product: blank for pupils, hatched in the key."""

    text: str
    product: Product


@frozen
class CreasesPicture:
    """The opened sheet with the creases of the whole lesson, and no numbers that would tell an answer."""


@frozen
class SheetPicture:
    """The open sheet before it is folded, which tells nothing that other pages ask."""


@frozen
class NumberLine:
    """An edge of the sheet as a number line from 0 to 1, with a fraction to write at every crease.

    Args:
        axis: the width, from the left, or the height, from the bottom.
        creases: where they meet it, as parts of its length.
    """

    axis: Axis
    creases: tuple[Exact, ...]

    @property
    def names(self) -> tuple[Ratio, ...]:
        """What the creases are called: 1/4, 2/4, 3/4 where all parts are equal; else in lowest terms."""
        parts = len(self.creases) + 1
        counted = tuple(fraction(count, parts) for count in range(1, parts))
        if tuple(name.value for name in counted) == self.creases:
            return counted
        return tuple(lowest_terms(crease) for crease in self.creases)


@frozen
class Story:
    """A word problem about a product, and the sentence that answers it."""

    item: StoryItem


class GamePage(Enum):
    """What a page of the game for two holds."""

    RULES = "rules"
    BOARD = "board"


@frozen
class Game:
    """A page of the game for two, whose board is the opened sheet."""

    page: GamePage
    race: Race


@frozen
class Table:
    """A table to fill in.

    Args:
        columns: their headings.
        rows: what is given in each row, a text a column, empty where pupils write.
        answers: what would be right in each cell that pupils write in, for the key; empty texts elsewhere.
    """

    columns: tuple[Said, ...]
    rows: tuple[tuple[Said, ...], ...]
    answers: tuple[tuple[Said, ...], ...]


Content = (
    Title
    | Heading
    | Prompt
    | Lines
    | Frame
    | RecordFold
    | RecordProduct
    | FoldPicture
    | ModelPicture
    | CreasesPicture
    | SheetPicture
    | NumberLine
    | Story
    | Game
    | Table
)


@frozen
class PlannedPage:
    """What stands on one page, from the top; nothing for a blank page.

    Args:
        contents: in order.
        line: where the page begins in the lesson file, for messages; 0 if it was taken from elsewhere.
        column: the same.
    """

    contents: tuple[Content, ...] = ()
    line: int = 0
    column: int = 0


@frozen(kw_only=True)
class BookletPlan:
    """The booklet that a lesson asks for.

    Args:
        form: its name, such as ``eight-page``.
        steps: by which its sheet is folded from an open sheet.
        booklet: the folded booklet, with as many pages as the form has.
        pages: planned pages in reading order, never more than ``booklet`` has.
        ruling: from one ruled line to the next.
        lent: the pages as another lesson file has them, by SHA-256; empty where they stand in this one.
    """

    form: str
    steps: tuple[WrittenStep, ...]
    booklet: Booklet
    pages: tuple[PlannedPage, ...]
    ruling: Length
    lent: str = ""
