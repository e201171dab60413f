"""Refusals beside the fields: takes what a form said and why it cannot be, gives both back to the page."""

from collections.abc import Iterable, Mapping
from typing import Any

from werkzeug.datastructures import MultiDict

from foldmath.desk.practice.own_words import FIELDS, ITEMS, NOWHERE, place_of, written
from foldmath.desk.visits.refusals import Refusal
from foldmath.errors import Problem
from foldmath.lesson.files.positions import Position, find_positions
from foldmath.values import frozen

FORMS = {"add": "product", "names": "names", "write": "text", "rewrite": "text"}
"""The forms that say beside their fields why something cannot be, each with the field that says all else."""


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


def refused(form: MultiDict[str, str], text: str, place: int, problems: Iterable[Problem]) -> Refused:
    """Give a refusal to its form.

    Args:
        form: as it was sent.
        text: of the lesson with the change in it, where the problems stand.
        place: at which the item of the form stands in it.
        problems: that were found.
    """
    change = form.get("change", "")
    values = {**form.to_dict(), **written(form)} if change in ("write", "rewrite") else form.to_dict()
    slips = {_field(text, place, problem) or FORMS[change]: problem for problem in problems}
    told = {field: Refusal(problem.message, problem.hint) for field, problem in slips.items()}
    return Refused(change=change, place=place_of(form), values=values, slips=told)


def _field(text: str, place: int, problem: Problem) -> str:
    """Give the field of an item at whose value a problem stands; empty where it stands elsewhere."""
    values = find_positions(text).values
    return next((field for field in FIELDS if _holds(values.get((ITEMS, place, field)), problem)), "")


def _holds(value: Position | None, problem: Problem) -> bool:
    if value is None or value.line != problem.line:
        return False
    return value.column <= problem.column <= value.column + len(value.words)
