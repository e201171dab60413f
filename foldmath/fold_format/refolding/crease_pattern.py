"""A crease pattern on a rectangular sheet: takes checked arrays, gives exact creases, or says why not."""

from collections import Counter

from foldmath.fold_format.fold_arrays import Arrays
from foldmath.fold_format.refolding.simple_fractions import simple_fraction
from foldmath.fold_format.refusals import PatternRefused
from foldmath.paper.state import Kind, Sheet
from foldmath.phrases import phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ZERO, Exact, exact, written
from foldmath.values import frozen

KINDS = {"V": Kind.VALLEY, "M": Kind.MOUNTAIN, "C": Kind.CUT, "U": None}
"""What a crease is; None if the file leaves it open. Flat edges (F) and joins (J) are no creases here."""

UNITS = {
    "in": ("in", exact(1)),
    "cm": ("cm", exact(1)),
    "mm": ("mm", exact(1)),
    "m": ("mm", exact(1_000)),
    "um": ("mm", exact(1, 1_000)),
    "nm": ("mm", exact(1, 1_000_000)),
    "pt": ("mm", exact(127, 360)),
}
"""FOLD's units as units of paper; a point is 1/72 inch."""

USUAL_SHORT_SIDE = exact(17, 2)
"""A pattern without a unit is folded from a sheet whose short side is that of letter paper, in inches."""


@frozen
class WantedCrease:
    """A straight piece of a crease, its ends in order; ``kind`` is None if either will do."""

    start: Point
    end: Point
    kind: Kind | None


@frozen(kw_only=True)
class CreasePattern:
    """What a sheet should look like when it is opened.

    Args:
        title: may be empty.
        sheet: its bottom left corner at (0, 0).
        creases: pieces of creases and cuts, in no order.
        measured: whether the file had a unit; if not, the size of the sheet is a choice.
        flat_edges: how many edges were left out because they are flat.
    """

    title: str
    sheet: Sheet
    creases: tuple[WantedCrease, ...]
    measured: bool
    flat_edges: int


def crease_pattern(arrays: Arrays) -> CreasePattern:
    """Find the sheet and the creases on it.

    Raises:
        PatternRefused: the sheet is no upright rectangle, has a hole, or a place is no simple fraction.
    """
    points, width, height = _placed(arrays)
    unit, scale = _scale(arrays.unit, width, height)
    sheet = Sheet(width * scale, height * scale, unit)
    points = [Point(point.x * scale, point.y * scale) for point in points]
    creases: list[WantedCrease] = []
    border: list[tuple[Point, Point]] = []
    inner: Counter[tuple[Point, Point]] = Counter()
    for number, ((start, end), letter) in enumerate(zip(arrays.edges, arrays.assignments, strict=True)):
        ends = min(points[start], points[end]), max(points[start], points[end])
        if ends[0] == ends[1]:
            raise PatternRefused(
                phrase("has no length"), phrase("leave it out"), at=f"edges_vertices[{number}]"
            )
        if _on_one_side(ends, sheet):
            border.append(ends)
        elif letter == "B":
            inner[ends] += 1
        elif letter in KINDS:
            creases.append(WantedCrease(*ends, KINDS[letter]))
    _require_closed(border, sheet)
    creases += _slits(inner)
    flat = sum(letter in "FJ" for letter in arrays.assignments)
    return CreasePattern(
        title=arrays.title,
        sheet=sheet,
        creases=tuple(creases),
        measured=arrays.unit != "unit",
        flat_edges=flat,
    )


def _placed(arrays: Arrays) -> tuple[list[Point], Exact, Exact]:
    """Give the points counted from the bottom left corner of their box, and the size of the box."""
    if arrays.points:
        xs, ys = [point.x for point in arrays.points], [point.y for point in arrays.points]
        left, bottom = min(xs), min(ys)
        moved = [Point(point.x - left, point.y - bottom) for point in arrays.points]
        width, height = max(xs) - left, max(ys) - bottom
        if not (width > ZERO and height > ZERO):
            raise _no_area()
        return moved, width, height
    columns = _side([x for x, _ in arrays.coordinates], "x")
    rows = _side([y for _, y in arrays.coordinates], "y")
    return [Point(*place) for place in zip(columns[0], rows[0], strict=True)], columns[1], rows[1]


