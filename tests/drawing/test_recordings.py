"""A recording is the ink of a scene, in operators that any page understands (ISO 32000-1, 8.4 and 8.5)."""

import pytest
from hypothesis import given, settings
from lessons_in_words import EIGHTHS, LETTER, paper_after
from pictured import of_kind
from strategies import folded, sheets, step_lists

from foldmath.drawing.area_models import Grid, blank_model, shaded_model
from foldmath.drawing.legends import SAMPLES, legend_sample
from foldmath.drawing.rendering.recorder import record
from foldmath.drawing.rendering.recording import Digits, Inked, Said
from foldmath.drawing.scenes import Figure
from foldmath.drawing.sheets.crease_patterns import crease_pattern
from foldmath.drawing.sheets.folded_sheets import folded_sheet
from foldmath.lesson.grammar.sentences import parse_step
from foldmath.paper.state import open_sheet

OPERANDS = {"w": 1, "J": 1, "j": 1, "G": 1, "g": 1, "m": 2, "l": 2, "c": 6, "h": 0, "S": 0, "f": 0, "B": 0}
PAINTS = {"S", "f", "B"}
POINTS_PER_MM = 72 / 25.4

SCENES = [
    crease_pattern(paper_after(*EIGHTHS), 120, 120),
    folded_sheet(paper_after(*EIGHTHS), parse_step("fold top edge to bottom edge, behind"), 38, 31),
    folded_sheet(open_sheet(LETTER), parse_step("pleat width into 5"), 38, 31),
    blank_model(Grid(3, 5, 2, 4), 64, 44),
    shaded_model(Grid(3, 5, 2, 4), 64, 44),
    *(legend_sample(name) for name in SAMPLES),
]
scenes = pytest.mark.parametrize("scene", SCENES, ids=range(len(SCENES)))


def operators(ink):
    """Read operands and operators, dashes as one operand; complain of any that is not a path's."""
    waiting, read = [], []
    words = iter(ink.operators.split())
    for word in words:
        if word.startswith("["):
            while not word.endswith("]"):
                word = f"{word} {next(words)}"
            lengths = [float(length) for length in word.strip("[]").split()]
            assert all(length >= 0 for length in lengths)
            assert lengths == [] or sum(lengths) > 0
            assert float(next(words)) >= 0
            assert next(words) == "d"
        elif word in OPERANDS:
            assert len(waiting) == OPERANDS[word]
            read.append((word, waiting))
            waiting = []
        else:
            waiting.append(float(word))
    assert waiting == []
    return read


@scenes
def test_every_operator_has_its_operands_and_every_path_begins_and_is_painted(scene):
    for ink in record(scene).ink:
        if isinstance(ink, Inked):
            names = [name for name, _ in operators(ink)]
            path = [name for name in names if name in {"m", "l", "c", "h"}]
            assert path[0] == "m"
            assert names[-1] in PAINTS
            assert len(PAINTS & set(names)) == 1


@scenes
def test_the_ink_is_in_points_inside_the_picture(scene):
    recording = record(scene)
    assert recording.width == pytest.approx(scene.width_mm * POINTS_PER_MM)
    assert recording.height == pytest.approx(scene.height_mm * POINTS_PER_MM)
    for ink in recording.ink:
        if isinstance(ink, Inked):
            for name, numbers in operators(ink):
                if name in ("m", "l"):
                    assert -0.01 <= numbers[0] <= recording.width + 0.01
                    assert -0.01 <= numbers[1] <= recording.height + 0.01


def test_the_digits_of_every_fraction_are_recorded_and_said():
    scene = SCENES[0]
    ink = record(scene).ink
    digits = [mark.text for mark in ink if isinstance(mark, Digits)]
    assert len(of_kind(scene, Figure)) == 8
    assert digits == ["1", "8"] * 8
    assert [mark.words for mark in ink if isinstance(mark, Said)] == ["1/8", ""] * 8


def test_digits_stand_above_and_below_their_bar():
    ink = record(SCENES[0]).ink
    begin = ink.index(Said("1/8"))
    above, bar, below = ink[begin + 1 : begin + 4]
    (height,) = {numbers[1] for name, numbers in operators(bar) if name in ("m", "l")}
    assert above.y > height > below.y + 0.729 * below.size


@given(sheets, step_lists)
@settings(max_examples=15, deadline=None)
def test_the_same_scene_gives_the_same_recording_and_another_scene_another_name(sheet, steps):
    state = folded(sheet, steps)
    one, other = (record(crease_pattern(state, 120, 120)) for _ in range(2))
    assert one == other
    assert record(folded_sheet(state, None, 60, 60)).name != one.name


def test_pictures_of_one_lesson_have_different_names():
    assert len({record(scene).name for scene in SCENES}) == len(SCENES)
