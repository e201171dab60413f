"""Refusals beside the fields: takes what a form said and why it cannot be, gives both back to the page."""

from collections.abc import Iterable, Mapping
from typing import Any

from werkzeug.datastructures import MultiDict

from foldmath.desk.practice.field_words import of_the_field
from foldmath.desk.practice.own_words import FIELDS, ITEMS, NOWHERE, place_of, written
from foldmath.desk.visits.refusals import Refusal
from foldmath.errors import FileRefused, FoldmathError, Problem
from foldmath.lesson.files.positions import Path, Position, find_positions
from foldmath.values import frozen

FORMS = {
    "add": ("product",),
    "names": ("names",),
    "write": FIELDS,
    "rewrite": FIELDS,
    "rules": ("count", "kinds", "denominators"),
    "words": ("words", "home_language"),
    # Steps that another paper does not allow are the paper's.
    "about": ("paper", "title", "grade", "orientation", "language", "standards", "notes"),
}
"""The forms that say beside their fields why something cannot be; the first field says all else."""

SEVERAL = ("kinds", "denominators")
"""Fields of which several may be checked."""

WORD_BANK = "vocabulary"
"""The words of one field stand under two keys of the file."""


@frozen(kw_only=True)
class Refused:
    """A change that could not be made.

    Args:
        change: which one.
        place: of the item that was to be changed; ``NOWHERE`` for all others.
        values: that the form had, by their fields.
        slips: by their fields.
    """

    change: str
    place: int
    values: Mapping[str, Any]
    slips: Mapping[str, Refusal]

    def of(self, change: str, place: int = NOWHERE) -> bool:
        """Tell whether a form of the page is the one that was refused."""
        return self.change == change and self.place == place


def refused(form: MultiDict[str, str], text: str, place: int, error: FoldmathError) -> Refused:
    """Give a refusal to its form.

    Args:
        form: as it was sent.
        text: of the lesson with the change in it, where the problems stand.
        place: at which the item of the form stands in it.
        error: why it cannot be.
    """
    change = form.get("change", "")
    several = {field: form.getlist(field) for field in SEVERAL}
    return Refused(
        change=change,
        place=place_of(form),
        values={**dict.fromkeys(FORMS[change], ""), **form.to_dict(), **several, **written(form)},
        slips=_by_field(change, text, place, error),
    )


def _by_field(change: str, text: str, place: int, error: FoldmathError) -> dict[str, Refusal]:
    """Give what is wrong to the fields at whose values it stands, all else to the first of them."""
    first = FORMS[change][0]
    if not isinstance(error, FileRefused):
        return {first: Refusal(error.message, error.hint)}
    values = find_positions(text).values
    return {
        _field(change, values, place, problem) or first: of_the_field(problem) for problem in error.problems
    }


def _field(change: str, values: Mapping[Path, Position], place: int, problem: Problem) -> str:
    """Give the field at whose value, or one of its values, a problem stands; empty for all other places."""
    at = [path for path, value in values.items() if _holds(value, problem)]
    for field in FORMS[change]:
        if any(path[: len(key)] == key for path in at for key in _keys(change, field, place)):
            return field
    return ""


def _keys(change: str, field: str, place: int) -> Iterable[Path]:
    """Give the ways to what a field says in the file."""
    if FORMS[change] == FIELDS:
        return [(ITEMS, place, field)]
    if change == "rules":
        return [("practice", field)]
    return [(field,), (WORD_BANK,)] if field == "words" else [(field,)]


def _holds(value: Position, problem: Problem) -> bool:
    if value.line != problem.line:
        return False
    return value.column <= problem.column <= value.column + len(value.words)
