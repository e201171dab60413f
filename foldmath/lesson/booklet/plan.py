"""A booklet as a lesson plans it: its form, and what stands on each page, with nothing laid out yet."""

from dataclasses import dataclass
from enum import Enum

from foldmath.paper.booklet.booklet import Booklet
from foldmath.paper.lengths import Length
from foldmath.statements.products import Product
from foldmath.words.steps import WrittenStep


@dataclass(frozen=True)
class Title:
    """The name of the booklet, large, with a line for the writer's name below it."""

    text: str


@dataclass(frozen=True)
class Heading:
    """The name of a page."""

    text: str


@dataclass(frozen=True)
class Prompt:
    """A question to answer or the beginning of a sentence to go on with."""

    text: str


@dataclass(frozen=True)
class Lines:
    """Ruled lines to write on.

    Args:
        count: how many; None for as many as the page has room for.
    """

    count: int | None = None


@dataclass(frozen=True)
class Frame:
    """A frame to draw in, as high as the page has room for.

    Args:
        caption: what to draw; may be empty.
    """

    caption: str = ""


class About(Enum):
    """Which sentence of a fold is recorded."""

    COUNT = "count"
    SIZE = "size"


@dataclass(frozen=True)
class RecordFold:
    """The sentence of a fold with boxes for its numbers.

    Args:
        step: the step of the lesson, counted from 0.
        about: which of its sentences.
    """

    step: int
    about: About = About.SIZE


@dataclass(frozen=True)
class RecordProduct:
    """A product with a box for its answer."""

    text: str
    product: Product


@dataclass(frozen=True)
class FoldPicture:
    """The folded sheet before a step with the fold's arrow; the step counted from 0."""

    step: int


@dataclass(frozen=True)
class ModelPicture:
    """The area model of a product: blank for pupils, hatched in the key."""

    text: str
    product: Product


class NumberForm(Enum):
    """A way to write or draw a whole number."""

    NUMERAL = "numeral"
    WORDS = "words"
    EXPANDED = "expanded form"
    BLOCKS = "place-value blocks"


@dataclass(frozen=True)
class NumberForms:
    """A whole number in some of its forms; the first form is given, pupils fill the others.

    Args:
        value: from 0 to 999,999.
        forms: in the order of the page.
    """

    value: int
    forms: tuple[NumberForm, ...]


@dataclass(frozen=True)
class Table:
    """A table to fill in.

    Args:
        columns: their headings.
        rows: what is given in each row, a text a column, empty where pupils write.
    """

    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True)
class AboutTheWriter:
    """Sentence beginnings and lines by which pupils tell who wrote the booklet."""


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
    | NumberForms
    | Table
    | AboutTheWriter
)


@dataclass(frozen=True)
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


@dataclass(frozen=True, kw_only=True)
class BookletPlan:
    """The booklet that a lesson asks for.

    Args:
        form: its name, such as ``eight-page``.
        steps: by which its sheet is folded from an open sheet.
        booklet: the folded booklet, with as many pages as the form has.
        pages: planned pages in reading order, never more than ``booklet`` has.
        ruling: from one ruled line to the next.
    """

    form: str
    steps: tuple[WrittenStep, ...]
    booklet: Booklet
    pages: tuple[PlannedPage, ...]
    ruling: Length
