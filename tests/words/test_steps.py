"""A child beside a picture reads no numbers of points; everybody else reads what was written."""

import pytest

from foldmath.lesson.grammar.refusals import StepUnreadable
from foldmath.lesson.grammar.sentences import parse_step, written_step
from foldmath.lesson.grammar.step_parser import step_in
from foldmath.lesson.grammar.suggestions import PATTERNS
from foldmath.paper.steps import (
    Axis,
    Edge,
    FoldAlong,
    FoldAt,
    FoldBothEdges,
    FoldEdge,
    FoldPoint,
    Gather,
    OpenLast,
    Pleat,
    Shade,
    Slit,
    TurnOver,
    TurnQuarter,
    point_on,
)
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ONE, ZERO, exact
from foldmath.words.languages import languages
from foldmath.words.steps import as_written, in_words, picture_sentence, shows_fraction, step_sentence

FOLD_IN_PICTURE = "fold along the line in the picture"
FOLD_FROM_CORNER = "fold a line from the bottom left corner, as in the picture"
POINTS = [text for text in PATTERNS if isinstance(written_step(text).step, FoldAlong | FoldPoint)]


@pytest.mark.parametrize("language", languages())
@pytest.mark.parametrize("text", [text for text in PATTERNS if text not in POINTS])
def test_beside_its_picture_a_step_is_told_in_its_own_sentence_or_shown_by_the_picture(text, language):
    written = written_step(text)
    told = picture_sentence(written, language)
    shown = isinstance(written.step, Slit | Gather)
    # Where shading begins is told too: a child sees rows, and not from which side they are counted.
    assert told.startswith(step_sentence(written.step, language)) is not shown
    assert told == step_sentence(written.step, language) or shown or isinstance(written.step, Shade)
    assert not set("0123456789(") & set(told) or not shown
    assert shows_fraction(written.step) is ("/" in told)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("fold along (0, 0) (1, 1) moving (0, 1)", FOLD_FROM_CORNER),
        ("fold along bottom left to top right corner moving top left corner", FOLD_FROM_CORNER),
        ("fold along (0, 0) (1/3, 1/4) moving (0, 1)", FOLD_FROM_CORNER),
        ("fold along (1/2, 0) (1/3, 1) moving (0, 1)", FOLD_IN_PICTURE),
        ("fold (0, 0) to (1/3, 1)", FOLD_IN_PICTURE),
        ("fold top left corner to (1/2, 1/3), behind", FOLD_IN_PICTURE),
        ("fold (0, 0) to (1/2, 1)", "fold the bottom left corner to the middle of the top edge"),
        ("fold (1, 1) to (1/2, 1/2)", "fold the top right corner to the middle of the sheet"),
        ("fold (0, 0) to (1, 1)", "fold the bottom left corner to the top right corner"),
        ("fold both edges (left and right) to middle", "fold the left and right edges to the middle"),
        ("fold at 1/3 moving left", "fold the left part over at 1/3 of the width"),
    ],
)
def test_points_are_told_by_corners_and_middles_or_shown_by_the_picture(text, told):
    """It is the kind of step that decides, never a bracket in its words."""
    assert picture_sentence(written_step(text)) == told


@pytest.mark.parametrize(
    ("before", "text", "told"),
    [
        ("shade 4 of 5 up", "shade 2 of 3 across", "shade 2 of the 3 columns, inside the shaded part"),
        ("shade 2 of 3 across", "shade 4 of 5 up", "shade 4 of the 5 rows, inside the shaded part"),
        ("shade 4 of 5 up", "shade 4 of 5 up", "shade 4 of the 5 rows, from the bottom"),
        ("open", "shade 2 of 3 across", "shade 2 of the 3 columns, from the left"),
    ],
)
def test_a_part_of_a_shaded_part_is_shaded_inside_it(before, text, told):
    assert picture_sentence(written_step(text), after=written_step(before)) == told


