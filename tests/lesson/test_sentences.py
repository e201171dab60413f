"""A sentence that a teacher could read aloud says which step is meant, and only that."""

import re
from typing import get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foldmath.lesson.grammar.refusals import StepUnreadable
from foldmath.lesson.grammar.sentences import parse_step, written_step
from foldmath.lesson.grammar.step_parser import step_in
from foldmath.lesson.grammar.suggestions import NEAR, PATTERNS, words_known
from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import (
    Axis,
    Edge,
    FoldAlong,
    FoldAt,
    FoldBothEdges,
    FoldEdge,
    FoldPoint,
    Gather,
    Open,
    OpenLast,
    Pleat,
    Shade,
    Slit,
    Step,
    TurnOver,
    TurnQuarter,
)
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ONE, ZERO, exact
from foldmath.words.authored import table
from foldmath.words.saying import say
from foldmath.words.steps import step_sentence

THIRD = exact(1, 3)
BOTTOM_LEFT, BOTTOM_RIGHT = Point(ZERO, ZERO), Point(ONE, ZERO)
TOP_LEFT, TOP_RIGHT = Point(ZERO, ONE), Point(ONE, ONE)

SENTENCES = [
    ("fold left edge to right edge", FoldEdge(Edge.LEFT, ONE)),
    ("fold the left edge to the right edge", FoldEdge(Edge.LEFT, ONE)),
    ("Fold left to right.", FoldEdge(Edge.LEFT, ONE)),
    ("FOLD  TOP EDGE  TO  BOTTOM EDGE", FoldEdge(Edge.TOP, ZERO)),
    ("fold right side onto left side", FoldEdge(Edge.RIGHT, ZERO)),
    ("fold left edge to middle", FoldEdge(Edge.LEFT, HALF)),
    ("fold left edge to the center", FoldEdge(Edge.LEFT, HALF)),
    ("fold left edge to centre", FoldEdge(Edge.LEFT, HALF)),
    ("fold left edge to halfway", FoldEdge(Edge.LEFT, HALF)),
    ("fold left edge to ½", FoldEdge(Edge.LEFT, HALF)),
    ("fold left edge to 0.5", FoldEdge(Edge.LEFT, HALF)),
    ("fold left edge to .5", FoldEdge(Edge.LEFT, HALF)),
    ("fold left edge to 2 / 4", FoldEdge(Edge.LEFT, HALF)),
    ("fold top edge to 1/3", FoldEdge(Edge.TOP, THIRD)),
    ("fold top edge to ⅓", FoldEdge(Edge.TOP, THIRD)),
    ("fold top edge to 1/3 behind", FoldEdge(Edge.TOP, THIRD, behind=True)),
    ("fold top edge to 1/3, behind", FoldEdge(Edge.TOP, THIRD, behind=True)),
    ("fold both edges to middle", FoldBothEdges(Axis.WIDTH)),
    ("fold both edges to middle (left and right)", FoldBothEdges(Axis.WIDTH)),
    ("fold both edges (top and bottom) to middle", FoldBothEdges(Axis.HEIGHT)),
    ("fold left and right edges to middle", FoldBothEdges(Axis.WIDTH)),
    ("fold both the top and bottom edges to the middle, behind", FoldBothEdges(Axis.HEIGHT, behind=True)),
    ("fold at 1/3 moving left", FoldAt(THIRD, Edge.LEFT)),
    ("fold at 1/3 moving the top edge", FoldAt(THIRD, Edge.TOP)),
    ("fold at middle moving bottom behind", FoldAt(HALF, Edge.BOTTOM, behind=True)),
    ("fold bottom left corner to top right corner", FoldPoint(BOTTOM_LEFT, TOP_RIGHT)),
    ("fold bottom-left to top-right", FoldPoint(BOTTOM_LEFT, TOP_RIGHT)),
    ("fold left bottom corner to right top corner", FoldPoint(BOTTOM_LEFT, TOP_RIGHT)),
    ("fold (0, 0) to (1/2, 1)", FoldPoint(BOTTOM_LEFT, Point(HALF, ONE))),
    ("fold (0,0) to top right corner", FoldPoint(BOTTOM_LEFT, TOP_RIGHT)),
    (
        "fold the bottom right corner to (½, .5), behind",
        FoldPoint(BOTTOM_RIGHT, Point(HALF, HALF), behind=True),
    ),
    ("fold along (0, 0) (1, 1) moving (0, 1)", FoldAlong(BOTTOM_LEFT, TOP_RIGHT, TOP_LEFT)),
    (
        "fold along bottom left corner to top right corner moving top left corner",
        FoldAlong(BOTTOM_LEFT, TOP_RIGHT, TOP_LEFT),
    ),
    (
        "fold along (0, 0) and (1, 1) moving top left behind",
        FoldAlong(BOTTOM_LEFT, TOP_RIGHT, TOP_LEFT, True),
    ),
    ("pleat width into 5", Pleat(Axis.WIDTH, 5)),
    ("pleat the height into three equal parts", Pleat(Axis.HEIGHT, 3)),
    ("pleat width into Twelve", Pleat(Axis.WIDTH, 12)),
    ("open last", OpenLast()),
    ("open the last fold", OpenLast()),
    ("open", Open()),
    ("Open the sheet.", Open()),
    ("unfold all", Open()),
    ("turn over", TurnOver()),
    ("turn the paper over", TurnOver()),
    ("turn left", TurnQuarter(left=True)),
    ("turn the sheet right", TurnQuarter(left=False)),
    ("shade 2 of 3 across", Shade(2, 3, Axis.WIDTH)),
    ("shade 4 of the 5 up", Shade(4, 5, Axis.HEIGHT)),
    ("shade 2/4 across", Shade(2, 4, Axis.WIDTH)),
    ("shade ⅔ up", Shade(2, 3, Axis.HEIGHT)),
    ("slit at height 1/2 from 1/4 to 3/4", Slit(Axis.HEIGHT, HALF, exact(1, 4), exact(3, 4))),
    ("Cut at the height ½ from 3/4 to 1/4.", Slit(Axis.HEIGHT, HALF, exact(1, 4), exact(3, 4))),
    ("slit at height middle from the left edge to the middle", Slit(Axis.HEIGHT, HALF, ZERO, HALF)),
    ("slit at height 1/2 from 1/4 to right edge", Slit(Axis.HEIGHT, HALF, exact(1, 4), ONE)),
    ("slit at width 1/3 from top to 1/2", Slit(Axis.WIDTH, THIRD, HALF, ONE)),
    ("gather into booklet", Gather()),
    ("gather the sheet into a booklet", Gather()),
    ("gather into booklet with cover at column 3", Gather(3)),
]


