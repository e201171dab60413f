"""At fifty moments of every gathering, panels, creases, cuts and stars are where the standing sheet has them.

How the panels stand is the model's (tests/drawing/test_gathering.py: nothing bends, no hinge parts). Where
they are seen is worked out here another way: by a pinhole camera with its own three directions.
"""

import math
from itertools import chain, pairwise

import pytest
from conftest import LESSONS
from lessons_in_words import EIGHTHS, TWELVE_PAGES, proved

from foldmath.booklets.folding_steps import Shows, gathering_steps
from foldmath.drawing.booklets.gathering import leaves_at, met, pushed, walls
from foldmath.drawing.booklets.gathering_pictures import COVER_DEGREES, LEAF_SPREAD_DEGREES, PUSHES
from foldmath.drawing.booklets.shots import EYE_ABOVE, EYE_ASIDE, EYE_AWAY
from foldmath.making import proved_lesson
from foldmath.measured import as_float
from foldmath.paper.booklet.ring import USUAL_COLUMN, ring
from foldmath.paper.folding.hinges import hinges
from foldmath.paper.state import CUT
from foldmath.paper.steps import Gather
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ZERO
from foldmath.slides.motion.gathering_motion import LAST_DEGREES, PUSHED_HOME, STAR_IN_MM

MOMENTS, PARTS = 50, 4

NEAR_MM = 0.1
"""Between two kept moments, at most eight degrees apart, the picture goes straight on."""

TOGETHER_MM = 0.03
"""Paths are written to a hundredth of a mm."""

TURNED_MM = 0.8
"""What stands on a panel is slanted with it, but gets no smaller towards its far side."""

DRAWN = """(times) => {
    const picture = here().querySelector('.gather');
    return times.map((time) => {
        showGathering(picture, time);
        return picture.gathering.walls.map(({ element, paper, cut, on }) => ({
            paper: paper.getAttribute('d'), cut: cut.getAttribute('d'),
            front: element.classList.contains('printed'),
            shows: !on.classList.contains('waiting'), on: on.getAttribute('transform'),
            star: [...on.querySelectorAll('.star')].map((star) => star.getAttribute('points')).join(''),
        }));
    });
}"""

BOOKLETS = {path.stem: path for path in sorted(LESSONS.glob("*.toml")) if "gather" in path.read_text("utf-8")}
MADE_UP = {
    "slit-open": (*EIGHTHS, "open", "slit at height 1/2 from 1/4 to 3/4", "gather into booklet"),
    "cover-elsewhere": (
        *EIGHTHS,
        "open",
        "slit at height 1/2 from 1/4 to 3/4",
        "gather into booklet with cover at column 3",
    ),
    "twelve-pages": TWELVE_PAGES,
}


@pytest.fixture(params=[*BOOKLETS, *MADE_UP])
def gathered(request):
    if request.param in MADE_UP:
        return proved(*MADE_UP[request.param])
    return proved_lesson(BOOKLETS[request.param])[0]


def pose(found, time):
    """Give the joints of the strips: pushed to a box, on until the sides meet, turned, and closed."""
    first, second, third = PUSHES
    part, share = int(time), time % 1
    plus = met(found)
    leaves = range(len(plus))
    spread = [COVER_DEGREES + LEAF_SPREAD_DEGREES / (len(plus) - 1) * leaf for leaf in leaves]
    if part == 0:
        return pushed(found, first + share * (second - first))
    if part == 1:
        return pushed(found, second + share * (third - second))
    if part == 2 and share <= PUSHED_HOME:
        return pushed(found, third + share / PUSHED_HOME * (1 - third))
    start, end = (plus, spread) if part == 2 else (spread, [LAST_DEGREES * leaf for leaf in leaves])
    share = (share - PUSHED_HOME) / (1 - PUSHED_HOME) if part == 2 else share
    return leaves_at(found, [one + share * (other - one) for one, other in zip(start, end, strict=True)])


class Camera:
    """A pinhole at the eye; its scale and middle are read off one picture, and hold for all."""

    def __init__(self, found):
        length, level = as_float(found.grid.length), as_float(found.grid.height) / 2
        self.at = (EYE_ASIDE * length, -EYE_AWAY * length, level + EYE_ABOVE * length)
        ahead = unit(minus((0, 0, level), self.at))
        right = unit(cross(ahead, (0, 0, 1)))
        self.right, self.up, self.ahead = right, cross(right, ahead), ahead
        self.scale, self.left, self.above = 1.0, 0.0, 0.0

    def sees(self, place):
        ray = minus(place, self.at)
        deep = dot(ray, self.ahead)
        return (
            self.left + self.scale * dot(ray, self.right) / deep,
            self.above - self.scale * dot(ray, self.up) / deep,
        )

    def fit(self, places, drawn):
        seen = [self.sees(place) for place in places]
        self.scale = spread(drawn, 0) / spread(seen, 0)
        self.left = min(x for x, _ in drawn) - self.scale * min(x for x, _ in seen)
        self.above = min(y for _, y in drawn) - self.scale * min(y for _, y in seen)


def spread(spots, way):
    return max(spot[way] for spot in spots) - min(spot[way] for spot in spots)


