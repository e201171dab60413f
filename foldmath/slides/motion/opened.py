"""The opened sheet, printed side up: its creases by kind, and a fraction in or beside each panel."""

from collections.abc import Callable, Iterable, Iterator

from foldmath.drawing.layout import View, figure_in, middle, reach
from foldmath.drawing.scenes import Figure, Spot
from foldmath.drawing.sheets.crease_runs import crease_runs
from foldmath.drawing.stars import SLIDE_STAR_MM, star_outline
from foldmath.paper.moments.moment import Moment
from foldmath.paper.state import FoldedState, Kind
from foldmath.plane.lines import Point
from foldmath.plane.numbers import Exact, denominator, numerator
from foldmath.slides.motion.stars import holds_star
from foldmath.statements.ratios import LARGEST_DENOMINATOR
from foldmath.values import frozen

LARGEST_FIGURE_MM, SMALLEST_FIGURE_MM = 7.0, 3.4
"""The em of a fraction in a panel; one too small for the back row to read stands beside the sheet."""

BESIDE_MM, LABEL_MM = 9.0, 4.2
"""The room at the right for fractions beside the sheet, and their em."""

LABEL_PITCH_MM = 9.5
"""From one fraction beside the sheet to the next: its height and a little air."""

EVEN_MM = 0.1
"""Panels whose middle is no farther left than this have their fraction at the right, beside the words."""

MOST_LEADERS = 6
"""From more panels of one size than this, one line leads to their fraction: more would be a thicket."""

Lines = tuple[tuple[Spot, Spot], ...]


@frozen
class Creases:
    """The lines on an opened sheet, each as long as it runs straight on in one kind."""

    valley: Lines
    mountain: Lines
    cut: Lines


@frozen
class Beside:
    """A fraction beside the sheet, for want of room, and the lines that lead to it from its panels."""

    figure: Figure
    lines: Lines


@frozen(kw_only=True)
class OpenedPicture:
    """The opened sheet, in mm from the picture's top left.

    Args:
        outline: the sheet.
        creases: its lines.
        figures: the fraction of each panel that has room for it, as large as it fits.
        beside: the fractions of the others, one for each size, from the top.
        star: the corners of the star at the bottom left.
    """

    outline: tuple[Spot, ...]
    creases: Creases
    figures: tuple[Figure, ...]
    beside: tuple[Beside, ...]
    star: tuple[Spot, ...]


def opened_picture(moment: Moment, view: View, star: Point) -> OpenedPicture:
    """Draw the opened sheet after a step.

    Args:
        moment: the step.
        view: of the sheet's own plane.
        star: where the star is on the sheet.
    """
    state = moment.after
    panels = tuple(view.spots(panel.corners) for panel in state.panels)
    figures: list[Figure] = []
    small: dict[Exact, list[Spot]] = {}
    for spots, panel in zip(panels, state.panels, strict=True):
        if panel.shadings or denominator(panel.area) > LARGEST_DENOMINATOR:
            continue  # A hatch, or a size that no class can say.
        figure = _figure_in(spots, panel.area)
        if figure and holds_star(panel, star) and _touches(figure, view.spot(star)):
            found = (_figure_in(part, panel.area) for part in _clear_of_star(spots, view.spot(star)))
            figure = max(filter(None, found), key=lambda one: one.size_mm, default=None)
        if figure:
            figures.append(figure)
        else:
            small.setdefault(panel.area, []).append(middle(spots))
    return OpenedPicture(
        outline=_down(view.spots(state.sheet.outline), view),
        creases=_creases(state, view),
        figures=tuple(
            Figure(_down((figure.middle,), view)[0], figure.numerator, figure.denominator, figure.size_mm)
            for figure in figures
        ),
        beside=tuple(_beside(small, view)),
        star=_down(star_outline(view.spot(star), SLIDE_STAR_MM), view),
    )


def _figure_in(spots: tuple[Spot, ...], area: Exact) -> Figure | None:
    return figure_in(spots, area, LARGEST_FIGURE_MM, SMALLEST_FIGURE_MM)


def _touches(figure: Figure, star: Spot) -> bool:
    across, up = reach(figure)
    apart_x, apart_y = abs(figure.middle.x - star.x), abs(figure.middle.y - star.y)
    return apart_x < across + SLIDE_STAR_MM and apart_y < up + SLIDE_STAR_MM


def _clear_of_star(spots: tuple[Spot, ...], star: Spot) -> list[tuple[Spot, ...]]:
    """Give the parts of a panel to the right of the star and above it, as far as there are any."""
    right = _cut(spots, lambda spot: spot.x - star.x - SLIDE_STAR_MM)
    above = _cut(spots, lambda spot: spot.y - star.y - SLIDE_STAR_MM)
    return [part for part in (right, above) if len(part) > 2]


def _cut(spots: tuple[Spot, ...], side: Callable[[Spot], float]) -> tuple[Spot, ...]:
    """Keep the part of a convex polygon where ``side`` is positive."""
    kept = []
    for before, spot in zip((spots[-1], *spots[:-1]), spots, strict=True):
        was, is_now = side(before), side(spot)
        if (was > 0) is not (is_now > 0):
            share = was / (was - is_now)
            kept.append(Spot(before.x + share * (spot.x - before.x), before.y + share * (spot.y - before.y)))
        if is_now > 0:
            kept.append(spot)
    return tuple(kept)


def _beside(small: dict[Exact, list[Spot]], view: View) -> Iterator[Beside]:
    """Set the fractions one under the other, each as near as can be to the height of its panels."""
    half = view.width_mm / 2 - EVEN_MM
    for left in (True, False):
        side = {
            area: middles
            for area, middles in small.items()
            if (sum(spot.x for spot in middles) < half * len(middles)) is left
        }
        yield from _one_side(side, left, view)


def _one_side(small: dict[Exact, list[Spot]], left: bool, view: View) -> Iterator[Beside]:
    x = -BESIDE_MM / 2 if left else view.width_mm + BESIDE_MM / 2
    least = LABEL_PITCH_MM / 2
    placed = [(sum(spot.y for spot in middles) / len(middles), area) for area, middles in small.items()]
    for height, area in sorted((view.height_mm - y, area) for y, area in placed):
        y = max(least, height)
        least = y + LABEL_PITCH_MM
        middles = _down(small[area], view)
        if len(middles) > MOST_LEADERS:
            middles = (min(middles) if left else max(middles),)
        end = Spot(x + LABEL_MM if left else x - LABEL_MM, y)
        figure = Figure(Spot(x, y), str(numerator(area)), str(denominator(area)), LABEL_MM)
        yield Beside(figure, tuple((middle, end) for middle in middles))


def _creases(state: FoldedState, view: View) -> Creases:
    runs: dict[Kind, list[tuple[Point, Point]]] = {kind: [] for kind in Kind}
    for crease in state.creases:
        runs[crease.kind].append((crease.start, crease.end))
    valley, mountain, cut = (
        tuple(_line_down(run, view) for run in crease_runs(runs[kind]))
        for kind in (Kind.VALLEY, Kind.MOUNTAIN, Kind.CUT)
    )
    return Creases(valley, mountain, cut)


def _line_down(run: tuple[Point, Point], view: View) -> tuple[Spot, Spot]:
    start, end = _down(view.spots(run), view)
    return start, end


def _down(spots: Iterable[Spot], view: View) -> tuple[Spot, ...]:
    """Count heights from the top, as SVG does."""
    return tuple(Spot(x, view.height_mm - y) for x, y in spots)
