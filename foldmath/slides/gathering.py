"""Gathering round a slit on the slides: still pictures, one after the other, in one place."""

from dataclasses import replace
from typing import ClassVar, assert_never

from foldmath.booklets.folding_steps import FoldingStep, Shows, folding_picture, gathering_steps
from foldmath.drawing.framing import framed
from foldmath.drawing.scenes import Area, Figure, Hatching, Mark, Scene, Spot, Star, Stroke
from foldmath.paper.booklet.booklet import Form
from foldmath.paper.booklet.gathering import booklet
from foldmath.paper.moments.moment import Moment
from foldmath.paper.steps import Gather
from foldmath.slides.motion.gathering_motion import GatherMotion, gather_motion
from foldmath.values import frozen
from foldmath.words.steps import WrittenStep

PICTURE_MM, PRINTED_MM = (64.0, 50.0), (48.0, 37.0)
"""Lines, stars and numbers are as large beside it as in pictures of folded sheets; three side by side."""

PRINTED = {Shows.BOX, Shows.LEAVES, Shows.CLOSED}
"""What the slides in print have room for."""

MORE_REVEALS = 1
"""After the pictures, the first of which shows at once: the question, and the answer."""


@frozen
class Pose:
    """One picture, by the name of what it shows.

    Args:
        shows: what it shows.
        turn: a turn of the sheet; else None.
        scene: for the browser, heights counted from the top.
        printed: for the slides in print, heights from the bottom; None where they leave it out.
    """

    shows: str
    turn: WrittenStep | None
    scene: Scene
    printed: Scene | None


@frozen(kw_only=True)
class GatherSlide:
    """The step that gathers a sheet round its slit.

    Args:
        number: of the step, from 1.
        step: the step.
        poses: the pictures.
        motion: the movement through those from ``first`` on, to the one after its last part.
        first: the number of the pose with which the movement begins, from 0.
        boxes: into how many boxes the slit opens.
        pages: of the booklet.
    """

    kind: ClassVar[str] = "gather"

    number: int
    step: WrittenStep
    poses: tuple[Pose, ...]
    motion: GatherMotion
    first: int
    boxes: int
    pages: int

    @property
    def last(self) -> int:
        """How many reveals it has: a picture each but for the first, the question, and the answer."""
        return len(self.poses) + MORE_REVEALS


def gather_slide(number: int, moment: Moment, step: WrittenStep) -> GatherSlide | None:
    """Give the slide of a step that gathers a sheet round its slit; None for other steps."""
    if not isinstance(moment.step, Gather) or moment.before.folds:
        return None
    made = booklet(moment.before, moment.step.column)
    if made.form is not Form.RING:
        return None
    acts = gathering_steps(moment.before, moment.step)
    poses = tuple(_pose(act) for act in acts)
    first = [act.shows for act in acts].index(Shows.STAND)
    motion = gather_motion(acts[first].state, moment.step, *PICTURE_MM)
    boxes = len(made.leaves) // 2 - 1
    return GatherSlide(
        number=number,
        step=step,
        poses=poses,
        motion=motion,
        first=first,
        boxes=boxes,
        pages=len(made.pages),
    )


def _pose(step: FoldingStep) -> Pose:
    printed = folding_picture(step, *PRINTED_MM) if step.shows in PRINTED else None
    scene = framed(folding_picture(step, *PICTURE_MM), *PICTURE_MM)
    return Pose(step.shows.value, step.written if step.shows is Shows.TURN else None, _down(scene), printed)


def _down(scene: Scene) -> Scene:
    return replace(scene, marks=tuple(_mark_down(mark, scene.height_mm) for mark in scene.marks))


def _mark_down(mark: Mark, height: float) -> Mark:
    match mark:
        case Figure() | Star():
            return replace(mark, middle=Spot(mark.middle.x, height - mark.middle.y))
        case Stroke() | Area() | Hatching():
            return replace(mark, spots=tuple(Spot(x, height - y) for x, y in mark.spots))
        case _:
            assert_never(mark)
