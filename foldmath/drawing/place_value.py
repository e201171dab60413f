"""Place-value blocks drawn to scale: a unit, a rod of ten, a flat of a hundred, a block of a thousand."""

from collections.abc import Iterator
from dataclasses import dataclass

from foldmath.drawing.scenes import Area, Mark, Meaning, Scene, Spot, Stroke, Tone
from foldmath.errors import FoldmathError
from foldmath.phrases import Phrase, phrase

LARGEST = 9_999
"""More than nine thousands would be too many blocks to count, or too small."""

SMALLEST_UNIT_MM, LARGEST_UNIT_MM = 1.0, 5.0
"""A unit smaller than a millimetre cannot be counted in a copy; larger ones look no better."""

UNIT_STEP_MM = 0.05
MARGIN_MM = 0.4
GAP = 1.0
"""Between pieces, in units."""

TEN = 10
DEPTH = 4.0
"""How far a block's depth of ten units goes right and up, in units: an oblique picture, front face true."""

UNITS_IN_A_STACK = 5
"""Units stand in stacks of five, so that they are counted at a glance."""


class BlocksRefused(FoldmathError):
    """A number that cannot be shown in blocks here."""


@dataclass(frozen=True)
class Piece:
    """One block or flat, or all rods or all units, which stay together.

    Args:
        value: 1, 10, 100 or 1000.
        count: how many of that value.
        width, height: in units, as 1 is the side of a unit.
    """

    value: int
    count: int
    width: float
    height: float


@dataclass(frozen=True)
class Laid:
    """A piece with its bottom left corner, in units, x from the left and y down from the top."""

    piece: Piece
    x: float
    bottom: float


def blocks(value: int, width_mm: float, most_height_mm: float) -> Scene:
    """Draw a number in blocks, all at one scale, the largest that fits: exact proportions.

    Args:
        value: from 1 to ``LARGEST``.
        width_mm: of the picture.
        most_height_mm: the picture is not higher.

    Raises:
        BlocksRefused: the number is too large, 0, or a unit would be smaller than ``SMALLEST_UNIT_MM``.
    """
    pieces = pieces_of(value)
    steps = int((LARGEST_UNIT_MM - SMALLEST_UNIT_MM) / UNIT_STEP_MM + 0.5)
    for step in range(steps + 1):
        unit = LARGEST_UNIT_MM - step * UNIT_STEP_MM
        laid = _laid(pieces, (width_mm - 2 * MARGIN_MM) / unit)
        if laid and _depth(laid) * unit + 2 * MARGIN_MM <= most_height_mm:
            return _scene(value, laid, unit, width_mm)
    raise BlocksRefused(_no_room(value))


def least_height_mm(value: int, width_mm: float) -> float:
    """Give the height that the smallest blocks of a number need, in mm.

    Raises:
        BlocksRefused: the number is too large, 0, or too wide even so.
    """
    laid = _laid(pieces_of(value), (width_mm - 2 * MARGIN_MM) / SMALLEST_UNIT_MM)
    if not laid:
        raise BlocksRefused(_no_room(value))
    return _depth(laid) * SMALLEST_UNIT_MM + 2 * MARGIN_MM


def _no_room(value: int) -> Phrase:
    return phrase("blocks for {number} have no room here", number=value)


