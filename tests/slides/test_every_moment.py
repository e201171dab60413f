"""At fifty moments of every motion of every lesson, all that is drawn lies where its panel lies.

Where a panel lies is worked out here another way: in space, by the rotation about an axis through an angle
(O. Rodrigues, 1840), then seen from one eye above the middle of the picture (central perspective).
"""

import math
from itertools import pairwise

import pytest
from slides.moving_pieces import turns_over
from svg_paths import corners_of

from foldmath.paper.folding.folding import Turn
from foldmath.paper.state import CUT
from foldmath.plane.numbers import denominator, numerator
from foldmath.slides.motion.stages import Cutting, Spinning, stages_of_lesson
from foldmath.slides.motion.stars import star_of
from foldmath.slides.slides import StepSlide

MOMENTS = 50
EYE_MM = 240
"""Above the table; the script has the same figure."""

NEAR_MM = 0.03
"""Paths are written to a hundredth of a mm, and the paper's own place to a thousandth."""

DRAWN = """(times) => times.map((time) => {
    const picture = here().querySelector('.motion');
    showMovement(picture, time);
    const shown = (part) => part === picture
        || (getComputedStyle(part).display !== 'none' && shown(part.parentElement));
    const marks = (selector) => [...picture.querySelectorAll(selector)].filter(shown)
        .map((path) => path.getAttribute('d'));
    const stack = picture.querySelector('.stage:not(.waiting) .flaps');
    const spin = stack.transform.baseVal.numberOfItems ? stack.transform.baseVal[0].matrix : null;
    return {
        paper: marks('.face > .paper'), old: marks('.face > .old'), cut: marks('.face > .cut'),
        star: marks('.face > .star'), running: marks('.stage > .cut'),
        spin: spin && [spin.a, spin.b, spin.c, spin.d, spin.e, spin.f],
    };
})"""


def number(exact):
    return numerator(exact) / denominator(exact)


class Seen:
    """Where the model's points are seen while one stage goes on."""

    def __init__(self, slide, moment, stage):
        self.stage = stage
        whole, drawn = moment.before.whole, slide.picture.before.whole
        across = [(number(p.x), number(p.y)) for p in whole]
        width = math.dist(across[0], across[1])
        self.scale = math.dist(drawn[0], drawn[1]) / width
        self.left = drawn[0].x - across[0][0] * self.scale
        self.down = drawn[0].y + across[0][1] * self.scale
        self.eye = (slide.picture.width / 2, slide.picture.height / 2, EYE_MM)
        self.axis = [] if isinstance(stage, Spinning | Cutting) else [number(part) for part in stage.axis]
        self.begun = {}

    def flat(self, point):
        """Give a point of the table in mm, y upwards from the picture's own zero."""
        return (self.left + number(point.x) * self.scale, self.down - number(point.y) * self.scale)

    def before(self, piece, point):
        """Give where a point of the sheet lies as the stage begins, worked out once for all moments."""
        motion = piece.start.motion
        if (motion, point) not in self.begun:
            self.begun[motion, point] = self.flat(motion.carry(point))
        return self.begun[motion, point]

    def at(self, piece, point, share):
        """Give where a point of the sheet is seen, when a share of the stage is done."""
        x, y = self.before(piece, point)
        if isinstance(self.stage, Spinning):
            cx, cy = self.flat(self.stage.centre)
            angle = share * math.pi / 2 * (-1 if self.stage.left else 1)
            cos, sin = math.cos(angle), math.sin(angle)
            return (cx + cos * (x - cx) - sin * (y - cy), cy + sin * (x - cx) + cos * (y - cy))
        if isinstance(self.stage, Cutting) or not turns_over(piece):
            return (x, y)
        return self.projected(self.rotated((x, y, 0.0), share * math.pi))

    def rotated(self, place, angle):
        """Turn a place about the stage's axis: v cos + (k × v) sin + k (k · v)(1 - cos)."""
        a, b, c = self.axis
        size = math.hypot(a, b)
        foot = (self.left - a * c / size**2 * self.scale, self.down + b * c / size**2 * self.scale, 0.0)
        k = (b / size, a / size, 0.0)
        moving = (a / size, -b / size, 0.0)
        lift = k[0] * moving[1] - k[1] * moving[0]
        if (lift > 0) is not (self.stage.turn is Turn.OVER):
            angle = -angle
        v = tuple(one - other for one, other in zip(place, foot, strict=True))
        cross = (k[1] * v[2] - k[2] * v[1], k[2] * v[0] - k[0] * v[2], k[0] * v[1] - k[1] * v[0])
        dot = sum(one * other for one, other in zip(k, v, strict=True))
        cos, sin = math.cos(angle), math.sin(angle)
        return tuple(
            f + one * cos + two * sin + axis * dot * (1 - cos)
            for f, one, two, axis in zip(foot, v, cross, k, strict=True)
        )

    def projected(self, place):
        x, y, z = place
        cx, cy, eye = self.eye
        nearer = eye / (eye - z)
        return (cx + (x - cx) * nearer, cy + (y - cy) * nearer)


def points(path, spin):
    """Read the corners of a path, loop by loop, turned with the group that it is in."""
    a, b, c, d, e, f = spin or (1, 0, 0, 1, 0, 0)
    return [[(a * x + c * y + e, b * x + d * y + f) for x, y in loop] for loop in corners_of(path)]


