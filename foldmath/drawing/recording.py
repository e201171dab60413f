"""A drawing as ink: what the renderer put down, in points, ready to be laid on any page.

The pages are written elsewhere and need not know matplotlib; a recording also travels between processes.
"""

from dataclasses import dataclass
from typing import NamedTuple, TypeAlias


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


@dataclass(frozen=True)
class Recording:
    """A picture's ink: its size in points, its ink from the back to the front, and what it shows."""

    width: float
    height: float
    ink: tuple[Ink, ...]
    words: str
