"""A drawing as ink: what the renderer put down, in points, ready to be laid on any page.

The pages are written elsewhere and need not know matplotlib; a recording also travels between processes.
"""

from hashlib import sha256
from typing import NamedTuple, TypeAlias

from foldmath.phrases import Said as PhraseSaid
from foldmath.values import frozen


class Inked(NamedTuple):
    """Path operators and operands of ISO 32000-1, 8.5 (``m``, ``l``, ``c``, ``h``, ``S``, ``f`` …)."""

    operators: str


class Digits(NamedTuple):
    """Digits at a baseline's left end; all in points."""

    x: float
    y: float
    size: float
    text: str


class Said(NamedTuple):
    """From here on, up to the next ``Said``, the ink stands for these words; empty ends it."""

    words: str


Ink: TypeAlias = Inked | Digits | Said


NAME_LENGTH = 16
"""Hexadecimal digits of a recording's name: enough that no two pictures share one."""


@frozen(kw_only=True)
class Recording:
    """A picture's ink.

    Args:
        name: the same for the same ink, and for no other.
        width, height: in points.
        ink: from the back to the front.
        words: what the picture shows, until a language is known.
    """

    name: str
    width: float
    height: float
    ink: tuple[Ink, ...]
    words: PhraseSaid

    def __hash__(self) -> int:
        """Give its name's: a picture has thousands of operators, and is looked up on every page."""
        return hash(self.name)


def recording_of(width: float, height: float, ink: tuple[Ink, ...], words: PhraseSaid) -> Recording:
    """Name a picture's ink by its own content."""
    name = sha256(repr((width, height, ink)).encode()).hexdigest()[:NAME_LENGTH]
    return Recording(name=name, width=width, height=height, ink=ink, words=words)