def from_line(spot, start, end):
    """Give how far a spot is from a stretch of line."""
    (x, y), (sx, sy), (ex, ey) = spot, start, end
    length = math.dist(start, end)
    if length < 1e-9:
        return math.dist(spot, start)
    share = ((x - sx) * (ex - sx) + (y - sy) * (ey - sy)) / length**2
    share = min(1.0, max(0.0, share))
    return math.dist(spot, (sx + share * (ex - sx), sy + share * (ey - sy)))


@pytest.mark.sweep("sail-cloth", "cut")
def test_paper_creases_cut_and_star_lie_where_their_panels_lie(shown, folded):
    show = shown(folded)
    stages = stages_of_lesson(folded)
    star = star_of(folded.states[-1])
    for place, slide in enumerate(show.slides, start=1):
        if isinstance(slide, StepSlide) and stages[slide.number - 1]:
            show.go(place, 1)
            complaints = list(
                strays(show, slide, folded.moments[slide.number - 1], stages[slide.number - 1], star)
            )
            assert complaints == []


def strays(show, slide, moment, stages, star):
    """Give every mark that is not where its panel is, at moments spread over all stages."""
    seen = [Seen(slide, moment, stage) for stage in stages]
    # Not quite at the ends, where the paper lies and other pictures show it; never edge on.
    times = [len(stages) * (count + 0.5) / MOMENTS for count in range(MOMENTS)]
    for time, drawn in zip(times, show.page.evaluate(DRAWN, times), strict=True):
        index = int(time)
        yield from strays_at(drawn, seen[index], stages[index], time - index, star)


def faces_missing(drawn, stage):
    """Every stack shows one side of its paper at every moment."""
    return len(drawn["paper"]) < (2 if len({turns_over(piece) for piece in stage.pieces}) > 1 else 1)


def strays_at(drawn, seen, stage, share, star):
    corners, inner, cuts = places_of(seen, stage, share)
    if faces_missing(drawn, stage):
        yield share, "paper missing"
    for loop in loops(drawn, "paper"):
        for spot in loop:
            if min(math.dist(spot, corner) for corner in corners) > NEAR_MM:
                yield share, "paper", spot
    for kind, edges in (("old", inner), ("cut", cuts)):
        for spot in along(loops(drawn, kind)):
            if min(from_line(spot, *edge) for edge in edges) > NEAR_MM:
                yield share, kind, spot
    yield from stray_stars(drawn, seen, stage, share, star)
    yield from stray_scissors(drawn, seen, stage, share)


def loops(drawn, kind):
    return [loop for path in drawn[kind] for loop in points(path, drawn["spin"])]


def along(lines):
    """Give spots along lines: if all of them lie on edges, so do the lines."""
    for (x, y), (end_x, end_y) in lines:
        for part in (0.0, 0.31, 0.5, 0.77, 1.0):
            yield x + part * (end_x - x), y + part * (end_y - y)


def stray_scissors(drawn, seen, stage, share):
    """The cut has run as far along its line as the time has."""
    if isinstance(stage, Cutting):
        ((start, end),) = points(drawn["running"][0], None)
        first, last = seen.flat(stage.start), seen.flat(stage.end)
        if math.dist(first, start) > NEAR_MM:
            first, last = last, first
        wanted = tuple(one + share * (two - one) for one, two in zip(first, last, strict=True))
        if math.dist(end, wanted) > NEAR_MM or math.dist(first, start) > NEAR_MM:
            yield share, "running cut", end


def places_of(seen, stage, share):
    """Give where all corners are, and all edges that are flat inside the paper: old creases, and cuts."""
    corners, inner, cuts = [], [], []
    for piece in stage.pieces:
        ring = [seen.at(piece, corner, share) for corner in piece.panel.corners]
        corners += ring
        for start, end, crease in zip(ring, (*ring[1:], ring[0]), piece.panel.edges, strict=True):
            if crease:
                (cuts if crease == CUT else inner).append((start, end))
    return corners, inner, cuts


def stray_stars(drawn, seen, stage, share, star):
    """The star is drawn once at most, on its own panel, and where that shows its printed side on top."""
    (piece,) = [piece for piece in stage.pieces if holds(piece.panel, star)]
    lies = piece.end if share > 0.5 else piece.start
    place = seen.at(piece, star, share)
    tops = loops(drawn, "star")
    if len(tops) > 1 or (tops and not lies.printed_side_up):
        yield share, "star shown", len(tops)
    for loop in tops:
        middle = (sum(x for x, _ in loop) / len(loop), sum(y for _, y in loop) / len(loop))
        if math.dist(middle, place) > 0.1:
            yield share, "star", middle, place
    alike = [
        other
        for other in stage.pieces
        if near_all(
            [seen.at(other, corner, 0) for corner in other.panel.corners],
            [seen.at(piece, corner, 0) for corner in piece.panel.corners],
        )
        and turns_over(other) is turns_over(piece)
    ]
    top = max(alike, key=lambda other: (other.end if share > 0.5 else other.start).place)
    if top is piece and lies.printed_side_up and not tops:
        yield share, "star missing", place


def holds(panel, star):
    (x, y) = star
    return all(
        (end.x - start.x) * (y - start.y) - (end.y - start.y) * (x - start.x) > 0
        for start, end in pairwise((*panel.corners, panel.corners[0]))
    )


def near_all(some, others):
    return all(min(math.dist(one, other) for other in others) < NEAR_MM for one in some)