@pytest.mark.parametrize(("sentence", "step"), SENTENCES, ids=[sentence for sentence, _ in SENTENCES])
def test_a_sentence_says_its_step(sentence, step):
    assert parse_step(sentence) == step


positions = st.builds(
    lambda part, parts: exact(min(part, parts), parts), st.integers(0, 60), st.integers(1, 60)
)
points = st.builds(Point, positions, positions)
axes, edges, behind = st.sampled_from(Axis), st.sampled_from(Edge), st.booleans()
STEPS_OF_EVERY_KIND = {
    FoldEdge: st.builds(FoldEdge, edges, positions, behind),
    FoldBothEdges: st.builds(FoldBothEdges, axes, behind),
    FoldAt: st.builds(FoldAt, positions, edges, behind),
    FoldPoint: st.builds(FoldPoint, points, points, behind),
    FoldAlong: st.builds(FoldAlong, points, points, points, behind),
    Pleat: st.builds(Pleat, axes, st.integers(2, 12)),
    OpenLast: st.just(OpenLast()),
    Open: st.just(Open()),
    TurnOver: st.just(TurnOver()),
    TurnQuarter: st.builds(TurnQuarter, st.booleans()),
    Shade: st.builds(
        lambda parts, taken, axis: Shade(min(taken, parts), parts, axis),
        st.integers(1, 144),
        st.integers(1, 144),
        axes,
    ),
    Slit: st.builds(
        lambda axis, at, ends: Slit(axis, at, *sorted(ends)),
        axes,
        positions,
        st.lists(positions, min_size=2, max_size=2, unique=True),
    ),
    Gather: st.builds(Gather, st.none() | st.integers(0, 40)),
}


