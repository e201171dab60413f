"""How many pieces? Sheets cut into equal parts, and a part of a sheet cut into equal parts, as folds."""

from enum import Enum
from functools import cache
from typing import ClassVar

from foldmath.paper.steps import FEWEST_PLEATS, MOST_PLEATS, Axis, Pleat, Step
from foldmath.statements.answers import working
from foldmath.statements.composing import divided, equation, times
from foldmath.statements.expressions import Expression
from foldmath.statements.items.item import (
    Difficulty,
    Item,
    ItemKind,
    NoSuchItem,
    figures_in,
    other_forms,
)
from foldmath.statements.ratios import Ratio, fraction, whole_number
from foldmath.statements.rules.problems import PanelCut, SheetsCut
from foldmath.statements.rules.wrong_answers import likely_wrong_answers
from foldmath.values import frozen


class Pieces(Enum):
    """How the question is put."""

    COUNT = "count"
    """How many panels of 1/4 do 3 sheets give? No sign of division is used."""
    SHEETS_BY_PART = "sheets by part"
    """3 ÷ 1/4, as panels counted. Source: Common Core State Standards (2010), 5.NF.B.7.b."""
    PART_BY_NUMBER = "part by number"
    """1/4 ÷ 3, as a panel folded again. Source: 5.NF.B.7.a; England, Year 6 (DFE-00180-2013)."""


@frozen(kw_only=True)
class HowManyPiecesItem(Item):
    """A division shown by folding.

    Args:
        pieces: how the question is put.
        number: of whole sheets; with PART_BY_NUMBER, of parts that the panel is cut into.
        part: the unit fraction.
        question: the division, as ``3 ÷ 1/4`` or ``1/4 ÷ 3``; None with COUNT.
        fold: the fold; with PART_BY_NUMBER the one that cuts the panel.
    """

    kind: ClassVar[ItemKind] = ItemKind.HOW_MANY_PIECES

    answer: Ratio
    pieces: Pieces
    number: int
    part: Ratio
    question: Expression | None
    fold: Step


@cache
def make_how_many_pieces(pieces: Pieces, number: int, parts: int) -> HowManyPiecesItem:
    """Make the item of ``number`` and the unit fraction 1/``parts``.

    Raises:
        NoSuchItem: fewer than two pieces, or more than a pleat makes.
    """
    if not (FEWEST_PLEATS <= parts <= MOST_PLEATS and FEWEST_PLEATS <= number <= MOST_PLEATS):
        raise NoSuchItem(f"no pages ask about {number} and parts of 1/{parts}")
    part, whole = fraction(1, parts), whole_number(number)
    dividing = pieces is Pieces.PART_BY_NUMBER
    problem = PanelCut(parts, number) if dividing else SheetsCut(number, parts)
    pair = (part, whole) if dividing else (whole, part)
    question = None if pieces is Pieces.COUNT else divided(*pair)
    answer = fraction(1, number * parts) if dividing else whole_number(number * parts)
    return HowManyPiecesItem(
        asks=f"{pair[0]} ÷ {pair[1]}",
        difficulty=(Difficulty.DIVIDE if question else Difficulty.COUNT_PIECES).of(
            part, more=number // 2 + 2 * dividing
        ),
        answer=answer,
        working=working(equation(question or times(number, parts), answer)),
        accepted=other_forms(answer, fraction(2, 2 * number * parts)) if dividing else (),
        problem=problem,
        wrong=likely_wrong_answers(problem),
        shown=figures_in(question) if question else figures_in(part, whole),
        pieces=pieces,
        number=number,
        part=part,
        question=question,
        fold=Pleat(Axis.HEIGHT, number) if dividing else Pleat(Axis.WIDTH, parts),
    )
