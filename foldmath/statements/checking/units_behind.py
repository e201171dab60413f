"""What is counted or measured, behind a sentence: ``4 × 2 = 8 panels``, ``1/2 of 1/4 = 1/8 of the sheet``."""

import re
from typing import NamedTuple

from foldmath.phrases import Phrase, phrase
from foldmath.statements.expressions import Claim
from foldmath.statements.ratios import Form, Ratio
from foldmath.statements.single_signs import SINGLE_SIGNS

_BEHIND = re.compile(
    rf"(?<=[0-9{''.join(SINGLE_SIGNS)}])\s*"
    r"(?:(?P<count>panels?|partes?)|(?P<size>of\s+the\s+sheet|de\s+la\s+hoja)|(?P<whole>whole|entero))\s*$",
    re.IGNORECASE,
)
"""As the pages write them in English and in Spanish."""


class Apart(NamedTuple):
    """A sentence apart from the words behind it.

    Args:
        sentence: without them.
        words: as typed; empty if there are none.
        kind: of the words, ``count``, ``size`` or ``whole``; None if there are none.
        column: where they begin, counted from 1.
    """

    sentence: str
    words: str
    kind: str | None
    column: int


def apart(text: str) -> Apart:
    """Take the words of a unit off the end of a sentence, if they stand behind a figure."""
    found = _BEHIND.search(text)
    if not found:
        return Apart(text, "", None, len(text) + 1)
    begin = found.start(found.lastgroup or 0)
    return Apart(text[: found.start()], text[begin:].rstrip(), found.lastgroup, begin + 1)


def misplaced(kind: str | None, claim: Claim) -> Phrase | None:
    """Say why words of a kind cannot stand behind the last number of a sentence; None if they can."""
    number = claim.sides[-1]
    form = number.form if isinstance(number, Ratio) else None
    if kind == "count" and form is not Form.WHOLE:
        return phrase("panels are counted, so a whole number stands before this")
    if kind == "size" and form is not Form.FRACTION:
        return phrase("a size is a part of the sheet, so a fraction stands before this")
    if kind == "whole" and str(number) != "1":
        return phrase("only 1 stands before this")
    return None
