"""Standards: takes what a lesson folds and asks, gives the lines of its curriculum that it really touches.

The lines, in our own words and each with its source, are in ``standards.toml``; what touches them is said
there by facts, named below, and by kinds of items.
"""

import tomllib
from collections.abc import Callable, Sequence
from enum import Enum
from functools import cache
from importlib.resources import files
from typing import TypeAlias

from foldmath.paper.moments.moment import Moment
from foldmath.paper.steps import FoldStep
from foldmath.plane.numbers import ONE
from foldmath.statements.products import Product
from foldmath.values import frozen

Moments: TypeAlias = Sequence[Moment]
Products: TypeAlias = Sequence[Product]

GRADE_3_DENOMINATORS = frozenset({2, 3, 4, 6, 8})
"""Common Core State Standards (2010), footnote to grade 3, Number and Operations: Fractions."""

MEMORY = "memory"


class Followed(Enum):
    """Whose standards a lesson follows; they say too which grade multiplies what."""

    CCSS = "ccss"
    ENGLAND = "england"
    NONE = "none"


@frozen(kw_only=True)
class Curriculum:
    """A document of standards.

    Args:
        name: as a teacher calls it.
        followed: what lessons call it.
        source: who published it, and when.
        notice: what its licence asks to be printed beside its codes.
        read: whether we read it in a copy, or know it from memory.
    """

    name: str
    followed: Followed
    source: str
    notice: str
    read: str


@frozen(kw_only=True)
class Standard:
    """A line of a curriculum.

    Args:
        code: as teachers cite it; in England the year.
        grade: the grade or year that it belongs to.
        words: what it asks, in our own words.
        curriculum: where it stands.
        touched_by: the facts and kinds of items that touch it.
        said_by: what a sentence of a step does that serves it; see ``explaining.labels``.
        simplest: whether it asks for answers in simplest form.
        read: whether we read it in a copy, or know it from memory.
    """

    code: str
    grade: int
    words: str
    curriculum: Curriculum
    touched_by: frozenset[str]
    said_by: frozenset[str]
    simplest: bool
    read: str

    @property
    def known(self) -> bool:
        """Whether it may be printed as a fact."""
        return self.read != MEMORY and self.curriculum.read != MEMORY


def standards_of(
    moments: Moments, products: Products, kinds: frozenset[str], *, grade: int, followed: Followed
) -> tuple[Standard, ...]:
    """Give the standards that a lesson touches, up to its own grade, lowest grade first.

    Args:
        moments: what each step does.
        products: the products that it asks.
        kinds: the kinds of its items, as lesson files name them; most show in folds and products only.
        grade: of the lesson; in England, the year.
        followed: whose standards.
    """
    touched = kinds | facts(moments, products)
    return tuple(
        standard
        for standard in all_standards()
        if standard.known
        and standard.curriculum.followed is followed
        and standard.grade <= grade
        and standard.touched_by & touched
    )


def asks_simplest_form(grade: int, followed: Followed) -> bool:
    """Tell whether a class of a grade is asked for products in simplest form."""
    return any(
        standard.simplest and standard.curriculum.followed is followed and standard.grade <= grade
        for standard in all_standards()
    )


def facts(moments: Moments, products: Products) -> frozenset[str]:
    """Name what the folds and the products of a lesson show."""
    return frozenset(name for name, holds in FACTS.items() if holds(moments, products))


def _equal_counts(moments: Moments) -> list[int]:
    """Count the panels after each fold that leaves them all of one size."""
    return [
        len(moment.after.panels)
        for moment in moments
        if isinstance(moment.step, FoldStep) and len(moment.sizes) == 1 and len(moment.after.panels) > 1
    ]


def _equal_panels(moments: Moments, products: Products) -> bool:
    return bool(_equal_counts(moments))


def _small_unit_fractions(moments: Moments, products: Products) -> bool:
    return bool(GRADE_3_DENOMINATORS & set(_equal_counts(moments)))


def _smaller_panels(moments: Moments, products: Products) -> bool:
    """Two folds each leave equal panels, the later ones smaller: unit fractions side by side."""
    return len(set(_equal_counts(moments))) > 1


def _sizes_added(moments: Moments, products: Products) -> bool:
    return any(isinstance(moment.step, FoldStep) and len(moment.sizes) > 1 for moment in moments)


def _whole_by_fraction(moments: Moments, products: Products) -> bool:
    return any(product.first.whole != product.second.whole for product in products)


def _fraction_by_fraction(moments: Moments, products: Products) -> bool:
    """A product of two fractions is asked, or a fold cuts a panel that is already a part of the sheet."""
    asked = any(not (product.first.whole or product.second.whole) for product in products)
    return asked or any(
        isinstance(moment.step, FoldStep) and any(panel < ONE for panel, _ in moment.cuts)
        for moment in moments
    )


FACTS: dict[str, Callable[[Moments, Products], bool]] = {
    "equal_panels": _equal_panels,
    "small_unit_fractions": _small_unit_fractions,
    "smaller_panels": _smaller_panels,
    "sizes_added": _sizes_added,
    "whole_by_fraction": _whole_by_fraction,
    "fraction_by_fraction": _fraction_by_fraction,
}
"""What folds and products can show, by the names that ``standards.toml`` uses."""


@cache
def all_standards() -> tuple[Standard, ...]:
    """Read every line, lowest grade first, else in the order of the file."""
    told = tomllib.loads(files(__package__).joinpath("standards.toml").read_text(encoding="utf-8"))
    curricula = {
        name: Curriculum(followed=Followed(name), **curriculum)
        for name, curriculum in told["curricula"].items()
    }
    standards = (
        Standard(
            code=line["code"],
            grade=line["grade"],
            words=line["words"],
            curriculum=curricula[line["curriculum"]],
            touched_by=frozenset(line.get("touched_by", ())),
            said_by=frozenset(line.get("said_by", ())),
            simplest=line.get("simplest", False),
            read=line["read"],
        )
        for line in told["standards"]
    )
    return tuple(sorted(standards, key=lambda standard: standard.grade))
