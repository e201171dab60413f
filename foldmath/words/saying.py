"""Saying phrases: takes what is to be said and a language, gives the words."""

import re
from functools import cache

from foldmath.phrases import Phrase, Said, phrase
from foldmath.words.authored import table
from foldmath.words.catalogues import catalogue

# So mypy knows it too; typing itself is slow to import, and help must be quick.
TYPE_CHECKING = False
if TYPE_CHECKING:
    from foldmath.errors import FoldmathError, Problem

OF = phrase("of")
"""Between a part and what it is a part of: ``1/2 of 1/4``."""


def say(said: Said, language: str) -> str:
    """Say a phrase in a language; words that are no phrase stay as they are."""
    if not isinstance(said, Phrase):
        return said
    words = catalogue(language)
    text = words.ngettext(said.text, said.plural, said.number) if said.plural else words.gettext(said.text)
    return _smooth(text.format(**{name: say_value(value, language) for name, value in said.values}), language)


def own_name(language: str) -> str:
    """Give what a language is called in itself; each catalogue has its own name for these words."""
    return say(phrase("English (US)"), language)


def _smooth(text: str, language: str) -> str:
    """Change little words that a language says otherwise before some sounds: "e hija", "u ocho"."""
    for pattern, said in _changed(language):
        text = pattern.sub(said, text)
    return text


@cache
def _changed(language: str) -> tuple[tuple[re.Pattern[str], str], ...]:
    try:
        words = table(language, "joining.toml")
    except FileNotFoundError:
        return ()
    return tuple(
        (re.compile(rf"(?<= ){word}(?= {rule['before']})", re.IGNORECASE), rule["said"])
        for word, rule in words.items()
    )


def say_value(value: object, language: str) -> str:
    """Say whatever a phrase may hold: another phrase, a step, a place, a sentence of figures, a number."""
    if isinstance(value, Phrase | str):
        return say(value, language)
    if isinstance(value, int):
        return str(value)
    # Imported here, since help holds no step, and the exact numbers of steps are slow to import.
    from foldmath.paper.measures import share_said
    from foldmath.paper.steps import Step
    from foldmath.plane.lines import Point
    from foldmath.statements.expressions import Claim, Operation, with_of
    from foldmath.words.points import told_point
    from foldmath.words.steps import STEPS, step_sentence

    if isinstance(value, Claim | Operation):
        return with_of(value, say(OF, language))
    if isinstance(value, Point):
        return told_point(value, table(language, STEPS), lambda share: say(share_said(share), language))
    return step_sentence(value, language) if isinstance(value, Step) else str(value)


def say_error(error: "FoldmathError", language: str) -> str:
    """Say what is wrong and how to mend it; the slips of a file, each with its place."""
    # Imported here, since help tells of no slip, and what makes their values is slow to import.
    from foldmath.errors import FileRefused

    if not isinstance(error, FileRefused):
        return _said_slip(error, language)
    others = [say(error.others, language)] if error.others else []
    return "\n".join([*(_said_slip(slip, language) for slip in error.shown), *others])


def _said_slip(slip: "Problem | FoldmathError", language: str) -> str:
    lines = [say(slip.heading, language)]
    if slip.words:
        lines.append("    " + say(phrase("here: {words}", words=slip.words), language))
    if slip.hint:
        lines.append("    " + say(phrase("try:  {remedy}", remedy=slip.hint), language))
    return "\n".join(lines)
