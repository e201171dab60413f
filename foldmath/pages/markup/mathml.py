"""Sentences of figures as HTML: fractions stacked in MathML, or boxes to write them in."""

import re
from functools import lru_cache

from markupsafe import Markup, escape

FRACTION = Markup('<span class="fraction"><span>{}</span><span>{}</span></span>')

SIGNS = re.compile(r" ([×÷=+−]) ")
"""Signs keep to their numbers: an equation is not broken at the end of a line."""

SENTENCES_KEPT = 4096
"""A class's pages repeat most of their sentences."""

GIVEN = ' data-given=""'
"""Marks a box whose answer everybody sees."""

NO_BREAK = "\u00a0"

NUMBER = re.compile(r"(?:(\d+) )?(\d+)/(\d+)|(\d+)")
"""A mixed number or a fraction, or a whole number."""


@lru_cache(maxsize=SENTENCES_KEPT)
def stacked(text: str) -> Markup:
    """Set every fraction in a text as MathML, and leave the words as they are."""
    text = SIGNS.sub(rf"{NO_BREAK}\1{NO_BREAK}", text)
    parts: list[Markup] = []
    end = 0
    for found in NUMBER.finditer(text):
        parts.append(escape(text[end : found.start()]))
        parts.append(_mathml(found))
        end = found.end()
    parts.append(escape(text[end:]))
    return Markup("").join(parts)


def _mathml(found: re.Match[str]) -> Markup:
    whole, above, below, alone = found.groups()
    if alone:
        return escape(alone)
    before = Markup("<mn>{}</mn>").format(whole) if whole else Markup("")
    fraction = Markup("<mfrac><mn>{}</mn><mn>{}</mn></mfrac>").format(above, below)
    return Markup("<math>{}{}</math>").format(before, fraction)


def boxed_fraction(above: str, below: str) -> Markup:
    """Put boxes for the numbers of an expression above a bar and of another below it, as 2 × 4 over 3 × 5."""
    return FRACTION.format(boxed(above), boxed(below))


def worked_fraction(above: str, below: str) -> Markup:
    """Put the same boxes, their answers written in for everybody."""
    return FRACTION.format(worked(above), worked(below))


@lru_cache(maxsize=SENTENCES_KEPT)
def boxed(text: str) -> Markup:
    """Put a box for every number of a text, its answer inside; a fraction gets two, one above the other."""
    return _boxes(text, "")


def worked(text: str) -> Markup:
    """Put the same boxes, their answers written in for everybody."""
    return _boxes(text, GIVEN)


def _boxes(text: str, given: str) -> Markup:
    box = Markup("<output{}>").format(Markup(given)) + Markup("{}</output>")
    pair = Markup('<span class="fraction">') + box + box + Markup("</span>")
    text = SIGNS.sub(rf"{NO_BREAK}\1{NO_BREAK}", text)
    parts: list[Markup] = []
    end = 0
    for found in NUMBER.finditer(text):
        parts.append(escape(text[end : found.start()]))
        whole, above, below, alone = found.groups()
        if alone:
            parts.append(box.format(alone))
        else:
            parts.append(box.format(whole) if whole else Markup(""))
            parts.append(pair.format(above, below))
        end = found.end()
    parts.append(escape(text[end:]))
    return Markup("").join(parts)
