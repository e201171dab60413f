"""What a cell of the answers sheet can hold, as values."""

from dataclasses import dataclass
from typing import TypeAlias

from foldmath.phrases import Said
from foldmath.statements.expressions import Claim, Comparison
from foldmath.statements.ratios import Ratio
from foldmath.statements.sentences import About


@dataclass(frozen=True)
class Number:
    """A number, with the words that stand behind it: ``8 panels``, ``3/4 m``."""

    ratio: Ratio
    unit: str = ""


@dataclass(frozen=True)
class Numbers:
    """Several numbers, where a fold makes panels of several sizes: ``1/6, 1/3``."""

    ratios: tuple[Ratio, ...]


@dataclass(frozen=True)
class Sentence:
    """A whole sentence of figures: ``4 × 2 = 8``."""

    claim: Claim


@dataclass(frozen=True)
class SignAnswer:
    """``<``, ``>`` or ``=``."""

    sign: Comparison


@dataclass(frozen=True)
class Ticks:
    """For each of several sentences, whether it was taken for count or for size: ``c s s c``."""

    about: tuple[About, ...]


@dataclass(frozen=True)
class Judged:
    """An answer that the teacher has judged: ``✓`` or ``✗``."""

    right: bool


@dataclass(frozen=True)
class NoNumber:
    """A fraction over 0: written down by a pupil, and worth nothing."""

    text: str


@dataclass(frozen=True)
class Words:
    """Words, which only some questions can be answered with, such as steps."""

    text: str


@dataclass(frozen=True)
class NotDone:
    """``-``: nothing was written."""


@dataclass(frozen=True)
class Absent:
    """The pupil was not there."""


@dataclass(frozen=True)
class DateMade:
    """A date that a spreadsheet made of a fraction, and the fractions that it may have been."""

    text: str
    readings: tuple[Ratio, ...]


@dataclass(frozen=True)
class Unread:
    """A cell that cannot be read, and why."""

    text: str
    reason: Said


Answer: TypeAlias = (
    Number
    | Numbers
    | Sentence
    | SignAnswer
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
