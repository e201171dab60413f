"""Pages from motions: how a panel that is read in its place becomes an upright page."""

from collections.abc import Sequence
from typing import NamedTuple

from foldmath.paper.booklet.booklet import Face, Page, WayUp
from foldmath.paper.state import Panel
from foldmath.plane.lines import Point
from foldmath.plane.motions import Motion, shift
from foldmath.plane.numbers import ONE, ZERO
from foldmath.plane.polygons import Box, box


class Read(NamedTuple):
    """A panel as it is read: its index, and the motion from the opened sheet to where the reader sees it."""

    panel: int
    motion: Motion


_WAYS = {
    (ZERO, ONE): WayUp.UPRIGHT,
    (ZERO, -ONE): WayUp.UPSIDE_DOWN,
    (-ONE, ZERO): WayUp.LEFT,
    (ONE, ZERO): WayUp.RIGHT,
}


def landed(panel: Panel, motion: Motion) -> Box:
    """Give the box that a panel lies in after a motion from the opened sheet."""
    return box(tuple(motion.carry(corner) for corner in panel.corners))


def pages(reading: Sequence[Read], panels: Sequence[Panel]) -> tuple[Page, ...]:
    """Number panels as they are read, and put each page's bottom left corner at (0, 0)."""
    return tuple(_page(number, read, panels[read.panel]) for number, read in enumerate(reading, start=1))


def _page(number: int, read: Read, panel: Panel) -> Page:
    seen = landed(panel, read.motion)
    motion = read.motion.then(shift(-seen.left, -seen.bottom))
    face = Face.PRINTED if motion.upright else Face.BACK
    return Page(number=number, panel=read.panel, face=face, way_up=_WAYS[_top(motion)], motion=motion)


def _top(motion: Motion) -> Point:
    """Give the direction on the opened sheet that the motion turns upwards: the gradient of the new y."""
    return Point(motion.s, motion.c if motion.upright else -motion.c)
