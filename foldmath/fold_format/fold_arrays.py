"""The arrays of a crease pattern: takes a FOLD frame, gives points and edges whose every index is good."""

import re
from itertools import pairwise
from math import isfinite
from typing import Any

from foldmath.fold_format.fold_json import Frame, attributes
from foldmath.fold_format.folded_frames import EXACT_KEY
from foldmath.fold_format.refusals import PatternRefused
from foldmath.phrases import Said, phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import Exact, denominator, exact, numerator
from foldmath.values import frozen

MOST_VERTICES, MOST_EDGES = 10_000, 20_000
"""More than a sheet of 4,096 panels in a grid has."""

NEAR_ENOUGH = 1e-6
"""Exact coordinates may differ from the decimals beside them by this share of the largest coordinate."""

KINDS = "BMVFUCJ"
FLAT_ANGLES = (-180, 0, 180)

SAVE_FLAT = phrase("save the opened sheet, flat")
WRITE_LETTERS = phrase("write B, M, V, F, U or C for each edge")

_FRACTION = re.compile(r"(-?[0-9]{1,2000})(?:/([0-9]{1,2000}))?", re.ASCII)


@frozen(kw_only=True)
class Arrays:
    """What a frame says, checked but not yet understood.

    Args:
        coordinates: for each vertex, x and y as measured.
        points: the same exactly, where the file says them exactly; else empty.
        edges: for each edge, its two vertices.
        assignments: for each edge, one letter of FOLD: B, M, V, F, U, C or J.
        unit: the word for the unit; ``unit`` where there is none.
        title: of the file or the frame; may be empty.
    """

    coordinates: list[tuple[float, float]]
    points: list[Point]
    edges: list[tuple[int, int]]
    assignments: list[str]
    unit: str
    title: str


def arrays_of(frame: Frame) -> Arrays:
    """Check the arrays of a frame.

    Raises:
        PatternRefused: one is missing, has the wrong shape, or points where nothing is.
    """
    if "3D" in attributes(frame):
        raise PatternRefused(phrase("is folded in space (3D)"), SAVE_FLAT, at="frame_attributes")
    coordinates = _coordinates(frame)
    edges = _edges(frame, len(coordinates))
    title = next((frame[key] for key in ("file_title", "frame_title") if isinstance(frame.get(key), str)), "")
    unit = frame.get("frame_unit", "unit")
    if not isinstance(unit, str):
        raise PatternRefused(phrase("is not a word"), '"frame_unit": "in"', at="frame_unit")
    return Arrays(
        coordinates=coordinates,
        points=_points(frame, coordinates),
        edges=edges,
        assignments=_assignments(frame, len(edges)),
        unit=unit,
        title=title,
    )


def _list(frame: Frame, key: str, most: int) -> list[Any]:
    found = frame.get(key)
    if not isinstance(found, list) or not found:
        raise PatternRefused(
            phrase("is missing, or is not a list"), phrase("save the crease pattern as FOLD 1.2"), at=key
        )
    if len(found) > most:
        raise PatternRefused(
            phrase("has more than {most} entries", most=most),
            phrase("use a crease pattern that hands could fold"),
            at=key,
        )
    return found


def _coordinates(frame: Frame) -> list[tuple[float, float]]:
    found = []
    for number, vertex in enumerate(_list(frame, "vertices_coords", MOST_VERTICES)):
        at = f"vertices_coords[{number}]"
        if not isinstance(vertex, list) or len(vertex) not in (2, 3) or not all(map(_is_number, vertex)):
            raise PatternRefused(phrase("is not two numbers"), phrase("write each vertex as [x, y]"), at=at)
        if len(vertex) == 3 and vertex[2] != 0:
            raise PatternRefused(phrase("is not in the plane"), SAVE_FLAT, at=at)
        found.append((float(vertex[0]), float(vertex[1])))
    return found


def _is_number(value: Any) -> bool:
    if isinstance(value, bool) or not isinstance(value, int | float):
        return False
    try:
        return isfinite(value) and abs(value) < 1e12
    except OverflowError:
        return False


def _points(frame: Frame, coordinates: list[tuple[float, float]]) -> list[Point]:
    if EXACT_KEY not in frame:
        return []
    given = frame[EXACT_KEY]
    if not isinstance(given, list) or len(given) != len(coordinates):
        raise _exact_refused(phrase("does not have one entry for each vertex"))
    size = max(abs(number) for vertex in coordinates for number in vertex)
    points = []
    for number, (pair, measured) in enumerate(zip(given, coordinates, strict=True)):
        if not isinstance(pair, list) or len(pair) != 2:
            raise _exact_refused(phrase("is not a pair"), number)
        point = Point(_fraction(pair[0], number), _fraction(pair[1], number))
        if any(
            abs(numerator(exactly) / denominator(exactly) - nearly) > NEAR_ENOUGH * size
            for exactly, nearly in zip(point, measured, strict=True)
        ):
            raise _exact_refused(phrase("is another place than that in vertices_coords"), number)
        points.append(point)
    return points