@pytest.mark.parametrize("kind", get_args(Step), ids=lambda kind: kind.__name__)
@given(st.data())
def test_a_step_that_is_said_reads_as_that_step(kind, data):
    step = data.draw(STEPS_OF_EVERY_KIND[kind])
    assert parse_step(step_sentence(step)) == step


def refusal_of(text: str) -> StepUnreadable | None:
    try:
        parse_step(text)
    except StepUnreadable as refusal:
        return refusal
    return None


@settings(max_examples=40, deadline=None)
@given(st.sampled_from(PATTERNS), st.data())
def test_a_sentence_with_a_slip_is_read_or_answered_by_one_that_reads(sentence, data):
    at = data.draw(st.integers(0, len(sentence) - 1))
    changed = sentence[:at] + data.draw(st.text("abcdefgh (),/019", max_size=3)) + sentence[at + 1 :]
    refusal = refusal_of(changed)
    if refusal:
        assert changed[refusal.column - 1 :].startswith(refusal.words)
        parse_step(str(refusal.hint))


@pytest.mark.parametrize(
    "sentence",
    [
        "cut along the middle",
        "cut down the middle",
        "slit the sheet",
        "snip along the crease",
        "cut",
        "slit it open",
    ],
)
def test_a_cut_is_never_answered_by_a_step_that_cuts_nothing(sentence):
    assert isinstance(parse_step(str(refusal_of(sentence).hint)), Slit)


@pytest.mark.parametrize(
    ("sides", "sentence", "fold"),
    [
        ((11, exact(17, 2)), "fold left edge to bottom edge", "fold (0, 1) to (17/22, 0)"),
        ((exact(17, 2), 11), "fold left edge to bottom edge", "fold (1, 0) to (0, 17/22)"),
        ((11, exact(17, 2)), "fold top edge to right edge", "fold (1, 0) to (5/22, 1)"),
        ((8, 8), "fold right edge to top edge", "fold (1, 0) to (0, 1)"),
    ],
)
def test_an_edge_that_goes_to_the_next_one_is_answered_by_the_fold_that_takes_it_there(sides, sentence, fold):
    sheet = Sheet(exact(sides[0]), exact(sides[1]), "in")
    with pytest.raises(StepUnreadable) as refused:
        written_step(sentence, lies=lambda: open_sheet(sheet))
    assert parse_step(str(refused.value.hint)) == parse_step(fold)


@pytest.mark.parametrize(
    ("sentence", "offer"),
    [
        ("fold at 1/12 from bottom", "fold at 1/12 moving bottom"),
        ("fold at 1/12 from the left edge", "fold at 1/12 moving left"),
        ("fold at 1/12 from top", "fold at 11/12 moving top"),
        ("fold at 1/12 of the width from right moving left", "fold at 11/12 moving left"),
        ("dobla por 1/12 desde abajo", "fold at 1/12 moving bottom"),
        ("dobla a 1/12 desde el borde derecho", "fold at 11/12 moving right"),
    ],
)
def test_a_place_counted_from_an_edge_is_answered_by_the_fold_there_and_that_edge_moves(sentence, offer):
    assert parse_step(str(refusal_of(sentence).hint)) == parse_step(offer)


def test_a_slip_within_a_word_is_answered_in_the_language_of_the_others():
    assert str(refusal_of("o0en").hint) == "open"
    assert str(refusal_of("dobla en tr3s").hint).startswith("dobla")


@settings(max_examples=40, deadline=None)
@given(st.text(max_size=60))
def test_any_text_is_read_or_refused_with_its_place(text):
    refusal = refusal_of(text)
    if refusal:
        assert refusal.message
        assert refusal.hint
        assert text[refusal.column - 1 :].startswith(refusal.words)


def test_edges_that_are_named_twice_are_the_same_edges():
    refusal = refusal_of("fold left and right edges to middle (top and bottom)")
    assert refusal is not None
    assert (refusal.column, refusal.words) == (38, "top")
    step_in(str(refusal.hint))


