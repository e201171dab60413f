"""The sum behind an item in a teacher's own words: takes text, gives what is worked out."""

import re

from foldmath.phrases import Said, phrase
from foldmath.plane.numbers import ZERO, denominator, numerator
from foldmath.statements.claim_grammar import parse, with_nearest
from foldmath.statements.expressions import Expression, is_bare, numbers_in, value
from foldmath.statements.products import LARGEST
from foldmath.statements.refusals import SentenceRefused

EXAMPLE = "3/4 × 1/2"

MOST_NUMBERS, MOST_SIGNS = 6, 40
"""A sum with more numbers, or written in more signs, leaves no room for its answer in a column of a key."""


def parse_sum(text: str) -> Expression:
    """Read ``3/4 × 1/2``, ``1/2 of 3/4``, ``3 ÷ 1/4``, ``1/2 + 1/4`` and whatever a claim has on one side.

    Raises:
        SentenceRefused: it cannot be read, has its answer in it, is one number alone, or its numbers or its
            answer are below zero, zero, or too large for a page; carries the column.
    """
    try:
        return _read(text)
    except SentenceRefused as refusal:
        raise with_nearest(refusal, text, lambda near: str(_read(near)), EXAMPLE) from None


def _read(text: str) -> Expression:
    claim = parse(text)
    if claim.comparisons and (found := re.search(r"[=<>≤≥≠!]", text)):
        message = phrase("the sum behind an item has no answer in it")
        raise SentenceRefused(found.start() + 1, message, text[found.start() :], str(claim.asked))
    asked = claim.asked
    if is_bare(asked):
        raise _refused(text, phrase("a sum is two numbers or more with signs such as × between them"))
    if len(numbers_in(asked)) > MOST_NUMBERS or len(str(asked)) > MOST_SIGNS:
        message = phrase(
            "a sum has at most {numbers} numbers and {signs} characters",
            numbers=MOST_NUMBERS,
            signs=MOST_SIGNS,
        )
        raise _refused(text, message)
    for found in re.finditer(r"[0-9]+", text):
        if int(found[0]) > LARGEST:
            message = phrase("no number of a sum is larger than {largest}", largest=LARGEST)
            raise SentenceRefused(found.start() + 1, message, found[0], EXAMPLE)
    answer = value(asked)
    if answer <= ZERO:
        raise _refused(text, phrase("the answer of this sum is not above 0"))
    if max(numerator(answer), denominator(answer)) > LARGEST:
        largest = phrase(
            "the answer of this sum has a number above {largest} above or below its bar", largest=LARGEST
        )
        raise _refused(text, largest)
    return asked


def _refused(text: str, message: Said) -> SentenceRefused:
    return SentenceRefused(1, message, text.strip(), EXAMPLE)
