"""Which line of a curriculum a sentence serves, by what its numbers are and what is done with them."""

from foldmath.plane.numbers import ONE
from foldmath.statements.explaining.found import Family, Found
from foldmath.statements.expressions import Expression, Operation, Sign, numbers_in
from foldmath.statements.ratios import Ratio
from foldmath.statements.standards import Followed, Standard, all_standards


def standard_served(found: Found, followed: Followed) -> Standard | None:
    """Give the line that a sentence serves; None for whole numbers alone, which no line here is about."""
    deed = deed_of(found)
    for standard in all_standards():
        if standard.known and standard.curriculum.followed is followed and deed in standard.said_by:
            return standard
    return None


def deed_of(found: Found) -> str:
    """Name what a sentence does, as ``standards.toml`` names it."""
    if found.family is Family.EQUIVALENT:
        return _renaming(found)
    if found.family in (Family.POWER, Family.SUM):
        return found.family.name.lower()
    worked = found.claim.sides[0]
    if found.family is Family.COMPARISON:
        return _comparison(found, worked)
    if isinstance(worked, Operation) and worked.sign is Sign.DIVIDE:
        asked = f"{_kind(worked.left)} ÷ {_kind(worked.right)}"
        answered = _kind(found.claim.sides[1])
        return f"{asked} = whole" if asked == "whole ÷ whole" and answered == "whole" else asked
    kinds = sorted(_kind(number) for number in numbers_in(worked))
    return " × ".join(dict.fromkeys("fraction" if kind == "unit fraction" else kind for kind in kinds))


def _renaming(found: Found) -> str:
    first = found.claim.sides[0]
    return "whole as fraction" if isinstance(first, Ratio) and first.value == ONE else "same size"


def _comparison(found: Found, worked: Expression) -> str:
    if not isinstance(worked, Ratio):
        return "product and factor"
    kinds = {_kind(side) for side in found.claim.sides}
    return "unit fractions compared" if kinds == {"unit fraction"} else "fractions compared"


def _kind(number: Expression) -> str:
    if not isinstance(number, Ratio):
        return "worked"
    if number.whole:
        return "whole"
    return "unit fraction" if number.unit_fraction else "fraction"
