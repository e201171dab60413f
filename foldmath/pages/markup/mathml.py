"""Figures as HTML: takes sentences and numbers, gives stacked fractions in MathML, or boxes to write in."""

import re
from collections.abc import Callable
from functools import lru_cache, partial
from itertools import chain, repeat
from typing import assert_never

from markupsafe import Markup, escape

from foldmath.statements.expressions import Comparison, Expression, Figures, Sign, Written, written_out
from foldmath.statements.ratios import Form, Ratio
from foldmath.words.languages import DEFAULT
from foldmath.words.saying import OF, say

KEPT = {Sign.TIMES, Sign.DIVIDE, Sign.PLUS, Sign.MINUS, Comparison.EQUAL}
"""Signs that keep to their numbers: an equation is not broken at the end of a line."""

SENTENCES_KEPT = 4096
"""A class's pages repeat most of their sentences."""

GIVEN = ' data-given=""'
"""Marks a box whose answer everybody sees."""

NO_BREAK = "\u00a0"

BOX = Markup("<output{}>{}</output>")
FRACTION = Markup('<span class="fraction">{}{}</span>')
PART = Markup("<span>{}</span>")


@lru_cache(maxsize=SENTENCES_KEPT)
def stacked(figures: Figures, language: str = DEFAULT) -> Markup:
    """Set a sentence of figures, fractions as MathML and "of" in a language; words are set by ``prose``."""
    return _set(figures, _mathml, NO_BREAK, language)


def unbroken(figures: Figures, language: str = DEFAULT) -> Markup:
    """Set the same so that no line ends in it, also at "of", < and >: short ones, which fit one line."""
    return stacked(figures, language).replace(" ", NO_BREAK)


@lru_cache(maxsize=SENTENCES_KEPT)
def boxed(figures: Figures, gap: str = NO_BREAK, language: str = DEFAULT) -> Markup:
    """Put a box for every number of a sentence, its answer inside; a fraction gets two, one above the other.

    Args:
        figures: the sentence.
        gap: what stands before a sign; a line may end at a plain space.
        language: in which "of" is said.
    """
    return _set(figures, partial(_boxes, ""), gap, language)


@lru_cache(maxsize=SENTENCES_KEPT)
def worked(figures: Figures, language: str = DEFAULT) -> Markup:
    """Put the same boxes, their answers written in for everybody."""
    return _set(figures, partial(_boxes, GIVEN), NO_BREAK, language)


@lru_cache(maxsize=SENTENCES_KEPT)
def begun(figures: Figures, language: str = DEFAULT) -> Markup:
    """Put the same boxes, the first number written in for everybody: ``2 × □ = □``."""
    marks = chain((GIVEN,), repeat(""))
    return _set(figures, lambda number: _boxes(next(marks), number), NO_BREAK, language)


def boxed_fraction(above: Expression, below: Expression) -> Markup:
    """Put boxes for the numbers of an expression above a bar and of another below it, as 2 × 4 over 3 × 5."""
    return FRACTION.format(PART.format(boxed(above)), PART.format(boxed(below)))


def worked_fraction(above: Expression, below: Expression) -> Markup:
    """Put the same boxes, their answers written in for everybody."""
    return FRACTION.format(PART.format(worked(above)), PART.format(worked(below)))


def _set(figures: Figures, number: Callable[[Ratio], Markup], gap: str, language: str) -> Markup:
    return Markup("").join(_part(part, number, gap, language) for part in written_out(figures))


def _part(part: Written, number: Callable[[Ratio], Markup], gap: str, language: str) -> Markup:
    if isinstance(part, Ratio):
        return number(part)
    if isinstance(part, str):
        return escape(part)
    if part is Sign.BAR:
        return escape(part.value)
    if part is Sign.OF:
        return escape(f" {say(OF, language)} ")
    return escape(f"{gap}{part.value}{NO_BREAK}" if part in KEPT else f" {part.value} ")


def _mathml(number: Ratio) -> Markup:
    match number.form:
        case Form.WHOLE | Form.DECIMAL | Form.PERCENT:
            return escape(number)
        case Form.FRACTION:
            return _math("", number)
        case Form.MIXED:
            return _math(Markup("<mn>{}</mn>").format(number.wholes), number)
    assert_never(number.form)


def _math(before: str, number: Ratio) -> Markup:
    fraction = Markup("<mfrac><mn>{}</mn><mn>{}</mn></mfrac>").format(number.above, number.denominator)
    return Markup("<math>{}{}</math>").format(before, fraction)


def _boxes(given: str, number: Ratio) -> Markup:
    box = partial(BOX.format, Markup(given))
    match number.form:
        case Form.WHOLE | Form.DECIMAL | Form.PERCENT:
            return box(number)
        case Form.FRACTION:
            return FRACTION.format(box(number.above), box(number.denominator))
        case Form.MIXED:
            # Apart, so that the bar does not run into the box of the whole number.
            return box(number.wholes) + NO_BREAK + FRACTION.format(box(number.above), box(number.denominator))
    assert_never(number.form)


WRITTEN_FRACTION = re.compile(r"(?:(\d+) )?(\d+)/(\d+)")
WRITTEN_SIGN = re.compile(r" ([×÷=+−]) ")


@lru_cache(maxsize=SENTENCES_KEPT)
def prose(text: str) -> Markup:
    """Set words that a person wrote, such as a step or a note: fractions among them are stacked."""
    text = WRITTEN_SIGN.sub(rf"{NO_BREAK}\1{NO_BREAK}", text)
    parts: list[Markup] = []
    end = 0
    for found in WRITTEN_FRACTION.finditer(text):
        whole, above, below = found.groups()
        before = Markup("<mn>{}</mn>").format(whole) if whole else ""
        fraction = Markup("<mfrac><mn>{}</mn><mn>{}</mn></mfrac>").format(above, below)
        parts += [escape(text[end : found.start()]), Markup("<math>{}{}</math>").format(before, fraction)]
        end = found.end()
    parts.append(escape(text[end:]))
    return Markup("").join(parts)
