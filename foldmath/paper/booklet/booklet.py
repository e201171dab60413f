"""A booklet as values: its pages in reading order, and how each lies on the sheet that it was."""

from enum import Enum

from foldmath.phrases import Said
from foldmath.plane.lines import Point
from foldmath.plane.motions import Motion
from foldmath.plane.numbers import Exact
from foldmath.values import frozen


class Form(Enum):
    """What holds a booklet together: the ring round a slit, layers nested in one fold, or a fan."""

    RING = "ring round a slit"
    SIGNATURE = "folded signature"
    PLEAT = "pleat"


class Face(Enum):
    """A side of the sheet."""

    PRINTED = "printed"
    BACK = "back"


class WayUp(Enum):
    """Where the top of a page points on the opened sheet, its printed side towards the reader."""

    UPRIGHT = "up"
    UPSIDE_DOWN = "down"
    LEFT = "left"
    RIGHT = "right"


@frozen(kw_only=True)
class Page:
    """One page.

    Args:
        number: counted from 1, in reading order.
        panel: the panel that it is on, by its index in the state.
        face: the side of the sheet that it is on.
        way_up: where its top points on the opened sheet.
        motion: from the opened sheet to the upright page, its bottom left corner at (0, 0); it turns the
            sheet over for a page on the back.
    """

    number: int
    panel: int
    face: Face
    way_up: WayUp
    motion: Motion


@frozen
class Leaf:
    """Two pages back to back: page numbers, the front one first."""

    front: int
    back: int


class Meeting(Enum):
    """How the two pages of an opening meet: on one piece of paper at a hinge, or side by side."""

    HINGED = "hinged"
    ADJOINING = "adjoining"


@frozen
class Opening:
    """Two pages that face the reader together, the left one first, and how they meet."""

    left: int
    right: int
    meeting: Meeting


@frozen
class Spine:
    """A hinge at which two pages on one side of the sheet meet in the back of the booklet.

    Args:
        left, right: page numbers.
        start, end: the hinge on the opened sheet, in sheet units.
    """

    left: int
    right: int
    start: Point
    end: Point


@frozen
class Trim:
    """A folded edge that closes leaves of a signature until it is trimmed, on the opened sheet."""

    start: Point
    end: Point


@frozen
class SlitRoom:
    """How far past each of its two stops a slit may be cut, in sheet units.

    Args:
        harmless: so far no page weakens.
        tearing: here an end leaf comes apart.
    """

    harmless: Exact
    tearing: Exact


@frozen(kw_only=True)
class Booklet:
    """A flat closed booklet.

    Args:
        form: what holds it together.
        pages: in reading order; page 1 is the front cover and the last is the back cover.
        width, height: of a page, in sheet units.
        leaves: pages back to back, in reading order.
        openings: facing pages in reading order, without the two covers; in a pleat, all neighbours.
        spines: the hinges in its back, or between the pages of a pleat; by their left pages.
        trims: folded edges to be cut before a signature opens; none for other forms.
        slit_room: how much too long the slit of a ring may be; None for other forms.
        cover_outside: whether page 1 is seen when it is closed, which a fan may hide.
        warnings: what the folder should know; usually empty.
    """

    form: Form
    pages: tuple[Page, ...]
    width: Exact
    height: Exact
    leaves: tuple[Leaf, ...]
    openings: tuple[Opening, ...]
    spines: tuple[Spine, ...]
    trims: tuple[Trim, ...] = ()
    slit_room: SlitRoom | None = None
    cover_outside: bool = True
    warnings: tuple[Said, ...] = ()

    @property
    def refolded_as_fan(self) -> bool:
        """Whether the columns are first folded to and fro again: a ring of more than four leaves."""
        return self.form is Form.RING and len(self.leaves) > 4

    def page(self, number: int) -> Page:
        """Give a page by its number."""
        return self.pages[number - 1]
