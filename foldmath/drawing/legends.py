"""Samples of line styles for the legend of a page."""

from foldmath.drawing.scenes import Meaning, Scene, Spot, Stroke
from foldmath.phrases import phrase

SAMPLE_MM = (12.0, 4.0)

SAMPLES = {
    "valley": Meaning.VALLEY,
    "mountain": Meaning.MOUNTAIN,
    "crease": Meaning.CREASE,
    "cut": Meaning.CUT,
}

SEEN_AS = {
    "valley": phrase("A dashed line."),
    "mountain": phrase("A dash-dot line."),
    "crease": phrase("A thin line."),
    "cut": phrase("A thick line."),
}
"""What each sample looks like; what it stands for is said beside it."""


def legend_sample(name: str) -> Scene:
    """Draw one line of a style, by the name that templates use."""
    width, height = SAMPLE_MM
    return Scene(width_mm=width, height_mm=height, marks=(sample_line(name),), words=SEEN_AS[name])


def sample_line(name: str) -> Stroke:
    """Give the line alone, across the middle of its picture."""
    width, height = SAMPLE_MM
    return Stroke((Spot(0, height / 2), Spot(width, height / 2)), SAMPLES[name])
