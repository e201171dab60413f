"""What a cell of the answers sheet can hold, as values."""

from typing import TypeAlias

from foldmath.phrases import Said
from foldmath.statements.expressions import Claim, Comparison
from foldmath.statements.ratios import Ratio
from foldmath.statements.sentences import About
from foldmath.values import frozen


@frozen
class Number:
    """A number, with the words that stand behind it: ``8 panels``, ``3/4 m``."""

    ratio: Ratio
    unit: str = ""


@frozen
class Numbers:
    """Several numbers, where a fold makes panels of several sizes: ``1/6, 1/3``."""

    ratios: tuple[Ratio, ...]


@frozen
class Sentence:
    """A whole sentence of figures: ``4 × 2 = 8``."""

    claim: Claim


@frozen
class SignAnswer:
    """``<``, ``>`` or ``=``."""

    sign: Comparison


@frozen
class Truth:
    """``true`` or ``false``, as a pupil calls a sentence."""

    true: bool


@frozen
class Ticks:
    """For each of several sentences, whether it was taken for count or for size: ``c s s c``."""

    about: tuple[About, ...]


@frozen
class Judged:
    """An answer that the teacher has judged: ``✓`` or ``✗``."""

    right: bool


@frozen
class NoNumber:
    """A fraction over 0: written down by a pupil, and worth nothing."""

    text: str


@frozen
class Words:
    """Words, which only some questions can be answered with, such as steps."""

    text: str


@frozen
class NotDone:
    """``-``: nothing was written."""


@frozen
class Absent:
    """The pupil was not there."""


@frozen
class DateMade:
    """A date that a spreadsheet made of a fraction, and the fractions that it may have been."""

    text: str
    readings: tuple[Ratio, ...]


@frozen
class Unread:
    """A cell that cannot be read, and why."""

    text: str
    reason: Said


Answer: TypeAlias = (
    Number
    | Numbers
    | Sentence
    | SignAnswer
    | Truth
    | Ticks
    | Judged
    | NoNumber
    | Words
    | NotDone
    | Absent
    | DateMade
    | Unread
)
"""All that a cell can hold; an empty cell holds none of them."""