@pytest.mark.parametrize(
    ("edge", "beside"), [(one, other) for one in Edge for other in Edge if one.axis != other.axis]
)
def test_an_edge_is_never_folded_to_the_edge_beside_it_but_its_far_corner_may_be(edge, beside):
    with pytest.raises(StepUnreadable) as caught:
        parse_step(f"fold {edge.value} edge to {beside.value} edge")
    assert caught.value.words == beside.value
    offered = step_in(say(caught.value.hint, "en-US").partition(": ")[2])
    assert isinstance(offered, FoldPoint)
    assert exact(3, 4) in {abs(offered.to.x - offered.point.x), abs(offered.to.y - offered.point.y)}


@pytest.mark.parametrize("offer", PATTERNS)
def test_every_sentence_that_is_offered_can_be_read(offer):
    step_in(offer)


@pytest.mark.parametrize("language", ["en-US", "es"])
def test_an_idiom_stands_for_a_sentence_of_its_language_and_a_near_word_for_a_word(language):
    near = table(language, NEAR)
    for offer in near["idioms"].values():
        step_in(offer, language)
    for word in near["words"].values():
        assert word[0].isdigit() or words_known(word, language) == 1


@pytest.mark.parametrize(
    ("sentence", "offer"),
    [
        (
            "dobla el borde izquierdo hasta el borde izquierdo",
            "dobla el borde izquierdo hasta el borde derecho",
        ),
        ("corta a 1/2 del ancho desde 1/2 hasta 1/2", "corta a 1/2 del ancho desde 1/4 hasta 3/4"),
        ("pinta 2 de las 3 columnas", "sombrea 2 de las 3 columnas"),
        ("sombrea 5 de las 3 columnas", "sombrea 3 de las 3 columnas"),
        ("haz un librito", "cierra la hoja como librito"),
        ("despliega la hoja", "abre la hoja"),
    ],
)
def test_a_spanish_near_miss_is_answered_in_spanish_with_what_would_do(sentence, offer):
    with pytest.raises(StepUnreadable) as caught:
        parse_step(sentence)
    assert caught.value.hint == offer
    step_in(offer, "es")


def test_what_is_offered_for_fourths_is_read_in_the_language_that_offers_it():
    with pytest.raises(StepUnreadable) as caught:
        parse_step("dobla en cuartos")
    for language in ("en-US", "es"):
        offers = re.findall('"([^"]+)"', say(caught.value.hint, language))
        assert [step_in(offer, language) for offer in offers] == [
            Pleat(Axis.WIDTH, 4),
            FoldEdge(Edge.LEFT, ONE),
            FoldEdge(Edge.TOP, ZERO),
        ]


def test_a_sentence_whose_first_word_no_language_knows_is_answered_in_that_of_the_others():
    with pytest.raises(StepUnreadable) as caught:
        parse_step("plegar el borde izquierdo hasta el borde derecho")
    assert caught.value.hint == "dobla el borde izquierdo hasta el borde derecho"


@pytest.mark.parametrize(
    ("sentence", "offer"),
    [
        ("flip over", "turn over"),
        ("rotate left", "turn left"),
        ("fold at third moving left", "fold at 1/3 moving left"),
        ("shade 2 of 3 horizontally", "shade 2 of 3 across"),
        ("fold left edge right edge", "fold left edge to right edge"),
        ("fold left edge to (1/2, 1)", "fold left edge to 1/2"),
        ("pleat into 5", "pleat width into 5"),
        ("open the door", "open"),
        ("slit at height 1/2 from top edge to 1/2", "slit at height 1/2 from right edge to 1/2"),
        ("snip at height 1/2 from 1/4 to 3/4", "cut at height 1/2 from 1/4 to 3/4"),
        ("slit height 1/2 from 1/4 to 3/4", "cut at height 1/2 from 1/4 to 3/4"),
        ("make a booklet", "gather into booklet"),
    ],
)
def test_the_nearest_sentence_keeps_what_was_meant(sentence, offer):
    with pytest.raises(StepUnreadable) as caught:
        parse_step(sentence)
    assert str(caught.value.hint) == offer


