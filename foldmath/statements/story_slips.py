"""Wrong answers to word problems: takes a telling worked out, gives the likeliest, each by its rule.

A rule is one of ``wrong_answers``, or has its key in ``story_slips.toml``. No study asked these stories, so
none has a published share.
"""

import tomllib
from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import cache
from importlib.resources import files
from typing import Any, TypeAlias

from foldmath.plane.numbers import ZERO, Exact, denominator, exact
from foldmath.statements.ratios import mixed_form
from foldmath.statements.story_numbers import Asks, Filling, Worked
from foldmath.statements.wrong_answers import (
    MOST_TOLD,
    RULES,
    WrongAnswer,
    count_for_size,
    invert_first,
    likely_wrong_answers,
    told_apart,
    what_it_tells,
    what_to_try,
)

Slips: TypeAlias = Iterator[tuple[str, Exact]]
"""The names of rules, each with the answer got by it, likeliest first."""


def wrong_tellings(asks: Asks, filling: Filling, told: Worked) -> tuple[WrongAnswer, ...]:
    """Give the likeliest wrong answers to a telling; no two are equal, and none is right or below zero."""
    slips = _SLIPS.get(asks)
    if slips is None:
        return _slips_of_product(told)
    given = [(rule, mixed_form(value)) for rule, value in slips(filling, told) if value >= ZERO]
    return told_apart(told.value, *given)


def slip_tells(rule: str) -> str:
    """Give the sentence that says what a wrong answer by a rule tells a teacher, in a story or anywhere."""
    slip = _table().get(rule)
    return slip["tells"] if slip else what_it_tells(rule)


def slip_to_try(rule: str) -> str:
    """Give the sentence that says what to try with a pupil who follows a rule, in a story or anywhere."""
    slip = _table().get(rule)
    return slip["try"] if slip else what_to_try(rule)


def _slips_of_product(told: Worked) -> tuple[WrongAnswer, ...]:
    """Follow the rules for products; nothing is folded in a story, so no panels are counted."""
    return tuple(
        replace(wrong, published=None)
        for wrong in likely_wrong_answers(told.product, len(RULES))
        if wrong.rule != count_for_size.__name__
    )[:MOST_TOLD]


def _of_quantity(filling: Filling, told: Worked) -> Slips:
    """3/5 of 30: 6 is one fifth, 12 is what is left, and 50 is 5/3 of 30."""
    total = exact(filling.total)
    yield "one_part_only", total / exact(filling.take.denominator)
    yield "the_rest", total - told.value
    inverted = total / filling.take.value
    if denominator(inverted) == 1:
        yield invert_first.__name__, inverted


def _of_fleet(filling: Filling, told: Worked) -> Slips:
    """3/4 of 2/3 of 36: 27 is 3/4 of all, 24 the first part, 6 the rest of it."""
    total = exact(filling.total)
    first_part = filling.amount.value * total
    yield "part_of_everything", filling.take.value * total
    yield "first_part_only", first_part
    yield "the_rest", first_part - told.value


def _of_left(filling: Filling, told: Worked) -> Slips:
    """3/4 m, 1/3 of it off: 1/4 m is what is cut off, 5/12 m is left where 1/3 m is."""
    yield "taken_not_left", told.product.value
    yield "unit_for_part", filling.amount.value - filling.take.value


def _of_more(filling: Filling, told: Worked) -> Slips:
    """2/3 m against 2/3 of 3/4 m: 0 where they are thought equal, 1/2 m is the part of it."""
    yield "no_difference", ZERO
    yield "stops_at_part", told.product.value


_SLIPS: dict[Asks, Callable[[Filling, Worked], Slips]] = {
    Asks.QUANTITY: _of_quantity,
    Asks.FLEET: _of_fleet,
    Asks.MINUTES: _of_fleet,
    Asks.LEFT: _of_left,
    Asks.MORE: _of_more,
}


@cache
def _table() -> dict[str, dict[str, str]]:
    table: dict[str, Any] = tomllib.loads(
        files(__package__).joinpath("story_slips.toml").read_text(encoding="utf-8")
    )
    return table
