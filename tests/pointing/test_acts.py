"""What is no drag: only what the paper allows now is offered, and what it does not allow says why."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from strategies import folded, sheets, step_lists

from foldmath.lesson.grammar.sentences import parse_step
from foldmath.paper.folding import folding
from foldmath.paper.moments.performing import MOST_HANDLED, perform
from foldmath.paper.refusals import BookletClosed, NothingFolded, PanelAcrossLine, SheetNotOpen, StepRefused
from foldmath.paper.state import FoldedState, Sheet, open_sheet
from foldmath.paper.steps import (
    Axis,
    Edge,
    FoldAt,
    FoldEdge,
    Gather,
    Open,
    OpenLast,
    Pleat,
    Shade,
    Slit,
    Step,
    TurnQuarter,
)
from foldmath.plane.numbers import HALF, ONE, ZERO, exact
from foldmath.pointing import foresight
from foldmath.pointing.acts import MOST_CUTS, Act, choices, cuts
from foldmath.words.steps import step_sentence

LETTER = Sheet(exact(11), exact(17, 2), "in")
IN_EIGHTS = (FoldEdge(Edge.LEFT, ONE), FoldEdge(Edge.TOP, ZERO), FoldEdge(Edge.LEFT, ONE))
MIDDLE_SLIT = Slit(Axis.HEIGHT, HALF, exact(1, 4), exact(3, 4))


def paper(*steps) -> FoldedState:
    state = open_sheet(LETTER)
    for step in steps:
        state = perform(step, state)
    return state


def offered(act: Act, *steps) -> list[Step]:
    return list(choices(paper(*steps))[act].steps)


def why_not(act: Act, *steps) -> StepRefused | None:
    return choices(paper(*steps))[act].refusal


@given(sheets, step_lists)
@settings(max_examples=6, deadline=None)
def test_all_that_is_offered_can_be_done_and_reads_back_and_what_is_not_says_why(sheet, steps):
    state = folded(sheet, steps)
    for choice in choices(state).values():
        assert bool(choice.steps) is (choice.refusal is None)
        for step in choice.steps[::9]:
            perform(step, state)
            assert parse_step(step_sentence(step)) == step


def test_a_slit_is_offered_on_a_crease_that_no_other_crosses():
    left = FoldEdge(Edge.LEFT, ONE), FoldEdge(Edge.LEFT, HALF)
    assert offered(Act.CUT, *left, Open(), TurnQuarter(left=False)) == [
        Slit(Axis.HEIGHT, HALF, exact(1, 4), exact(3, 4))
    ]


class TestFans:
    def test_fans_go_both_ways_into_two_to_twelve_parts(self):
        fans = offered(Act.FAN)
        assert (fans[0], fans[-1]) == (Pleat(Axis.WIDTH, 2), Pleat(Axis.HEIGHT, 12))
        assert len(fans) == 22

    @pytest.mark.parametrize("left", [100, 200, 400])
    def test_a_fan_that_goes_through_too_many_panels_is_not_offered_and_a_coarser_one_is(self, left):
        state = replace(paper(*IN_EIGHTS, Open()), handled=MOST_HANDLED - left)
        fans = [Pleat(axis, parts) for axis in Axis for parts in range(2, 13)]
        assert list(choices(state)[Act.FAN].steps) == [fan for fan in fans if is_possible(fan, state)]

    @pytest.mark.parametrize("most", [24, 40, 64])
    def test_a_fan_past_the_last_panel_is_not_offered_and_a_coarser_one_is(self, monkeypatch, most):
        for module in (folding, foresight):
            monkeypatch.setattr(module, "MOST_PANELS", most)
        state = paper(*IN_EIGHTS, Open())
        fans = [Pleat(axis, parts) for axis in Axis for parts in range(2, 13)]
        assert list(choices(state)[Act.FAN].steps) == [fan for fan in fans if is_possible(fan, state)]


def is_possible(step, state) -> bool:
    try:
        perform(step, state)
    except StepRefused:
        return False
    return True


class TestOpening:
    @pytest.mark.parametrize("act", [Act.OPEN_LAST, Act.OPEN])
    def test_an_open_sheet_is_not_opened(self, act):
        assert isinstance(why_not(act), NothingFolded)
        assert offered(act, IN_EIGHTS[0]) == [parse_step(act.value)]


class TestShading:
    def test_a_folded_sheet_is_not_shaded(self):
        assert isinstance(why_not(Act.SHADE, *IN_EIGHTS), SheetNotOpen)

    def test_parts_are_shaded_whose_creases_are_there_up_to_all_but_one(self):
        assert offered(Act.SHADE, Pleat(Axis.WIDTH, 3), Open()) == [
            Shade(1, 3, Axis.WIDTH),
            Shade(2, 3, Axis.WIDTH),
        ]

    def test_without_creases_no_part_is_shaded(self):
        assert isinstance(why_not(Act.SHADE), PanelAcrossLine)

    def test_twenty_four_parts_are_offered_and_no_more(self):
        creased = (Pleat(Axis.WIDTH, 12), FoldEdge(Edge.LEFT, ONE), FoldEdge(Edge.LEFT, ONE), Open())
        parts = {step.parts for step in choices(paper(*creased))[Act.SHADE].steps if isinstance(step, Shade)}
        assert parts == {2, 3, 4, 6, 8, 12, 16, 24}


class TestCuts:
    def test_the_slit_of_the_booklet_is_among_the_cuts_and_none_parts_the_sheet(self):
        state = paper(*IN_EIGHTS, Open())
        found = cuts(state)
        assert MIDDLE_SLIT in found
        assert Slit(Axis.HEIGHT, HALF, ZERO, ONE) not in found
        assert all(is_possible(cut, state) for cut in found)

    def test_plainer_cuts_come_first_and_of_those_alike_the_longer(self):
        found = cuts(paper(*IN_EIGHTS, Open()))
        assert found[:2] == (
            Slit(Axis.HEIGHT, HALF, ZERO, HALF),
            Slit(Axis.HEIGHT, HALF, HALF, ONE),
        )
        fourths = [cut for cut in found if cut.at == HALF and exact(1, 4) in (cut.start, cut.end)]
        assert fourths[0] == Slit(Axis.HEIGHT, HALF, exact(1, 4), ONE)

    def test_a_hand_chooses_among_twenty_four(self):
        assert len(cuts(paper(Pleat(Axis.WIDTH, 8), Open(), Pleat(Axis.HEIGHT, 8), Open()))) == MOST_CUTS

    def test_a_folded_sheet_is_cut_from_its_folded_edge(self):
        folded_once = paper(*IN_EIGHTS, OpenLast(), OpenLast())
        assert Slit(Axis.HEIGHT, HALF, ZERO, HALF) in cuts(folded_once)

    def test_the_button_looks_for_one_cut_only(self):
        assert len(offered(Act.CUT, *IN_EIGHTS, Open())) == 1

    def test_paper_without_creases_is_not_cut(self):
        assert why_not(Act.CUT) is not None


class TestBooklet:
    def test_eight_panels_with_their_slit_close_into_a_booklet(self):
        assert offered(Act.BOOKLET, *IN_EIGHTS, Open(), MIDDLE_SLIT) == [Gather()]

    def test_a_booklet_opens_and_does_nothing_else(self):
        booklet = (*IN_EIGHTS, Open(), MIDDLE_SLIT, Gather())
        assert offered(Act.OPEN, *booklet) == [Open()]
        others = [choice for act, choice in choices(paper(*booklet)).items() if act is not Act.OPEN]
        assert all(isinstance(choice.refusal, BookletClosed) for choice in others)

    def test_an_uneven_sheet_says_what_a_booklet_needs(self):
        assert why_not(Act.BOOKLET, FoldAt(exact(1, 3), Edge.LEFT)) is not None
