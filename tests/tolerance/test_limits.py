"""What paper cannot do is refused, what hands can hardly do is told before."""

import pytest
from hypothesis import given
from lessons_in_words import EIGHTHS, LETTER, moments
from strategies import foldings, often_enough, sheets, step_lists

from foldmath.paper.moments.moment import Moment
from foldmath.paper.state import Sheet, open_sheet
from foldmath.plane.numbers import exact
from foldmath.tolerance.assumed.stock import stock_named
from foldmath.tolerance.limits import Severity, judged

COPY = stock_named("copy 20 lb")
CARD = stock_named("construction")
HALF_LETTER = Sheet(exact(11), exact(17, 4), "in")
LEFT, TOP = "fold left edge to right edge", "fold top edge to bottom edge"


def rules(*steps, stock=COPY, sheet=LETTER):
    return [(judgement.step, judgement.rule) for judgement in judged(moments(*steps, sheet=sheet), stock)]


@pytest.mark.parametrize("stock", [COPY, CARD])
def test_eighths_can_be_folded_of_copy_paper_and_of_construction_paper(stock):
    assert rules(*EIGHTHS, "open", stock=stock) == []


def test_more_than_eight_layers_are_told_as_hard_once():
    assert rules(*[LEFT, TOP] * 2) == [(4, "layers")]


def test_a_fold_through_more_than_a_millimetre_of_paper_is_told_as_hard():
    assert (4, "thick") in rules(*[LEFT, TOP] * 2, stock=CARD)
    assert (4, "thick") not in rules(*[LEFT, TOP] * 2, stock=COPY)


def test_a_narrow_strip_that_moves_is_told_as_hard():
    assert rules("fold at 1/30 moving left") == [(1, "short")]


def test_narrow_pleats_are_told_as_hard():
    assert rules("pleat width into 12") == [(1, "layers")]
    assert (1, "short") in rules("pleat height into 12", sheet=HALF_LETTER)


def test_opening_the_sheet_takes_the_layers_away():
    assert rules(LEFT, TOP, LEFT, "open", LEFT, TOP, LEFT, "open") == []


def test_nothing_is_judged_after_what_paper_cannot_do():
    found = judged(moments(*[LEFT, TOP] * 5), COPY)
    impossible = [judgement for judgement in found if judgement.severity is Severity.IMPOSSIBLE]
    assert len(impossible) == 1
    assert max(judgement.step for judgement in found) == impossible[0].step


def test_a_warning_comes_before_a_refusal():
    found = rules(*[LEFT] * 8)
    assert [rule for _, rule in found].index("near") < [rule for _, rule in found].index("roll")


def test_messages_are_one_plain_line_with_their_step():
    for judgement in judged(moments(*[LEFT, TOP] * 5), CARD):
        assert str(judgement.message).startswith(f"step {judgement.step}: ")
        assert "\n" not in str(judgement.message)
        assert "{" not in str(judgement.message)


def test_turning_the_sheet_does_not_change_the_direction_that_is_bent():
    turned = [LEFT]
    for _ in range(7):
        turned += ["turn left", "fold bottom edge to top edge", "turn right"]
    one, other = judged(moments(*[LEFT] * 8), COPY), judged(moments(*turned), COPY)
    assert [judgement.rule for judgement in one] == [judgement.rule for judgement in other]


@given(sheets, step_lists)
@often_enough
def test_thicker_paper_is_never_judged_easier(sheet, steps):
    done = tuple(Moment(*move) for move in foldings(open_sheet(sheet), steps))
    if done:
        thin, thick = ({j.rule for j in judged(done, stock)} for stock in (COPY, CARD))
        stopped = thick & {"bend", "roll", "square"}
        assert thin <= thick or stopped


def test_the_booklet_of_one_slit_can_be_made():
    quarters = ("pleat width into 4", "open", TOP, "open", "slit at height 1/2 from 1/4 to 3/4")
    assert rules(*quarters, "gather into booklet") == []
