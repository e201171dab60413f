"""Pictures of gathering, in perspective: ends pushed together, the slit opening into a box, the booklet."""

from collections.abc import Mapping, Sequence
from math import cos, hypot, radians, sin

from foldmath.drawing.booklets.gathering import Strips, fan_walls, fanned, leafed, pushed, walls
from foldmath.drawing.booklets.perspective import Point3D, Wall, from_back_to_front
from foldmath.drawing.booklets.shots import Shot
from foldmath.drawing.layout import figure_in
from foldmath.drawing.look import DIGIT_HEIGHT, DIGIT_WIDTH
from foldmath.drawing.scenes import Area, Figure, Mark, Meaning, Scene, Spot, Star, Stroke, Tone
from foldmath.drawing.sheets.arrows import swept
from foldmath.drawing.stars import PICTURE_STAR_MM
from foldmath.measured import as_float
from foldmath.paper.booklet.booklet import Booklet, Face
from foldmath.paper.booklet.ring import USUAL_COLUMN, Ring, ring
from foldmath.paper.state import CUT, FoldedState, Panel
from foldmath.phrases import Phrase, phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ZERO, exact

ARROW_GAP, ARROW_LENGTH, ARROW_WIDTH, ARROW_NECK = 0.035, 0.13, 0.11, 0.05
"""Of an arrow that pushes, in lengths of the strip: from the paper, its length, its widths."""

LARGEST_NUMBER_MM, SMALLEST_NUMBER_MM = 7.0, 2.6
NUMBERS_FROM = 0.28
"""Numbers stand in the upper part of a panel, clear of the star: from here up, of its height."""

STAR_CLEAR = 1.25
"""How far the star's middle stays from every edge, in its own radii."""

STAR_STEPS = 20
"""Places tried for the star, from the corner to the middle of its panel."""

PUSHES = (0.0, 0.5, 0.76)
"""How far the ends are pushed in the pictures: the flat strip, square boxes, boxes almost closed."""

TURN_REACH, TURN_STOPS_DEGREES, TURN_STEPS = 0.8, 14.0, 12
"""How far out the turning arrow runs, in widths of a page; how far short it stops; in how many steps."""

FAN_DEGREES = 50.0
COVER_DEGREES, LEAF_SPREAD_DEGREES = -50.0, 92.0
"""Where the cover's leaf points as the booklet closes, and how far round all leaves are spread."""


PUSHED_WORDS = phrase("The sheet stands, folded in half along its slit; arrows push its ends together.")
FAN_WORDS = phrase("The columns are folded back and forth like a fan.")
CLOSING_WORDS = phrase("The pages turn to the right, page 1 in front.")


def pushing(state: FoldedState, column: int | None, width_mm: float, height_mm: float) -> tuple[Scene, ...]:
    """Draw the strip stood up, the slit opened into boxes, and the boxes almost closed, all at one scale.

    Args:
        state: the open sheet with its slit.
        column: of the cover, as in ``gather``.
        width_mm: of each picture.
        height_mm: of each picture.
    """
    found = _ring(state, column)
    poses = [pushed(found, share) for share in PUSHES]
    arrows = [push_arrows(found, strips) for strips in poses]
    stood = [walls(state, found, strips) for strips in poses]
    places = [place for upright in stood for wall in upright for place in wall.corners]
    places += [place for pair in arrows for arrow in pair for place in arrow]
    shot = Shot(_length(found), places, width_mm, height_mm)
    scenes = []
    for upright, pair in zip(stood, arrows, strict=True):
        marks = standing(state.panels, _numbers(found), upright, shot)
        pushes = tuple(Stroke(tuple(map(shot.spot, arrow)), Meaning.ARROW, closed=True) for arrow in pair)
        scenes.append(Scene(width_mm=width_mm, height_mm=height_mm, marks=marks + pushes, words=PUSHED_WORDS))
    return tuple(scenes)


