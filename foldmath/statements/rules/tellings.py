"""Rules that only a word problem can lead to: a pupil answers another question than the one asked.

No study that is quoted here asked such problems [common practice, no source].
"""

from foldmath.plane.numbers import ZERO, Exact, exact
from foldmath.statements.ratios import Ratio, mixed_form, whole_number
from foldmath.statements.rules.problems import Telling
from foldmath.statements.rules.rule import Act, Rule
from foldmath.statements.story_numbers import Asks

PARTS_OF_NUMBERS = (Asks.FLEET, Asks.MINUTES)


def _one_part_only(telling: Telling) -> Ratio | None:
    """3/5 of 30: 6 is one fifth."""
    if telling.asks is not Asks.QUANTITY:
        return None
    return mixed_form(_total(telling) / exact(telling.filling.take.denominator))


def _the_rest(telling: Telling) -> Ratio | None:
    """3/5 of 30: 12 is what is left; 3/4 of 2/3 of 36: 6 is the rest of the first part."""
    if telling.asks is Asks.QUANTITY:
        return mixed_form(_total(telling) - telling.value)
    return mixed_form(_first_part(telling) - telling.value) if telling.asks in PARTS_OF_NUMBERS else None


def _part_of_everything(telling: Telling) -> Ratio | None:
    """3/4 of 2/3 of 36: 27 is 3/4 of all."""
    if telling.asks not in PARTS_OF_NUMBERS:
        return None
    return mixed_form(telling.filling.take.value * _total(telling))


def _first_part_only(telling: Telling) -> Ratio | None:
    """3/4 of 2/3 of 36: 24 is 2/3 of it."""
    return mixed_form(_first_part(telling)) if telling.asks in PARTS_OF_NUMBERS else None


def _taken_not_left(telling: Telling) -> Ratio | None:
    """3/4 m, 1/3 of it off: 1/4 m is what is cut off."""
    return mixed_form(telling.worked.product.value) if telling.asks is Asks.LEFT else None


def _unit_for_part(telling: Telling) -> Ratio | None:
    """3/4 m, 1/3 of it off: 5/12 m is left where 1/3 m is."""
    left = telling.filling.amount.value - telling.filling.take.value
    return mixed_form(left) if telling.asks is Asks.LEFT and left >= ZERO else None


def _no_difference(telling: Telling) -> Ratio | None:
    """2/3 m against 2/3 of 3/4 m: 0 where they are thought equal."""
    return whole_number(0) if telling.asks is Asks.MORE else None


def _stops_at_part(telling: Telling) -> Ratio | None:
    """2/3 m against 2/3 of 3/4 m: 1/2 m is the part of it."""
    return mixed_form(telling.worked.product.value) if telling.asks is Asks.MORE else None


def _total(telling: Telling) -> Exact:
    return exact(telling.filling.total)


def _first_part(telling: Telling) -> Exact:
    return telling.filling.amount.value * _total(telling)


ONE_PART_ONLY = Rule(name="one_part_only", code="unit", acts=(Act(Telling, _one_part_only),))
THE_REST = Rule(name="the_rest", code="rest", acts=(Act(Telling, _the_rest),))
PART_OF_EVERYTHING = Rule(name="part_of_everything", code="whole", acts=(Act(Telling, _part_of_everything),))
FIRST_PART_ONLY = Rule(name="first_part_only", code="first", acts=(Act(Telling, _first_part_only),))
TAKEN_NOT_LEFT = Rule(name="taken_not_left", code="taken", acts=(Act(Telling, _taken_not_left),))
UNIT_FOR_PART = Rule(name="unit_for_part", code="other", acts=(Act(Telling, _unit_for_part),))
NO_DIFFERENCE = Rule(name="no_difference", code="same", acts=(Act(Telling, _no_difference),))
STOPS_AT_PART = Rule(name="stops_at_part", code="stop", acts=(Act(Telling, _stops_at_part),))
