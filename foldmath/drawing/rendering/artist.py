"""The one renderer: draws a scene with matplotlib, on a renderer of any of its backends.

Marks go straight onto the renderer, so that a picture costs no figure, no axes and no text layout, nor the
time to import them.
"""

from collections.abc import Callable
from typing import Any, assert_never

from matplotlib.path import Path
from matplotlib.transforms import IdentityTransform

from foldmath.drawing import look
from foldmath.drawing.circles import circle
from foldmath.drawing.look import MM_PER_INCH, POINTS_PER_INCH, Pen
from foldmath.drawing.rendering.hatching import hatch_lines
from foldmath.drawing.scenes import Area, Figure, Hatching, Meaning, Scene, Spot, Star, Stroke, Tone
from foldmath.drawing.stars import star_outline

POINTS_PER_MM = POINTS_PER_INCH / MM_PER_INCH
STAR_GROUND = 1.15
"""The radius of the white ground under a star, as a share of the star's."""

STAR_GROUND_CORNERS = 24


def size_inches(scene: Scene) -> tuple[float, float]:
    """Give the width and the height of a scene."""
    return scene.width_mm / MM_PER_INCH, scene.height_mm / MM_PER_INCH


def draw(
    scene: Scene, renderer: Any, font: Callable[[float], Any], units_per_inch: float = POINTS_PER_INCH
) -> None:
    """Draw every mark of a scene, from the back to the front.

    Args:
        scene: the picture.
        renderer: any matplotlib renderer.
        font: gives the renderer's font of digits, of a size in points.
        units_per_inch: of the renderer; points, if nothing is said.
    """
    ink = _Ink(renderer, font, units_per_inch / MM_PER_INCH, scene.weight)
    for mark in scene.marks:
        match mark:
            case Stroke():
                ink.line(mark)
            case Area():
                ink.fill(mark.spots, look.TONES[mark.tone])
            case Hatching():
                lines = hatch_lines(mark.spots, mark.lean, scene.hatch_pitch_mm)
                ink.lines(lines, look.PENS[Meaning.HATCH])
            case Figure():
                ink.figure(mark)
            case Star():
                ink.star(mark)
            case _:
                assert_never(mark)


class _Ink:
    """Draws lines, areas and digits on a matplotlib renderer.

    Args:
        renderer: any matplotlib renderer.
        font: gives its font of digits, of a size in points.
        scale: the renderer's units for one mm.
        weight: how many times thicker than usual the lines are.
    """

    def __init__(self, renderer: Any, font: Callable[[float], Any], scale: float, weight: float) -> None:
        self.renderer = renderer
        self.font = font
        self.weight = weight
        self.scale = scale
        self.identity = IdentityTransform()

    def _context(self, pen: Pen) -> Any:
        context = self.renderer.new_gc()
        context.set_linewidth(pen.width_mm * POINTS_PER_MM * self.weight)
        context.set_foreground((pen.grey, pen.grey, pen.grey, 1.0), isRGBA=True)
        if pen.dashes_mm:
            context.set_dashes(0, [length * POINTS_PER_MM for length in pen.dashes_mm])
        context.set_capstyle("round" if pen.round_ends else "butt")
        context.set_joinstyle("round" if pen.round_ends else "miter")
        return context

    def _points(self, spots: tuple[Spot, ...]) -> list[tuple[float, float]]:
        return [(x * self.scale, y * self.scale) for x, y in spots]

    def _draw(self, path: Path, pen: Pen, fill: float | None = None) -> None:
        face = None if fill is None else (fill, fill, fill, 1.0)
        self.renderer.draw_path(self._context(pen), path, self.identity, face)

    def line(self, stroke: Stroke) -> None:
        points = self._points(stroke.spots)
        if stroke.bends:
            path = Path(points, [Path.MOVETO, Path.CURVE3, Path.CURVE3])
        elif stroke.closed:
            path = Path([*points, points[0]], closed=True)
        else:
            path = Path(points)
        self._draw(path, look.PENS[stroke.meaning])

    def lines(self, pairs: list[tuple[Spot, Spot]], pen: Pen) -> None:
        if pairs:
            points = [point for pair in pairs for point in self._points(pair)]
            self._draw(Path(points, [Path.MOVETO, Path.LINETO] * len(pairs)), pen)

    def fill(self, spots: tuple[Spot, ...], tone: float) -> None:
        points = self._points(spots)
        self._draw(Path([*points, points[0]], closed=True), Pen(0.0), tone)

    def star(self, star: Star) -> None:
        """Draw a star on a white ground, so that it stays clear of hatches and edges."""
        self.fill(circle(star.middle, STAR_GROUND * star.radius_mm, STAR_GROUND_CORNERS), 1.0)
        points = self._points(star_outline(star.middle, star.radius_mm))
        tone = look.TONES[Tone.PRINTED_SIDE if star.hollow else Tone.INK]
        self._draw(Path([*points, points[0]], closed=True), look.INK, tone)

    def figure(self, figure: Figure) -> None:
        """Set a number: digits alone, or digits, a bar, and digits."""
        x, y = figure.middle
        em = figure.size_mm
        said = f"{figure.numerator}/{figure.denominator}" if figure.denominator else figure.numerator
        self.renderer.open_group(said)
        if not figure.denominator:
            self._digits(figure.numerator, x, y - em * look.DIGIT_HEIGHT / 2, em)
        else:
            widest = max(len(figure.numerator), len(figure.denominator)) * look.DIGIT_WIDTH * em
            half = widest / 2 + look.BAR_OVERHANG * em
            self._digits(figure.numerator, x, y + look.FIGURE_GAP * em, em)
            self.lines([(Spot(x - half, y), Spot(x + half, y))], Pen(look.BAR_WIDTH * em))
            self._digits(figure.denominator, x, y - (look.FIGURE_GAP + look.DIGIT_HEIGHT) * em, em)
        self.renderer.close_group(said)

    def _digits(self, digits: str, middle: float, baseline: float, em: float) -> None:
        """Set digits about a middle."""
        left = middle - len(digits) * look.DIGIT_WIDTH * em / 2
        font = self.font(em * POINTS_PER_MM)
        height = self.renderer.get_canvas_width_height()[1] if self.renderer.flipy() else 0
        up = baseline * self.scale
        self.renderer.draw_text(
            self._context(look.INK), left * self.scale, height - up if height else up, digits, font, 0
        )