@pytest.mark.parametrize("text", PATTERNS)
def test_a_step_that_nobody_wrote_is_told_in_its_own_sentence(text):
    step = written_step(text).step
    assert as_written(step).text == step_sentence(step)
    assert written_step(as_written(step).text).step == step


LAWFUL = [
    *(written_step(text).step for text in PATTERNS),
    *(FoldEdge(edge, edge.opposite.position, behind) for edge in Edge for behind in (False, True)),
    *(FoldEdge(edge, at, behind) for edge in Edge for at in (HALF, exact(2, 5)) for behind in (False, True)),
    *(FoldAt(at, edge, behind) for edge in Edge for at in (HALF, exact(1, 3)) for behind in (False, True)),
    *(FoldBothEdges(axis, behind) for axis in Axis for behind in (False, True)),
    *(Pleat(axis, parts) for axis in Axis for parts in (2, 3, 12)),
    *(Shade(taken, 6, axis) for taken in (1, 6) for axis in Axis),
    *(
        Slit(axis, exact(1, 4), start, end)
        for axis in Axis
        for start in (ZERO, HALF)
        for end in (exact(3, 4), ONE)
    ),
    *(FoldPoint(Point(x, y), Point(HALF, exact(2, 3)), True) for x in (ZERO, ONE) for y in (ZERO, ONE)),
    *(FoldPoint(Point(x, y), Point(ONE - x, ONE - y)) for x in (ZERO, ONE) for y in (ZERO, ONE)),
    *(
        FoldPoint(Point(x, y), Point(HALF, HALF))
        for x, y in ((HALF, ZERO), (HALF, ONE), (ZERO, HALF), (ONE, HALF))
    ),
    *(
        FoldPoint(point_on(edge, at), Point(exact(2, 3), exact(5, 24)))
        for edge in Edge
        for at in (exact(1, 3), exact(3, 4))
    ),
    *(FoldPoint(Point(x, exact(1, 25)), Point(ONE, HALF)) for x in (ZERO, exact(-1, 3), exact(4, 3))),
    FoldAlong(Point(ZERO, exact(1, 3)), Point(ONE, HALF), Point(ZERO, ONE), True),
    FoldAlong(Point(ONE, ZERO), Point(exact(1, 3), HALF), Point(ONE, ONE), True),
    *(TurnQuarter(left) for left in (False, True)),
    Gather(),
    Gather(0),
]


@pytest.mark.parametrize("language", languages())
@pytest.mark.parametrize("step", LAWFUL, ids=str)
def test_what_is_said_in_a_language_reads_back_as_the_same_step(language, step):
    said = step_sentence(step, language)
    assert step_in(said, language) == step
    assert parse_step(said) == step
    assert parse_step(said[:1].upper() + said[1:] + ".") == step


BOTTOM_LEFT, TOP_LEFT = Point(ZERO, ZERO), Point(ZERO, ONE)


@pytest.mark.parametrize(
    ("to", "told"),
    [
        (Point(HALF, ONE), "the middle of the top edge"),
        (Point(HALF, HALF), "the middle of the sheet"),
        (Point(exact(1, 3), ONE), "the point 1/3 along the top edge from the left"),
        (Point(exact(3, 5), ONE), "the point 2/5 along the top edge from the right"),
        (Point(ONE, exact(1, 4)), "the point 1/4 up the right edge"),
        (Point(ONE, exact(3, 4)), "the point 1/4 down the right edge"),
        (Point(exact(1, 3), exact(3, 4)), "the point 1/3 across and 3/4 up"),
        (Point(ONE, exact(1, 24)), "the point 1/24 up the right edge"),
        (Point(ONE, exact(1, 25)), "(1, 1/25)"),
        (Point(ONE, exact(-1, 4)), "(1, -1/4)"),
    ],
)
def test_a_point_is_told_by_what_a_teacher_points_at_and_from_the_nearer_corner(to, told):
    """Only a place that no part up to 24 names, or that is not on the paper, is told by its numbers."""
    assert step_sentence(FoldPoint(BOTTOM_LEFT, to)) == f"fold the bottom left corner to {told}"


