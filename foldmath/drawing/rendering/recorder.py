"""A renderer for matplotlib's paths that records ink instead of making a file.

It has the methods of matplotlib's renderers and graphics contexts that ``artist`` calls, without their base
classes, which bring in text layout and widgets: a third of the time in which matplotlib is imported. A font
is its size here, since matplotlib's own reads the list of a machine's fonts first, for 10 ms.
"""

from collections.abc import Sequence
from typing import Any

from matplotlib.path import Path

from foldmath.drawing.look import POINTS_PER_INCH
from foldmath.drawing.rendering.artist import draw, size_inches
from foldmath.drawing.rendering.recording import Digits, Ink, Inked, Recording, Said, recording_of
from foldmath.drawing.scenes import Scene

CAPS = {"butt": 0, "round": 1, "projecting": 2}
JOINS = {"miter": 0, "round": 1, "bevel": 2}
DECIMALS = 3
"""Of a point: a thousandth is finer than any printer."""


class Context:
    """How lines are drawn."""

    def __init__(self) -> None:
        self.dashes: Sequence[float] = ()

    def set_linewidth(self, points: float) -> None:
        """Set how thick they are; 0 for none."""
        self.width = points

    def set_foreground(self, colour: tuple[float, ...], *, isRGBA: bool) -> None:  # noqa: N803
        """Set their colour, a grey."""
        assert isRGBA
        self.grey = colour[0]

    def set_dashes(self, offset: float, points: Sequence[float]) -> None:
        """Set dashes and gaps in turn; the first dash begins where the line does."""
        assert offset == 0
        self.dashes = points

    def set_capstyle(self, style: str) -> None:
        """Set how they end."""
        self.cap = CAPS[style]

    def set_joinstyle(self, style: str) -> None:
        """Set how they bend."""
        self.join = JOINS[style]


class Recorder:
    """Turns what artists draw into path operators of ISO 32000-1, sections 8.4 and 8.5."""

    def __init__(self, width: float, height: float) -> None:
        self.width, self.height = width, height
        self.ink: list[Ink] = []

    def new_gc(self) -> Context:
        """Begin to say how lines are drawn."""
        return Context()

    def flipy(self) -> bool:
        """Tell matplotlib that y points up."""
        return False

    def get_canvas_width_height(self) -> tuple[float, float]:
        """Give the size in points."""
        return self.width, self.height

    def open_group(self, s: str) -> None:
        """Begin ink that stands for words."""
        self.ink.append(Said(s))

    def close_group(self, s: str) -> None:  # noqa: ARG002  matplotlib's signature
        """End ink that stands for words."""
        self.ink.append(Said(""))

    def draw_path(self, gc: Context, path: Path, transform: Any, rgbFace: Any = None) -> None:  # noqa: N803
        """Record a path, filled, stroked, or both."""
        operators = []
        stroked = gc.width > 0
        if stroked:
            operators += [
                f"{_number(gc.width)} w {gc.cap} J {gc.join} j",
                f"{_number(gc.grey)} G",
                f"[{' '.join(map(_number, gc.dashes))}] 0 d",
            ]
        if rgbFace is not None:
            operators.append(f"{_number(rgbFace[0])} g")
        operators += _segments(path, transform)
        operators.append("B" if stroked and rgbFace is not None else "S" if stroked else "f")
        self.ink.append(Inked(" ".join(operators)))

    def draw_text(self, gc: Any, x: float, y: float, s: str, prop: float, *rest: Any, **more: Any) -> None:
        """Record digits; they are upright and plain, so that the rest is not needed."""
        del gc, rest, more
        self.ink.append(Digits(round(x, DECIMALS), round(y, DECIMALS), prop, s))


def _segments(path: Path, transform: Any) -> list[str]:
    operators = []
    x = y = 0.0
    for points, code in path.iter_segments(transform, simplify=False, curves=True):
        numbers = [float(number) for number in points]
        if code == Path.MOVETO:
            operators.append(f"{_number(numbers[0])} {_number(numbers[1])} m")
        elif code == Path.LINETO:
            operators.append(f"{_number(numbers[0])} {_number(numbers[1])} l")
        elif code == Path.CURVE3:
            cx, cy, end_x, end_y = numbers
            control = (
                x + (cx - x) * 2 / 3,
                y + (cy - y) * 2 / 3,
                end_x + (cx - end_x) * 2 / 3,
                end_y + (cy - end_y) * 2 / 3,
            )
            operators.append(" ".join(_number(number) for number in (*control, end_x, end_y)) + " c")
        elif code == Path.CURVE4:
            operators.append(" ".join(_number(number) for number in numbers) + " c")
        elif code == Path.CLOSEPOLY:
            operators.append("h")
            continue
        x, y = numbers[-2:]
    return operators


def _number(value: float) -> str:
    text = f"{value:.{DECIMALS}f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def record(scene: Scene) -> Recording:
    """Draw a scene once and give its ink."""
    width, height = size_inches(scene)
    recorder = Recorder(width * POINTS_PER_INCH, height * POINTS_PER_INCH)
    draw(scene, recorder, font=float)
    return recording_of(recorder.width, recorder.height, tuple(recorder.ink), scene.words)
