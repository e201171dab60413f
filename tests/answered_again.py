"""Answers to items worked out again, from what the pupil sees and with Python's own fractions."""

from collections import Counter
from fractions import Fraction
from math import prod

from foldmath.lesson.grammar.sentences import parse_step
from foldmath.paper.moments.performing import perform
from foldmath.paper.state import Sheet, open_sheet
from foldmath.plane.numbers import ONE
from foldmath.statements.answers import Folds
from foldmath.statements.checking.claims import check_claim
from foldmath.statements.items import ItemKind, Pieces
from foldmath.words.steps import step_sentence


def number(text: str) -> Fraction:
    """Read 3, 2/3 or 1 2/3."""
    return sum((Fraction(part) for part in text.split()), Fraction(0))


def written(answer) -> str:
    """Write an answer as a key does: steps as sentences, all else in figures."""
    return "; ".join(map(step_sentence, answer.steps)) if isinstance(answer, Folds) else str(answer)


def sizes_folded(folds: Folds) -> Counter[Fraction]:
    """Fold a sheet by steps as they are said and read again, and count the panels of each area."""
    state = open_sheet(Sheet(ONE, ONE, "sheet"))
    for step in folds.steps:
        state = perform(parse_step(step_sentence(step)), state)
    return Counter(Fraction(str(panel.area)) for panel in state.panels)


def _shade(item) -> bool:
    first, second = (number(ratio.text) for ratio in (item.product.first, item.product.second))
    return number(str(item.answer)) == first * second


def _count_or_size(item) -> bool:
    """A sentence with a part of a sheet in it is about size; one of whole numbers counts."""
    kinds = ("size" if "/" in str(sentence.claim) else "count" for sentence in item.sentences)
    return str(item.answer) == ", ".join(kinds)


def _missing_factor(item) -> bool:
    left, _, product = item.question.partition(" = ")
    factors = [number(str(item.answer) if side == "□" else side) for side in left.split(" × ")]
    return prod(factors) == number(product)


def _same_size(item) -> bool:
    given, _, box = item.question.partition(" = ")
    above, below = str(item.answer).split("/")
    return box == f"□/{below}" and Fraction(int(above), int(below)) == number(given)


def _bigger_or_smaller(item) -> bool:
    left, _, right = item.question.partition(" ○ ")
    less, more = (prod(map(number, side.split(" × "))) for side in (left, right))
    return str(item.answer) == ("<" if less < more else ">" if less > more else "=")


def _how_many_pieces(item) -> bool:
    whole, part = Fraction(item.number), number(str(item.part))
    return number(str(item.answer)) == (
        part / whole if item.pieces is Pieces.PART_BY_NUMBER else whole / part
    )


def _repeated_halving(item) -> bool:
    return number(str(item.answer)) == prod(number(str(factor)) for factor in item.factors)


def _which_fold(item) -> bool:
    sizes = sizes_folded(item.answer)
    return sizes == {number(str(area)): count for count, area in item.tally} and all(
        sizes_folded(folds) == sizes for folds in item.accepted
    )


def _story(item) -> bool:
    return str(item.working).endswith(f" = {item.answer}") and check_claim(str(item.working)).true


def _mend(item) -> bool:
    return not check_claim(str(item.claim)).true and check_claim(str(item.answer)).true


def _explain(item) -> bool:
    return check_claim(str(item.statement)).true


ANSWERED = {
    ItemKind.SHADE: _shade,
    ItemKind.COUNT_OR_SIZE: _count_or_size,
    ItemKind.MISSING_FACTOR: _missing_factor,
    ItemKind.SAME_SIZE: _same_size,
    ItemKind.BIGGER_OR_SMALLER: _bigger_or_smaller,
    ItemKind.HOW_MANY_PIECES: _how_many_pieces,
    ItemKind.REPEATED_HALVING: _repeated_halving,
    ItemKind.WHICH_FOLD: _which_fold,
    ItemKind.STORY: _story,
    ItemKind.MEND: _mend,
    ItemKind.EXPLAIN: _explain,
}


def rightly_answered(item) -> bool:
    """Tell whether an item's answer is right."""
    return ANSWERED[item.kind](item)