@pytest.mark.parametrize(
    ("end", "way"),
    [
        (Point(ONE, ONE), "to the top right corner"),
        (Point(ONE, HALF), "to the middle of the right edge"),
        (Point(exact(1, 3), exact(1, 4)), "through the point 1/3 across and 1/4 up"),
    ],
)
def test_a_line_runs_to_a_place_on_an_edge_and_through_one_inside(end, way):
    told = step_sentence(FoldAlong(BOTTOM_LEFT, end, TOP_LEFT))
    assert told == f"fold along the line from the bottom left corner {way}, moving the top left corner"


@pytest.mark.parametrize(
    ("sentence", "language"),
    [
        ("fold the left part over at 1/3 of the height", "en-US"),
        ("fold at 1/3 of the width moving top", "en-US"),
        ("fold the bottom edge to 1/4 of the width", "en-US"),
        ("dobla la parte izquierda por 1/3 del alto", "es"),
    ],
)
def test_a_place_of_the_wrong_side_is_refused_and_not_passed_over(sentence, language):
    with pytest.raises(StepUnreadable, match="so its place is a part of"):
        step_in(sentence, language)


@pytest.mark.parametrize(
    ("step", "said"),
    [
        (FoldEdge(Edge.LEFT, ONE), "dobla el borde izquierdo hasta el borde derecho"),
        (FoldEdge(Edge.TOP, HALF, True), "dobla el borde de arriba hasta la mitad hacia atrás"),
        (FoldAt(exact(1, 3), Edge.LEFT), "dobla la parte izquierda por 1/3 del ancho"),
        (FoldAt(HALF, Edge.TOP), "dobla la parte de arriba por la mitad"),
        (FoldEdge(Edge.TOP, exact(1, 3)), "dobla el borde de arriba hasta 1/3 del alto"),
        (
            FoldPoint(BOTTOM_LEFT, Point(exact(3, 4), ONE)),
            "dobla la esquina de abajo a la izquierda hasta el punto a 1/4 del borde de arriba "
            "desde la derecha",
        ),
        (
            FoldAlong(BOTTOM_LEFT, Point(exact(1, 3), exact(1, 4)), TOP_LEFT),
            "dobla por la línea desde la esquina de abajo a la izquierda que pasa por el punto a 1/3 "
            "del ancho y a 1/4 del alto, moviendo la esquina de arriba a la izquierda",
        ),
        (Pleat(Axis.HEIGHT, 3), "dobla el alto en abanico, en 3 partes iguales"),
        (Shade(2, 3, Axis.WIDTH), "sombrea 2 de las 3 columnas"),
        (TurnOver(), "voltea la hoja"),
        (OpenLast(), "deshaz el último doblez"),
    ],
)
def test_steps_as_they_are_said_in_spanish(step, said):
    assert step_sentence(step, "es") == said


def test_a_page_says_a_step_in_its_own_language_and_wording_whatever_was_written():
    english, spanish = (
        written_step("fold left edge to middle"),
        written_step("dobla el borde izquierdo hasta la mitad"),
    )
    assert in_words(english, "en-GB") == in_words(spanish, "en-US") == "fold the left edge to the middle"
    assert in_words(english, "es") == spanish.text == in_words(spanish, "es")


def test_beside_a_spanish_picture_no_numbers_of_points_are_read():
    along, slit = written_step("fold (0, 0) to (1/3, 1)"), written_step("slit at height 1/2 from 1/4 to 3/4")
    assert picture_sentence(along, "es") == "dobla por la línea del dibujo"
    diagonal = written_step("fold along (0, 0) (1/3, 1/4) moving (0, 1)")
    told = "dobla desde la esquina de abajo a la izquierda: mira el dibujo"
    assert picture_sentence(diagonal, "es") == told
    assert picture_sentence(slit, "es") == "corta por la línea gruesa"
