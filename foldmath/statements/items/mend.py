"""Mend the mistake: a worked answer with one known slip in it, to be put right."""

from dataclasses import dataclass
from functools import cache
from typing import ClassVar

from foldmath.statements.items.item import Band, Item, ItemKind, NoSuchItem, difficulty, figures_in
from foldmath.statements.products import Product
from foldmath.statements.ratios import fraction, to_common_denominator
from foldmath.statements.rules import Answer, Rule
from foldmath.statements.rules.folds import ADD_FOLDS, COUNT_FOR_SIZE
from foldmath.statements.rules.operations import (
    ADD_INSTEAD,
    INVERT_FIRST,
    INVERT_SECOND,
    KEEP_COMMON_DENOMINATOR,
)
from foldmath.statements.rules.problems import CountMended, DoublingMended
from foldmath.statements.rules.wrong_answers import Published, likely_wrong_answers, published


@dataclass(frozen=True, kw_only=True)
class MendItem(Item):
    """A false sentence that a pupil wrote, and the true one; the answer is the whole true sentence.

    Args:
        claim: the false sentence, as ``3/5 × 1/4 = 60/20``.
        lines: the worked answer in steps, the claim's sides among them, as the pupil wrote it down.
        asked: the left side, as ``3/5 × 1/4``.
        given: the wrong right side.
        right: the right side that is true.
        rule: the rule behind the slip.
        study: who wrote this very answer to this very item in a study; None where nobody asked it.
        folds: for a slip at folding, how many times the sheet was folded in half; else 0.
    """

    kind: ClassVar[ItemKind] = ItemKind.MEND

    claim: str
    lines: tuple[str, ...]
    asked: str
    given: str
    right: str
    rule: Rule
    study: Published | None
    folds: int


@cache
def make_mend(product: Product, rule: Rule) -> MendItem:
    """Make the item in which a product was worked out by a rule.

    Raises:
        NoSuchItem: the rule gives no wrong answer to this product.
    """
    given = next((answer for answer in rule.answers(product) if answer.value != product.value), None)
    if given is None:
        raise NoSuchItem(f"{rule.name} gives no wrong answer to {product.text}")
    right = product.unreduced
    others = [wrong for wrong in likely_wrong_answers(product, most=4) if wrong.answer.value != given.value]
    claim = f"{product.text} = {given.text}"
    forms = dict.fromkeys([right.text, product.lowest.text, product.mixed.text])
    return MendItem(
        asks=f"mend {claim}",
        difficulty=difficulty(Band.MEND, product.first, product.second),
        answer=f"{product.text} = {right}",
        working=" = ".join([product.text, *forms]),
        accepted=tuple(f"{product.text} = {form}" for form in product.equivalents if form.text != right.text),
        problem=product,
        wrong=tuple(others[:3]),
        shown=figures_in(claim, *_lines(product, rule, given)),
        claim=claim,
        lines=_lines(product, rule, given),
        asked=product.text,
        given=given.text,
        right=right.text,
        rule=rule,
        study=published(product.text, given.text),
        folds=0,
    )


def _lines(product: Product, rule: Rule, given: Answer) -> tuple[str, ...]:
    """Write the worked answer out as a pupil would: a middle step where the rule has one."""
    first, second = product.first, product.second
    middle = ""
    if rule in (KEEP_COMMON_DENOMINATOR, ADD_INSTEAD) and first.denominator != second.denominator:
        above, beside, common = to_common_denominator(first, second)
        sign = "+" if rule == ADD_INSTEAD else "×"
        middle = f"{fraction(above, common)} {sign} {fraction(beside, common)}"
    elif rule == INVERT_FIRST and not first.whole:
        middle = f"{fraction(first.denominator, first.numerator)} × {second}"
    elif rule == INVERT_SECOND and not second.whole:
        middle = f"{first} × {fraction(second.denominator, second.numerator)}"
    return tuple(line for line in (product.text, middle, given.text) if line)


@cache
def make_mend_count(before: int, parts: int) -> MendItem:
    """Make the item of the count/size slip: ``4 × 1/2 = 8``, where 4 panels were cut in 2 each.

    Raises:
        NoSuchItem: nothing was cut.
    """
    if before < 1 or parts < 2:
        raise NoSuchItem("a fold that cuts no panel shows no slip")
    share, after = fraction(1, parts), before * parts
    asked = f"{before} × {share}"
    return _mended(
        lines=(asked, str(after)),
        right=str(after),
        accepted=(f"{before} ÷ {share} = {after}", f"{share} of 1/{before} = 1/{after}"),
        problem=CountMended(before, parts),
        rule=COUNT_FOR_SIZE,
        folds=0,
    )


@cache
def make_mend_doubling(folds: int) -> MendItem:
    """Make the item of a sheet folded in half several times, its panels counted by adding twos.

    Raises:
        NoSuchItem: with fewer than three folds adding and doubling agree.
    """
    if folds < 3:
        raise NoSuchItem("adding twos and doubling agree up to two folds")
    added, doubled = " + ".join(["2"] * folds), " × ".join(["2"] * folds)
    return _mended(
        lines=(doubled, added, str(2 * folds)),
        right=str(2**folds),
        accepted=(f"{2 ** (folds - 1)} × 2 = {2**folds}",),
        problem=DoublingMended(folds),
        rule=ADD_FOLDS,
        folds=folds,
    )


def _mended(
    *,
    lines: tuple[str, ...],
    right: str,
    accepted: tuple[str, ...],
    problem: CountMended | DoublingMended,
    rule: Rule,
    folds: int,
) -> MendItem:
    asked, given = lines[0], lines[-1]
    claim = f"{asked} = {given}"
    return MendItem(
        asks=f"mend {claim}",
        difficulty=difficulty(Band.MEND),
        answer=problem.value,
        working=problem.value,
        accepted=accepted,
        problem=problem,
        wrong=likely_wrong_answers(problem),
        shown=figures_in(claim, *lines, *([str(folds)] if folds else [])),
        claim=claim,
        lines=lines,
        asked=asked,
        given=given,
        right=right,
        rule=rule,
        study=None,
        folds=folds,
    )
