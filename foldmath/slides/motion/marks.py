"""Marks as SVG writes them: line styles, layers that peep out, stars, and a gathering's moments."""

from collections.abc import Mapping

from foldmath.drawing.look import INK, PENS, Pen, on_screen
from foldmath.drawing.scenes import Meaning, Spot
from foldmath.drawing.stars import SLIDE_STAR_MM, star_outline
from foldmath.slides.motion.flaps import Flap
from foldmath.slides.motion.gathering_motion import GatherMotion
from foldmath.slides.motion.paths import loops, mm

LINES = {
    "whole": PENS[Meaning.WHOLE],
    "paper": PENS[Meaning.SHEET_EDGE],
    "edge": PENS[Meaning.SHEET_EDGE],
    "outline": PENS[Meaning.OUTLINE],
    "under": PENS[Meaning.CREASE],
    "sample .old": PENS[Meaning.CREASE],
    "standing .old": PENS[Meaning.CREASE],
    "valley": PENS[Meaning.VALLEY],
    "mountain": PENS[Meaning.MOUNTAIN],
    "cut": PENS[Meaning.CUT],
    "planned": PENS[Meaning.GRID],
    "grid": PENS[Meaning.GRID],
    "leader": PENS[Meaning.CREASE],
    "hatch": PENS[Meaning.HATCH],
    "arrow": PENS[Meaning.ARROW],
    "arrow.behind": PENS[Meaning.ARROW_BEHIND],
    "star.hollow": INK,
}
"""What each class of lines is drawn with; layers that peep out are as thin as old creases.

How thick an old crease is stands with each leaf, since it depends on how small the panels are.
"""

TO_COME = {
    "crease-to-come": PENS[Meaning.CREASE_TO_COME],
    "snapped .crease-to-come": PENS[Meaning.VALLEY],
    "flap-over": PENS[Meaning.FLAP_OVER],
    "flap-behind": PENS[Meaning.FLAP_BEHIND],
}
"""The same for a fold that a hand still holds, which is a fold only when it snaps; no slide shows one."""

PEEP_MM = 0.53
"""How far each layer peeps out from under the one above it: all of them stay within the picture's margin."""

MOST_EDGES_PEEPING = 6
"""More layers than this are not told apart by eye at the edge of a stack."""


def line_styles(lines: Mapping[str, Pen] = LINES) -> str:
    """Write how thick the lines of each class are, and how dashed, as CSS, in mm of their picture."""
    return "".join(f".{name} {{{_style(on_screen(pen))}}}\n" for name, pen in lines.items())


def _style(pen: Pen) -> str:
    style = f"stroke-width: {mm(pen.width_mm)}px;"
    if pen.dashes_mm:
        style += f" stroke-dasharray: {' '.join(f'{mm(dash)}px' for dash in pen.dashes_mm)};"
    return style


def peeping(flap: Flap, half: int) -> list[tuple[int, str]]:
    """Give how far below a flap each layer that peeps out is, and its outline, the lowest first."""
    outlines = flap.faces[half].outlines
    return [
        (below, loops([Spot(x + below * PEEP_MM, y + below * PEEP_MM) for x, y in each] for each in outlines))
        for below in range(min(flap.layers - 1, MOST_EDGES_PEEPING), 0, -1)
    ]


def star_points(middle: Spot, radius: float = SLIDE_STAR_MM) -> tuple[Spot, ...]:
    """Give the corners of a star that points up, heights counted from the top."""
    return tuple(Spot(x, 2 * middle.y - y) for x, y in star_outline(middle, radius))


def star_at(x: float, y: float, radius: float = SLIDE_STAR_MM) -> tuple[Spot, ...]:
    """Give the corners of a star by its middle, counted from the top left."""
    return star_points(Spot(x, y), radius)


def corners_of_moments(motion: GatherMotion) -> str:
    """Write all moments of a gathering: the order of painting, then corners in hundredths of a mm."""
    written = []
    for moment in motion.moments:
        corners = (f"{round(100 * x)} {round(100 * y)}" for corners in moment.corners for x, y in corners)
        written.append(f"{' '.join(map(str, moment.order))}|{' '.join(corners)}")
    return ";".join(written)
