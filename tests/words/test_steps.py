"""A child beside a picture reads no numbers of points; everybody else reads what was written."""

import pytest

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
)
from foldmath.plane.lines import Point
from foldmath.plane.numbers import HALF, ONE, ZERO, exact
from foldmath.words.languages import languages
from foldmath.words.steps import as_written, in_words, picture_sentence, step_sentence

FOLD_IN_PICTURE = "fold along the line in the picture"
POINTS = [text for text in PATTERNS if isinstance(written_step(text).step, FoldAlong | FoldPoint)]


@pytest.mark.parametrize("language", languages())
@pytest.mark.parametrize("text", [text for text in PATTERNS if text not in POINTS])
def test_beside_its_picture_a_step_is_told_in_its_own_sentence_or_shown_by_the_picture(text, language):
    written = written_step(text)
    told = picture_sentence(written, language)
    shown = isinstance(written.step, Slit | Gather)
    assert (told == step_sentence(written.step, language)) is not shown
    assert not set("0123456789(") & set(told) or not shown


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("fold along (0, 0) (1, 1) moving (0, 1)", FOLD_IN_PICTURE),
        ("fold along bottom left to top right corner moving top left corner", FOLD_IN_PICTURE),
        ("fold (0, 0) to (1/2, 1)", FOLD_IN_PICTURE),
        ("fold top left corner to (1/2, 1/2), behind", FOLD_IN_PICTURE),
        ("fold (0, 0) to (1, 1)", "fold the bottom left corner to the top right corner"),
        ("fold both edges (left and right) to middle", "fold the left and right edges to the middle"),
        ("fold at 1/3 moving left", "fold the left part over at 1/3"),
    ],
)
def test_points_are_told_by_their_corners_or_shown_by_the_picture(text, told):
    """It is the kind of step that decides, never a bracket in its words."""
    assert picture_sentence(written_step(text)) == told


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
    FoldAlong(Point(ZERO, exact(1, 3)), Point(ONE, HALF), Point(ZERO, ONE), True),
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


@pytest.mark.parametrize(
    ("step", "said"),
    [
        (FoldEdge(Edge.LEFT, ONE), "dobla el borde izquierdo hasta el borde derecho"),
        (FoldEdge(Edge.TOP, HALF, True), "dobla el borde de arriba hasta la mitad hacia atrás"),
        (FoldAt(exact(1, 3), Edge.LEFT), "dobla la parte izquierda por 1/3 del ancho"),
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
    along, slit = written_step("fold (0, 0) to (1/2, 1)"), written_step("slit at height 1/2 from 1/4 to 3/4")
    assert picture_sentence(along, "es") == "dobla por la línea del dibujo"
    assert picture_sentence(slit, "es") == "corta por la línea gruesa"