def pieces_of(value: int) -> tuple[Piece, ...]:
    """Give the pieces of a number, the largest first.

    Raises:
        BlocksRefused: the number is 0 or too large.
    """
    if not 1 <= value <= LARGEST:
        raise BlocksRefused(
            phrase("blocks are drawn to scale for numbers from 1 to {largest}", largest=LARGEST)
        )
    thousands, hundreds, tens, ones = (value // 1000, value // 100 % 10, value // 10 % 10, value % 10)
    stacks, highest = -(-ones // UNITS_IN_A_STACK), min(ones, UNITS_IN_A_STACK)
    return (
        *(Piece(1000, 1, TEN + DEPTH, TEN + DEPTH) for _ in range(thousands)),
        *(Piece(100, 1, TEN, TEN) for _ in range(hundreds)),
        *([Piece(10, tens, _apart(tens), TEN)] if tens else []),
        *([Piece(1, ones, _apart(stacks), _apart(highest))] if ones else []),
    )


def _apart(count: int) -> float:
    """Give the room for units in a row with gaps between them, in units."""
    return count + GAP * (count - 1)


def _laid(pieces: tuple[Piece, ...], width: float) -> list[Laid]:
    """Set pieces in rows of a width in units; nothing if one is wider. A row stands on its bottom line."""
    rows: list[list[tuple[Piece, float]]] = [[]]
    x = 0.0
    for piece in pieces:
        if piece.width > width:
            return []
        if rows[-1] and x + piece.width > width:
            rows.append([])
            x = 0.0
        rows[-1].append((piece, x))
        x += piece.width + GAP
    laid, depth = [], 0.0
    for row in rows:
        depth += max(piece.height for piece, _ in row)
        laid += [Laid(piece, x, depth) for piece, x in row]
        depth += GAP
    return laid


def _depth(laid: list[Laid]) -> float:
    return max(place.bottom for place in laid)


def _scene(value: int, laid: list[Laid], unit: float, width_mm: float) -> Scene:
    height = _depth(laid) * unit + 2 * MARGIN_MM
    marks: list[Mark] = []
    for place in laid:
        foot = Spot(MARGIN_MM + place.x * unit, height - MARGIN_MM - place.bottom * unit)
        marks += _marks(place.piece, foot, unit)
    return Scene(
        width_mm=width_mm,
        height_mm=height,
        marks=tuple(marks),
        words=phrase("Blocks for {number}.", number=value),
    )


def _marks(piece: Piece, foot: Spot, unit: float) -> Iterator[Mark]:
    if piece.value == 1:
        for number in range(piece.count):
            stack, place = divmod(number, UNITS_IN_A_STACK)
            step = (1 + GAP) * unit
            yield from _grid(Spot(foot.x + stack * step, foot.y + place * step), 1, 1, unit)
    elif piece.value == TEN:
        for number in range(piece.count):
            yield from _grid(Spot(foot.x + number * (1 + GAP) * unit, foot.y), 1, TEN, unit)
    elif piece.value == 1000:
        yield from _depth_faces(foot, unit)
        yield from _grid(foot, TEN, TEN, unit)
    else:
        yield from _grid(foot, TEN, TEN, unit)


def _grid(foot: Spot, columns: int, rows: int, unit: float) -> Iterator[Mark]:
    """Draw a face of units: a fine grid in a thicker outline."""
    width, height = columns * unit, rows * unit
    corners = (
        foot,
        Spot(foot.x + width, foot.y),
        Spot(foot.x + width, foot.y + height),
        Spot(foot.x, foot.y + height),
    )
    yield Area(corners, Tone.PRINTED_SIDE)
    for column in range(1, columns):
        x = foot.x + column * unit
        yield Stroke((Spot(x, foot.y), Spot(x, foot.y + height)), Meaning.CREASE)
    for row in range(1, rows):
        y = foot.y + row * unit
        yield Stroke((Spot(foot.x, y), Spot(foot.x + width, y)), Meaning.CREASE)
    yield Stroke(corners, Meaning.GRID, closed=True)


def _depth_faces(foot: Spot, unit: float) -> Iterator[Mark]:
    """Draw the top and the right face of a block, slanted back, with the lines of their ten layers."""
    side, back = TEN * unit, DEPTH * unit
    left_top, right_top = Spot(foot.x, foot.y + side), Spot(foot.x + side, foot.y + side)
    right_foot = Spot(foot.x + side, foot.y)
    for start, end in ((left_top, right_top), (right_foot, right_top)):
        face = (start, end, Spot(end.x + back, end.y + back), Spot(start.x + back, start.y + back))
        yield Area(face, Tone.BACK_SIDE)
        yield Stroke(face, Meaning.GRID, closed=True)
        for layer in range(1, TEN):
            slip = back * layer / TEN
            line = (Spot(start.x + slip, start.y + slip), Spot(end.x + slip, end.y + slip))
            yield Stroke(line, Meaning.CREASE)