def _side(measured: list[float], axis: str) -> tuple[list[Exact], Exact]:
    """Give the places along an axis of the file, counted from the lowest, and the length of the side."""
    low = min(measured)
    length = max(measured) - low
    if length <= 0:
        raise _no_area()
    side = simple_fraction(length)
    if side is None or not side > ZERO:
        raise PatternRefused(
            phrase(
                "the sheet is {length} long along {axis}, and that is no simple fraction",
                length=f"{length:.10g}",
                axis=axis,
            ),
            phrase("measure the sheet to a simple fraction of its unit, such as 8.5 or 297"),
            at="vertices_coords",
        )
    places = []
    for number, value in enumerate(measured):
        at = (value - low) / length
        share = simple_fraction(at)
        if share is None:
            raise PatternRefused(
                phrase(
                    "is at {share} of the side along {axis}, and that is no simple fraction",
                    share=f"{at:.10g}",
                    axis=axis,
                ),
                phrase("use creases at fractions; folds that need square roots are not made here"),
                at=f"vertices_coords[{number}]",
            )
        places.append(share * side)
    return places, side


def _no_area() -> PatternRefused:
    return PatternRefused(
        phrase("the sheet has no area"),
        phrase("save a crease pattern on a rectangular sheet"),
        at="vertices_coords",
    )


def _scale(word: str, width: Exact, height: Exact) -> tuple[str, Exact]:
    if word == "unit":
        return "in", USUAL_SHORT_SIDE / min(width, height)
    if word not in UNITS:
        raise PatternRefused(
            phrase("{word} is not a unit of FOLD", word=repr(word[:20])),
            phrase("use one of {units}, or leave frame_unit out", units=", ".join(UNITS)),
            at="frame_unit",
        )
    return UNITS[word]


def _on_one_side(ends: tuple[Point, Point], sheet: Sheet) -> bool:
    (x, y), (other_x, other_y) = ends
    return (x == other_x and x in (ZERO, sheet.width)) or (y == other_y and y in (ZERO, sheet.height))


def _require_closed(border: list[tuple[Point, Point]], sheet: Sheet) -> None:
    """Make sure that the border runs all round the box of the pattern."""
    corners = sheet.outline
    for one, other in zip(corners, (*corners[1:], corners[0]), strict=True):
        begin, finish = min(one, other), max(one, other)
        reached = begin
        for start, end in sorted(ends for ends in border if _between(ends, begin, finish)):
            if start > reached:
                break
            reached = max(reached, end)
        if reached != finish:
            raise PatternRefused(
                phrase(
                    "the sheet is not a rectangle with level and upright sides: "
                    "its border has a gap at {place}",
                    place=_shown(reached),
                ),
                phrase("use a rectangular sheet, turned so that its sides are level and upright"),
                at="edges_assignment",
            )


def _between(ends: tuple[Point, Point], begin: Point, finish: Point) -> bool:
    if begin.x == finish.x:
        return ends[0].x == begin.x == ends[1].x
    return ends[0].y == begin.y == ends[1].y


def _slits(inner: Counter[tuple[Point, Point]]) -> list[WantedCrease]:
    """Read border edges inside the sheet: two on one place are the two sides of a slit."""
    for (start, end), count in inner.items():
        if count != 2:
            raise PatternRefused(
                phrase(
                    "the sheet has a hole or is not a rectangle: there is a border inside its box, from "
                    "{start} to {end}",
                    start=_shown(start),
                    end=_shown(end),
                ),
                phrase("use a rectangular sheet without holes; mark a slit with C"),
                at="edges_assignment",
            )
    return [WantedCrease(start, end, Kind.CUT) for start, end in inner]


def _shown(point: Point) -> str:
    return f"({written(point.x)}, {written(point.y)})"