@pytest.mark.parametrize(
    ("sentence", "step"),
    [
        ("fold the left part over at 1/3", FoldAt(exact(1, 3), Edge.LEFT)),
        ("fold the bottom part up at 1/4", FoldAt(exact(1, 4), Edge.BOTTOM)),
        ("fold the left part behind at 1/3", FoldAt(exact(1, 3), Edge.LEFT, behind=True)),
        ("fold in half left to right", FoldEdge(Edge.LEFT, ONE)),
        ("fold in half from top to bottom", FoldEdge(Edge.TOP, ZERO)),
        ("fold into thirds across", Pleat(Axis.WIDTH, 3)),
        ("fold into 5 equal parts up", Pleat(Axis.HEIGHT, 5)),
        ("fold the width like a fan, into 3 equal parts", Pleat(Axis.WIDTH, 3)),
        ("undo the last fold", OpenLast()),
        ("turn it over", TurnOver()),
        ("turn the sheet a quarter turn to the left", TurnQuarter(True)),
        ("shade 2 of the 3 columns, inside the shaded part", Shade(2, 3, Axis.WIDTH)),
        ("shade 4 of the 5 rows, from the bottom", Shade(4, 5, Axis.HEIGHT)),
        ("cut at height 1/2 from the left edge to 1/2", Slit(Axis.HEIGHT, HALF, ZERO, HALF)),
        ("push the ends together and close it into a booklet", Gather()),
        ("close into a booklet with the cover at column 1", Gather(1)),
    ],
)
def test_steps_are_read_as_teachers_say_them(sentence, step):
    assert parse_step(sentence) == step


@pytest.mark.parametrize(
    ("sentence", "step"),
    [
        ("Dobla el borde izquierdo hasta el borde derecho.", FoldEdge(Edge.LEFT, ONE)),
        ("dobla el borde de arriba hasta la mitad hacia atrás", FoldEdge(Edge.TOP, HALF, behind=True)),
        ("dobla la parte izquierda por 1/3 del ancho", FoldAt(exact(1, 3), Edge.LEFT)),
        ("dobla la parte de abajo por 0,25", FoldAt(exact(1, 4), Edge.BOTTOM)),
        ("dobla en dos de izquierda a derecha", FoldEdge(Edge.LEFT, ONE)),
        ("dobla a la mitad de izquierda a derecha", FoldEdge(Edge.LEFT, ONE)),
        ("dobla la hoja por la mitad de arriba abajo", FoldEdge(Edge.TOP, ZERO)),
        ("dobla en tercios a lo ancho", Pleat(Axis.WIDTH, 3)),
        ("dobla el alto en abanico, en cinco partes iguales", Pleat(Axis.HEIGHT, 5)),
        ("deshaz el último doblez", OpenLast()),
        ("voltea la hoja", TurnOver()),
        ("gira la hoja un cuarto de vuelta a la derecha", TurnQuarter(False)),
        ("sombrea 2 de las 3 columnas", Shade(2, 3, Axis.WIDTH)),
        ("corta a 1/2 del alto desde el borde izquierdo hasta 1/2", Slit(Axis.HEIGHT, HALF, ZERO, HALF)),
        ("junta los extremos y cierra la hoja como librito", Gather()),
        ("dobla los bordes de arriba y de abajo hasta la mitad", FoldBothEdges(Axis.HEIGHT)),
        (
            "dobla la esquina de abajo a la izquierda hasta la esquina de arriba a la derecha",
            FoldPoint(Point(ZERO, ZERO), Point(ONE, ONE)),
        ),
    ],
)
def test_steps_are_read_in_spanish(sentence, step):
    assert step_in(sentence, "es") == step


@pytest.mark.parametrize("parts", ["quarters", "fourths", "4 equal parts"])
def test_quarters_without_a_direction_are_offered_both_ways_and_never_the_gate(parts):
    with pytest.raises(StepUnreadable) as caught:
        parse_step(f"fold into {parts}")
    assert "across" in str(caught.value.hint)
    assert "fold in half" in str(caught.value.hint)
    assert "middle" not in str(caught.value.hint)