def to_and_fro(state: FoldedState, column: int | None, width_mm: float, height_mm: float) -> Scene:
    """Draw the columns folded like a fan."""
    found = _ring(state, column)
    return _alone(state, found, fanned(found, FAN_DEGREES), (width_mm, height_mm), FAN_WORDS)


def closing(state: FoldedState, column: int | None, width_mm: float, height_mm: float) -> Scene:
    """Draw the leaves as they turn round the back, the cover in front."""
    found = _ring(state, column)
    between = LEAF_SPREAD_DEGREES / (len(found.panels) // 2 - 1)
    upright = walls(state, found, leafed(found, COVER_DEGREES, between))
    turning = turning_arrow(found)
    places = [place for wall in upright for place in wall.corners]
    shot = Shot(_length(found), [*places, *turning], width_mm, height_mm)
    marks = standing(state.panels, _numbers(found), upright, shot)
    return Scene(
        width_mm=width_mm,
        height_mm=height_mm,
        marks=marks + swept(tuple(map(shot.spot, turning))),
        words=CLOSING_WORDS,
    )


def turning_arrow(found: Ring) -> list[Point3D]:
    """Give the way of the last leaf, from the left round the back, above its upper edge."""
    reach, top = TURN_REACH * as_float(found.grid.width), as_float(found.grid.height)
    last = COVER_DEGREES + LEAF_SPREAD_DEGREES + TURN_STOPS_DEGREES
    steps = [180 + (last - 180) * step / TURN_STEPS for step in range(TURN_STEPS + 1)]
    return [Point3D(reach * cos(radians(turn)), reach * sin(radians(turn)), top) for turn in steps]


def fan(state: FoldedState, booklet: Booklet, width_mm: float, height_mm: float) -> Scene:
    """Draw a pleated sheet stood up, its printed side in front, page 1 at the left."""
    upright = fan_walls(state, booklet, FAN_DEGREES)
    length = as_float(booklet.width) * len(booklet.leaves)
    shot = Shot(length, [place for wall in upright for place in wall.corners], width_mm, height_mm)
    numbers = {page.panel: page.number for page in booklet.pages if page.face is Face.PRINTED}
    return Scene(
        width_mm=width_mm,
        height_mm=height_mm,
        marks=standing(state.panels, numbers, upright, shot),
        words=FAN_WORDS,
    )


def _ring(state: FoldedState, column: int | None) -> Ring:
    return ring(state, USUAL_COLUMN if column is None else column)


def _length(found: Ring) -> float:
    return as_float(found.grid.length)


def _numbers(found: Ring) -> dict[int, int]:
    return {panel: number for number, panel in enumerate(found.panels, start=1)}


def _alone(
    state: FoldedState, found: Ring, strips: Strips, size_mm: tuple[float, float], words: Phrase
) -> Scene:
    upright = walls(state, found, strips)
    shot = Shot(_length(found), [place for wall in upright for place in wall.corners], *size_mm)
    width_mm, height_mm = size_mm
    marks = standing(state.panels, _numbers(found), upright, shot)
    return Scene(width_mm=width_mm, height_mm=height_mm, marks=marks, words=words)


def push_arrows(found: Ring, strips: Strips) -> tuple[tuple[Point3D, ...], ...]:
    """Give the outlines of two arrows that push at the ends, half-way up."""
    length, up = _length(found), as_float(found.grid.height) / 2
    head, neck = ARROW_WIDTH * length / 2, ARROW_NECK * length / 2
    arrows = []
    for end, way in ((strips.front[0], -1), (strips.front[-1], 1)):
        tip = abs(end.x) + ARROW_GAP * length
        barb, tail = tip + head, tip + ARROW_LENGTH * length
        profile = [(tip, 0), (barb, head), (barb, neck), (tail, neck)]
        outline = profile + [(x, -z) for x, z in reversed(profile[1:])]
        arrows.append(tuple(Point3D(way * x, 0.0, up + z) for x, z in outline))
    return tuple(arrows)


def standing(
    panels: Sequence[Panel], numbers: Mapping[int, int], upright: Sequence[Wall], shot: Shot
) -> tuple[Mark, ...]:
    """Draw walls from the back to the front, with page numbers and the star where nothing hides them.

    Args:
        panels: of the state.
        numbers: the page on the printed side of each panel, by its index.
        upright: the walls.
        shot: how they are seen.
    """
    marks: list[Mark] = []
    for wall in from_back_to_front(upright, shot.eye.at):
        spots = tuple(map(shot.spot, wall.corners))
        marks = [mark for mark in marks if not _hidden(mark, spots)]
        marks += _wall(panels[wall.panel], numbers[wall.panel], wall, shot)
    return tuple(marks)


def _wall(panel: Panel, number: int, wall: Wall, shot: Shot) -> list[Mark]:
    spots = tuple(map(shot.spot, wall.corners))
    printed = wall.before(shot.eye.at) > 0
    marks: list[Mark] = [Area(spots, Tone.PRINTED_SIDE if printed else Tone.BACK_SIDE)]
    for index, crease in enumerate(panel.edges):
        meaning = Meaning.CUT if crease == CUT else Meaning.FOLDED_EDGE if crease else Meaning.SHEET_EDGE
        marks.append(Stroke((spots[index], spots[index + 1 - len(spots)]), meaning))
    if printed:
        figure = figure_in(_upper(wall, shot), exact(number), LARGEST_NUMBER_MM, SMALLEST_NUMBER_MM)
        marks += [figure] if figure else []
        marks += _star(panel, wall, spots, shot)
    return marks


def _upper(wall: Wall, shot: Shot) -> tuple[Spot, ...]:
    """Give the upper part of a panel, where its number stands."""
    low = NUMBERS_FROM * max(place.z for place in wall.corners)
    return tuple(shot.spot(place._replace(z=max(place.z, low))) for place in wall.corners)


def _star(panel: Panel, wall: Wall, spots: tuple[Spot, ...], shot: Shot) -> list[Mark]:
    """Put the star in the sheet's bottom left corner, as far in as clears the edges; none in a sliver."""
    if Point(ZERO, ZERO) not in panel.corners:
        return []
    own = wall.corners[panel.corners.index(Point(ZERO, ZERO))]
    far = wall.start if hypot(wall.end.x - own.x, wall.end.y - own.y) == 0 else wall.end
    high = max(place.z for place in wall.corners)
    for step in range(1, STAR_STEPS + 1):
        share = step / STAR_STEPS
        along, up = share / 2, share * NUMBERS_FROM * high
        place = Point3D(own.x + along * (far.x - own.x), own.y + along * (far.y - own.y), abs(own.z - up))
        spot = shot.spot(place)
        if min(map(abs, _reaches(spot, spots))) >= STAR_CLEAR * PICTURE_STAR_MM:
            return [Star(spot, PICTURE_STAR_MM)]
    return []


def _reaches(spot: Spot, polygon: tuple[Spot, ...]) -> list[float]:
    """Give the distance of a spot from the line of each edge, positive to its left."""
    return [
        ((end.x - start.x) * (spot.y - start.y) - (end.y - start.y) * (spot.x - start.x))
        / hypot(end.x - start.x, end.y - start.y)
        for start, end in zip(polygon, (*polygon[1:], polygon[0]), strict=True)
    ]


def _hidden(mark: Mark, cover: tuple[Spot, ...]) -> bool:
    """Tell whether a number or star would be covered, in part too."""
    if isinstance(mark, Figure):
        across, up = len(mark.numerator) * DIGIT_WIDTH * mark.size_mm / 2, DIGIT_HEIGHT * mark.size_mm / 2
    elif isinstance(mark, Star):
        across = up = mark.radius_mm
    else:
        return False
    x, y = mark.middle
    around = (Spot(x + dx * across, y + dy * up) for dx in (-1, 0, 1) for dy in (-1, 0, 1))
    return any(_inside(spot, cover) for spot in around)


def _inside(spot: Spot, polygon: tuple[Spot, ...]) -> bool:
    reaches = _reaches(spot, polygon)
    return min(reaches) > 0 or max(reaches) < 0