def _fraction(text: Any, vertex: int) -> Exact:
    found = _FRACTION.fullmatch(text) if isinstance(text, str) else None
    below = int(found[2] or 1) if found else 0
    if found is None or not below:
        at = f"{EXACT_KEY}[{vertex}]"
        raise PatternRefused(phrase("is no fraction"), phrase('write it as "25/3"'), at=at)
    return exact(int(found[1]), below)


def _exact_refused(message: Said, vertex: int | None = None) -> PatternRefused:
    """Refuse exact coordinates, which a file may do without: all of them, or those of a vertex."""
    at = EXACT_KEY if vertex is None else f"{EXACT_KEY}[{vertex}]"
    return PatternRefused(message, phrase("leave {key} out", key=EXACT_KEY), at=at)


def _edges(frame: Frame, vertices: int) -> list[tuple[int, int]]:
    if "edges_vertices" not in frame and "faces_vertices" in frame:
        return _edges_round_faces(frame, vertices)
    return [
        _edge(f"edges_vertices[{number}]", edge, vertices)
        for number, edge in enumerate(_list(frame, "edges_vertices", MOST_EDGES))
    ]


def _edges_round_faces(frame: Frame, vertices: int) -> list[tuple[int, int]]:
    if "edges_assignment" in frame or "edges_foldAngle" in frame:
        raise PatternRefused(
            phrase("is missing"), phrase("save edges with their vertices"), at="edges_vertices"
        )
    found: dict[tuple[int, int], None] = {}
    for number, face in enumerate(_list(frame, "faces_vertices", MOST_EDGES)):
        at = f"faces_vertices[{number}]"
        if not isinstance(face, list) or len(face) < 3:
            raise PatternRefused(
                phrase("has fewer than three vertices"), phrase("list its vertices in order"), at=at
            )
        for ends in pairwise([*face, face[0]]):
            start, end = _edge(at, list(ends), vertices)
            found[min(start, end), max(start, end)] = None
        if len(found) > MOST_EDGES:
            raise PatternRefused(
                phrase("there are more than {most} edges", most=MOST_EDGES),
                phrase("use a simpler crease pattern"),
                at="faces_vertices",
            )
    return list(found)


def _edge(at: str, ends: Any, vertices: int) -> tuple[int, int]:
    """Read the two vertices of an edge that stands at a key of the file."""
    if not isinstance(ends, list) or len(ends) != 2:
        raise PatternRefused(phrase("does not have two vertices"), phrase("write each edge as [0, 1]"), at=at)
    for end in ends:
        if isinstance(end, bool) or not isinstance(end, int) or not 0 <= end < vertices:
            raise PatternRefused(
                phrase("names vertex {vertex}, which is not there", vertex=str(end)[:20]),
                phrase("number the vertices from 0 to {last}", last=vertices - 1),
                at=at,
            )
    return ends[0], ends[1]


def _assignments(frame: Frame, edges: int) -> list[str]:
    given = frame.get("edges_assignment")
    angles = _angles(frame, edges)
    if given is None:
        return ["V" if angle > 0 else "M" if angle < 0 else "U" for angle in angles]
    if not isinstance(given, list) or len(given) != edges:
        raise PatternRefused(
            phrase("does not have one letter for each edge"), WRITE_LETTERS, at="edges_assignment"
        )
    for number, (letter, angle) in enumerate(zip(given, angles, strict=True)):
        if not isinstance(letter, str) or len(letter) != 1 or letter not in KINDS:
            found = phrase("is {letter}, which stands for no kind of edge", letter=repr(str(letter)[:20]))
            raise PatternRefused(found, WRITE_LETTERS, at=f"edges_assignment[{number}]")
        if angle and {"V": 180, "M": -180}.get(letter, angle) != angle:
            raise PatternRefused(
                phrase("is {angle}, yet the edge is assigned {letter}", angle=f"{angle:g}", letter=letter),
                phrase("valley folds have 180, mountain folds -180"),
                at=f"edges_foldAngle[{number}]",
            )
    return given


def _angles(frame: Frame, edges: int) -> list[float]:
    angles = frame.get("edges_foldAngle", [0] * edges)
    if not isinstance(angles, list) or len(angles) != edges:
        raise PatternRefused(
            phrase("does not have one number for each edge"),
            phrase("leave {key} out", key="edges_foldAngle"),
            at="edges_foldAngle",
        )
    for number, angle in enumerate(angles):
        if angle is not None and (not _is_number(angle) or angle not in FLAT_ANGLES):
            raise PatternRefused(
                phrase("is {angle}°, and paper here is folded flat", angle=str(angle)[:20]),
                phrase("save it with fold angles of 180, -180 and 0"),
                at=f"edges_foldAngle[{number}]",
            )
    return [angle or 0 for angle in angles]
