"""Lessons from step lists, FOLD files as other programs read them, and crease patterns drawn by hand."""

import json
from itertools import pairwise

from strategies import foldings

from foldmath.fold_format.fold_writing import fold_text
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import ProvedLesson, prove
from foldmath.lesson.reading import lesson_in
from foldmath.paper.state import Sheet, open_sheet
from foldmath.plane.numbers import exact
from foldmath.words.steps import WrittenStep, step_sentence

SQUARE = Sheet(exact(1), exact(1), "in")


def proved_steps(sheet, steps):
    """Give the lesson of all the steps that can be done on a sheet."""
    states, sentences = [open_sheet(sheet)], []
    for move in foldings(states[0], steps):
        states.append(move.after)
        sentences.append(WrittenStep(text=step_sentence(move.step), step=move.step, line=1, column=1))
    lesson = Lesson(
        file="drawn.toml",
        title="Drawn",
        grade=5,
        paper="",
        sheet=sheet,
        orientation="landscape",
        steps=tuple(sentences),
    )
    return ProvedLesson(lesson, tuple(states))


def proved_sentences(*steps, paper="letter"):
    """Give the lesson of some sentences."""
    table = f'title = "Said"\ngrade = 5\npaper = "{paper}"\nsteps = {json.dumps(steps, ensure_ascii=False)}\n'
    return prove(lesson_in(table, "said.toml"))


def frames(proved):
    """Read a lesson's FOLD file back, and give every frame with all that it inherits, as the format says."""
    whole = json.loads(fold_text(proved))
    told = [{key: value for key, value in whole.items() if key != "file_frames"}, *whole["file_frames"]]
    found = []
    for frame in told:
        inherited = found[frame["frame_parent"]] if frame.get("frame_inherit") else {}
        found.append(inherited | frame)
    return found


def measured_creases(state):
    """Give the creases of a state as they are, joined where they run on alike."""
    joined: dict = {}
    for crease in state.creases:
        (x, y), (end_x, end_y) = crease.start, crease.end
        slope = None if x == end_x else (end_y - y) / (end_x - x)
        line = (slope, x if slope is None else y - slope * x, crease.kind)
        joined.setdefault(line, []).append((crease.start, crease.end))
    runs = set()
    for (_, _, kind), spans in joined.items():
        spans.sort()
        start = spans[0][0]
        for (_, end), following in pairwise([*spans, None]):
            if following is None or following[0] != end:
                runs.add((start, end, kind))
                start = following[0] if following else None
    return runs


def crossing_lines(width, height, upright, level, unit="in"):
    """Draw a grid as a FOLD object: lines at places, each with one letter.

    Args:
        width, height: of the sheet.
        upright: the letter of each upright line by its x.
        level: the letter of each level line by its y.
        unit: its frame_unit.
    """
    edges, assignments, vertices = [], [], [[0, 0], [width, 0], [width, height], [0, height]]
    for one, other in ((0, 1), (1, 2), (2, 3), (3, 0)):
        edges.append([one, other])
        assignments.append("B")
    for x, letter in upright.items():
        vertices += [[x, 0], [x, height]]
        edges.append([len(vertices) - 2, len(vertices) - 1])
        assignments.append(letter)
    for y, letter in level.items():
        vertices += [[0, y], [width, y]]
        edges.append([len(vertices) - 2, len(vertices) - 1])
        assignments.append(letter)
    return {
        "file_spec": 1.2,
        "frame_classes": ["creasePattern"],
        "frame_unit": unit,
        "vertices_coords": vertices,
        "edges_vertices": edges,
        "edges_assignment": assignments,
    }


def file_of(folder, fold):
    """Write a FOLD object, or text, to a file."""
    path = folder / "pattern.fold"
    path.write_text(fold if isinstance(fold, str) else json.dumps(fold), encoding="utf-8")
    return path