def minus(one, other):
    return tuple(a - b for a, b in zip(one, other, strict=True))


def dot(one, other):
    return sum(a * b for a, b in zip(one, other, strict=True))


def cross(a, b):
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def unit(way):
    size = math.hypot(*way)
    return tuple(part / size for part in way)


def ends(path):
    """Give the corners of each line or loop of a path that the script wrote."""
    return [
        [tuple(map(float, corner.split())) for corner in loop.split("L")]
        for loop in path.replace("Z", "").split("M")[1:]
    ]


@pytest.mark.sweep("fraction-diary")
def test_panels_creases_cuts_and_stars_are_where_the_standing_sheet_has_them(shown, gathered):
    show = shown(gathered)
    place, slide = next((n, each) for n, each in enumerate(show.slides, start=1) if each.kind == "gather")
    moment = gathered.moments[slide.number - 1]
    assert isinstance(moment.step, Gather)
    acts = gathering_steps(moment.before, moment.step)
    state = next(act.state for act in acts if act.shows is Shows.STAND)
    found = ring(state, USUAL_COLUMN if moment.step.column is None else moment.step.column)
    show.go(place, slide.first)
    times = [PARTS * (count + 0.5) / MOMENTS for count in range(MOMENTS)]
    camera, stray = Camera(found), []
    for time, drawn in zip(times, show.page.evaluate(DRAWN, times), strict=True):
        by_panel = {wall.panel: wall.corners for wall in walls(state, found, pose(found, time))}
        standing = [by_panel[panel] for panel in found.panels]
        papers = [ends(wall["paper"])[0] for wall in drawn]
        if time == times[0]:
            camera.fit([corner for corners in standing for corner in corners], list(chain(*papers)))
        panels = [state.panels[panel] for panel in found.panels]
        stray += strays(camera, panels, standing, papers, time)
        stray += parted(state, found, papers, time)
        for wall, panel, corners, paper in zip(drawn, panels, standing, papers, strict=True):
            stray += stray_cuts(wall, panel, paper, time)
            stray += stray_stars(camera, wall, panel, corners, paper, slide.motion.page_mm, time)
    assert stray == []


def strays(camera, panels, standing, papers, time):
    """Give corners that are not seen where they stand."""
    for panel, corners, paper in zip(panels, standing, papers, strict=True):
        for corner, spot in zip(corners, paper, strict=True):
            if math.dist(camera.sees(corner), spot) > NEAR_MM:
                yield time, "corner", panel.corners[0], spot, camera.sees(corner)


def parted(state, found, papers, time):
    """Give creases that both of their panels do not have in one place."""
    seen = {
        (panel, corner): spot
        for panel, paper in zip(found.panels, papers, strict=True)
        for corner, spot in zip(state.panels[panel].corners, paper, strict=True)
    }
    for hinge in hinges(state.panels):
        for end in (hinge.start, hinge.end):
            if math.dist(seen[hinge.one, end], seen[hinge.other, end]) > TOGETHER_MM:
                yield time, "crease", end


def stray_cuts(wall, panel, paper, time):
    """Cuts are drawn along the edges that were cut, all of them and no others."""
    edges = [
        edge for edge, crease in zip(pairwise([*paper, paper[0]]), panel.edges, strict=True) if crease == CUT
    ]
    if ends(wall["cut"]) != [list(edge) for edge in edges]:
        yield time, "cut", wall["cut"]


def stray_stars(camera, wall, panel, corners, paper, page_mm, time):
    """The star shows on its panel's printed side only, as far in from its corner as on the sheet."""
    area = sum(x * next_y - next_x * y for (x, y), (next_x, next_y) in pairwise([*paper, paper[0]]))
    # Corners run counter-clockwise on the printed side; heights on the screen count downwards.
    if wall["shows"] is not (area < 0) or wall["front"] is not (area < 0):
        yield time, "side", area
    has_star = Point(ZERO, ZERO) in panel.corners
    if bool(wall["star"]) is not has_star:
        yield time, "star", wall["star"]
    if not has_star:
        return
    here = panel.corners.index(Point(ZERO, ZERO))
    wanted = inside(camera, corners, here, page_mm)
    points = [tuple(map(float, point.split(","))) for point in wall["star"].split()]
    middle = [sum(values) / len(points) for values in zip(*points, strict=True)]
    a, b, c, d, e, f = map(float, wall["on"].removeprefix("matrix(").removesuffix(")").split())
    drawn = (a * middle[0] + c * middle[1] + e, b * middle[0] + d * middle[1] + f)
    if math.dist(drawn, wanted) > TURNED_MM:
        yield time, "star place", drawn, wanted


def inside(camera, corners, here, page_mm):
    """Give where the spot is seen that is so far in from both sides of a panel's corner."""
    place = corners[here]
    for other in (corners[here - 1], corners[(here + 1) % len(corners)]):
        side = page_mm[1] if abs(other[2] - corners[here][2]) > 1e-9 else page_mm[0]
        place = tuple(
            at + STAR_IN_MM / side * (to - start)
            for at, to, start in zip(place, other, corners[here], strict=True)
        )
    return camera.sees(place)
