"""A scene as SVG inside a page: takes a scene, gives the element, its lines classed by what they mean.

No colours stand in it: the page's style sheet has them, for light, dark and forced colours. Pictures to be
printed or kept are drawn by matplotlib; this one costs a millisecond.
"""

from collections.abc import Iterable
from typing import assert_never

from markupsafe import Markup

from foldmath.drawing.look import (
    BAR_OVERHANG,
    BAR_WIDTH,
    DIGIT_HEIGHT,
    DIGIT_WIDTH,
    FIGURE_GAP,
    PENS,
    on_screen,
)
from foldmath.drawing.rendering.hatching import hatch_lines
from foldmath.drawing.scenes import Area, Figure, Hatching, Mark, Meaning, Scene, Spot, Star, Stroke, Tone
from foldmath.drawing.stars import star_outline
from foldmath.words.saying import say

TONES = {Tone.PRINTED_SIDE: "printed", Tone.BACK_SIDE: "back", Tone.INK: "ink"}


def svg(scene: Scene, language: str) -> Markup:
    """Write a scene, of any size that the page gives it; it says its words to who cannot see it."""
    down = [_drawn(mark, scene) for mark in scene.marks]
    width, height = _mm(scene.width_mm), _mm(scene.height_mm)
    return Markup('<svg class="picture" role="img" viewBox="0 0 {} {}" aria-label="{}">{}</svg>').format(
        width, height, say(scene.words, language), Markup("").join(down)
    )


def _drawn(mark: Mark, scene: Scene) -> Markup:
    high = scene.height_mm
    match mark:
        case Stroke():
            return _stroke(mark, high)
        case Area():
            return _polygon(f"area {TONES[mark.tone]}", mark.spots, high)
        case Hatching():
            lines = hatch_lines(mark.spots, mark.lean, scene.hatch_pitch_mm)
            joined = "".join(_line(line, high) for line in lines)
            return Markup('<path class="{}" {} d="{}"/>').format(
                _class(Meaning.HATCH), _pen(Meaning.HATCH), joined
            )
        case Figure():
            return _figure(mark, high)
        case Star():
            name = "star hollow" if mark.hollow else "star"
            return _polygon(name, star_outline(mark.middle, mark.radius_mm), high)
        case _:
            assert_never(mark)


def _stroke(stroke: Stroke, high: float) -> Markup:
    first, *rest = (_spot(spot, high) for spot in stroke.spots)
    path = f"M{first}{'Q' if stroke.bends else 'L'}{' '.join(rest)}{'Z' if stroke.closed else ''}"
    return Markup('<path class="{}" {} d="{}"/>').format(_class(stroke.meaning), _pen(stroke.meaning), path)


def _pen(meaning: Meaning) -> Markup:
    pen = on_screen(PENS[meaning])
    dashes = " ".join(map(_mm, pen.dashes_mm))
    dashed = Markup(' stroke-dasharray="{}"').format(dashes) if dashes else ""
    return Markup('stroke-width="{}"{}').format(_mm(pen.width_mm), dashed)


def _figure(figure: Figure, high: float) -> Markup:
    """Set a number, stacked where it is a fraction, as wide as the pages set it."""
    x, y, size = figure.middle.x, high - figure.middle.y, figure.size_mm
    if not figure.denominator:
        return _digits(figure.numerator, x, y + size * DIGIT_HEIGHT / 2, size)
    half = size * (max(len(figure.numerator), len(figure.denominator)) * DIGIT_WIDTH / 2 + BAR_OVERHANG)
    bar = Markup('<path class="bar" stroke-width="{}" d="M{} {}H{}"/>').format(
        _mm(size * BAR_WIDTH), _mm(x - half), _mm(y), _mm(x + half)
    )
    above = _digits(figure.numerator, x, y - size * FIGURE_GAP, size)
    return above + bar + _digits(figure.denominator, x, y + size * (FIGURE_GAP + DIGIT_HEIGHT), size)


def _digits(digits: str, x: float, y: float, size: float) -> Markup:
    return Markup('<text x="{}" y="{}" font-size="{}" text-anchor="middle">{}</text>').format(
        _mm(x), _mm(y), _mm(size), digits
    )


def _polygon(name: str, spots: Iterable[Spot], high: float) -> Markup:
    return Markup('<polygon class="{}" points="{}"/>').format(
        name, " ".join(_spot(spot, high) for spot in spots)
    )


def _line(line: tuple[Spot, Spot], high: float) -> str:
    return f"M{_spot(line[0], high)}L{_spot(line[1], high)}"


def _class(meaning: Meaning) -> str:
    return meaning.value.replace(" ", "-")


def _spot(spot: Spot, high: float) -> str:
    """Count heights from the top, as SVG does."""
    return f"{_mm(spot.x)},{_mm(high - spot.y)}"


def _mm(number: float) -> str:
    return f"{number:.2f}".rstrip("0").rstrip(".")
