"""The press: takes the pages of documents, each of its own kind, and gives their ink and their tags."""

from abc import ABC, abstractmethod
from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import field
from io import BytesIO
from typing import NamedTuple, TypeAlias

from reportlab.pdfgen.canvas import Canvas

from foldmath.drawing.rendering.recording import Recording
from foldmath.pages.lettering.glyph_fonts import Letter
from foldmath.pages.pdf import fonts
from foldmath.pages.tags.branches import Act, Branch, branch
from foldmath.pages.tags.kinds import SECTION, section_in
from foldmath.pages.tags.marking import Tags
from foldmath.pages.tags.objects import packed
from foldmath.pages.tags.spoken import Ink, ink_of
from foldmath.pages.tags.tree import Growth, Told
from foldmath.values import frozen

FOOT_PT = 9.0
"""What stands at the foot is small print, but for those who need large print."""


class Needs:
    """What pages need of the file that they are bound into, in the order of painting.

    ``letters`` must be in its fonts; ``pictures`` are placed, by the names of their forms.
    """

    def __init__(self) -> None:
        self.letters: dict[Letter, None] = {}
        self.pictures: dict[str, Recording] = {}
        self._known: dict[int, Needs] = {}

    def __getstate__(self) -> dict[str, object]:
        """Give what another process may know: those that were added have no identity there."""
        return {**vars(self), "_known": {}}

    def add(self, others: "Needs") -> None:
        """Need also what others do, which are known again."""
        if id(others) not in self._known:
            self._known[id(others)] = others
            self.letters |= others.letters
            self.pictures |= others.pictures


@frozen(eq=False)
class Imprint:
    """What is left on a page by something that is painted: the same on every page of every file.

    Args:
        operators: that paint it at the origin, with what its marks are left open.
        acts: what it is.
        needs: what the file must have for it.
    """

    operators: tuple[str, ...]
    acts: tuple[Act, ...]
    needs: "Needs"
    _branches: dict[int, Branch] = field(default_factory=dict)

    def branch(self, level: int) -> Branch:
        """Give it for where the last heading is of a level; on a class's pages it is asked for again."""
        if level not in self._branches:
            self._branches[level] = branch(self.operators, self.acts, level)
        return self._branches[level]


class PressedPage(NamedTuple):
    """A page as it goes into a file.

    Args:
        size: its width and height, in points.
        trim_box: what is cut out of it, in points; None for all of it.
        inks: its operators, in packed parts.
    """

    size: tuple[float, float]
    trim_box: tuple[float, float, float, float] | None
    inks: tuple[bytes, ...]


class PressCanvas(Canvas):
    """A canvas on which ink says what it is: ``tags`` takes that; nothing is written into a file yet."""

    _code: list[str]
    _pagesize: tuple[float, float]
    _startPage: Callable[[], None]

    def __init__(self, language: str) -> None:
        super().__init__(
            BytesIO(),
            invariant=1,
            lang=language,
            initialFontName=fonts.REGULAR,  # type: ignore[arg-type]  # the stubs take it for a size
        )
        self.tags = Tags(self)
        self.growth = Growth()
        self.pages: list[PressedPage] = []
        self.needs = Needs()
        self.trim_box: tuple[float, float, float, float] | None = None
        self._laid: list[str] = []
        self._parts: list[bytes] = []
        self.common: dict[str, bytes] = {}
        self.inks: dict[Hashable, tuple[Ink, Imprint, object]] = {}

    def imprint(self, paint: Callable[[], None]) -> Imprint:
        """Give what is left by something that is painted at the origin, without leaving it here.

        It must not rely on a pen that was taken before; on the page nothing is moved yet.
        """
        around = self._code, self.needs, self.tags.acts
        self._code, self.needs, self.tags.acts = [], Needs(), []
        paint()
        made = Imprint(tuple(self._code), tuple(self.tags.acts), self.needs)
        self._code, self.needs, self.tags.acts = around
        return made

    @contextmanager
    def in_common(self) -> Iterator[None]:
        """Lay what other pages have too, at the same place: a file has such ink once."""
        self._part()
        yield
        self._lay_what_is_painted()
        code = "\n".join(self._laid)
        self._laid.clear()
        if code not in self.common:
            self.common[code] = packed(code.encode())
        self._parts.append(self.common[code])

    def _part(self) -> None:
        """Go on with another part of the page's ink."""
        self._lay_what_is_painted()
        if self._laid:
            self._parts.append(packed("\n".join(self._laid).encode()))
            self._laid.clear()

    def place(self, imprint: Imprint, x: float, y: float) -> None:
        """Place an imprint with its origin at (x, y), in points."""
        self._lay_what_is_painted()
        code = self.growth.grow(imprint.branch(self.growth.level), x, y)
        self._laid.append(f"q 1 0 0 1 {x:.4f} {y:.4f} cm\n{code}\nQ")
        self.needs.add(imprint.needs)

    def _lay_what_is_painted(self) -> None:
        """Lay what was painted on the page itself since something was placed on it."""
        if not self.tags.acts:
            self._laid += self._code
            self._code.clear()
        elif self._code:
            painted = branch(self._code, self.tags.acts, self.growth.level)
            self._laid.append(self.growth.grow(painted, 0.0, 0.0))
            self._code.clear()
            self.tags.acts.clear()

    def stamp(self, imprint: Imprint, x: float, y: float) -> None:
        """Place an imprint without tags of its own within what is being painted, its origin at (x, y)."""
        self._code += f"q 1 0 0 1 {x:.4f} {y:.4f} cm", *imprint.operators, "Q"
        self.needs.add(imprint.needs)

    def again(self, what: object, width: float, paint: Callable[[], None], x: float, y: float) -> None:
        """Paint words that come again and again; their ink is written out each time, and found once.

        It is not laid on a form: a form for each paragraph would be larger than the ink, packed.

        Args:
            what: is painted; the very same gives the same ink.
            width: that it was broken for, in points.
            paint: paints it at the origin; places no form.
            x: where the origin is to be, in points.
            y: where it is to be.
        """
        key = id(what), width
        if key not in self.inks:
            made = self.imprint(paint)
            # What is painted is kept with its ink, so that nothing else may get its identity.
            self.inks[key] = ink_of(made.operators), made, what
        ink, made, _ = self.inks[key]
        self._code.append(f"q 1 0 0 1 {x:.4f} {y:.4f} cm\n{self.tags.marked(ink)}\nQ")
        self.needs.add(made.needs)

    def showPage(self) -> None:
        """Close the page, and number its marks (ISO 32000-1:2008, 14.7.4.4)."""
        self._part()
        self.growth.end_page()
        self.pages.append(PressedPage(self._pagesize, self.trim_box, tuple(self._parts)))
        self._parts.clear()
        self._startPage()


@frozen
class Press:
    """What pages are painted with.

    Args:
        canvas: takes their ink.
        language: the file's, in which all words are that are not marked.
        foot_pt: the size of all feet.
    """

    canvas: PressCanvas
    language: str
    foot_pt: float


class Page(ABC):
    """A page that knows its own size and what stands on it."""

    @property
    def language(self) -> str:
        """Of its document's words; empty for the file's."""
        return ""

    @abstractmethod
    def put(self, press: Press, number: int, pages: int) -> None:
        """Set the size of a page and paint on it; it is shown afterwards.

        Args:
            press: what it is painted with.
            number: which page of its document it is, from 1.
            pages: how many its document has.
        """


Pages: TypeAlias = Sequence[Page]
"""Pages that are counted together."""


@frozen(kw_only=True)
class Pressed:
    """Pages of one or more documents, ready to be bound into a file, with others after them or alone.

    Args:
        pages: in order.
        tags: what is told of them to those who hear them.
        letters: that the file's fonts must have, in the order of painting.
        pictures: that the pages place, by the names of their forms.
        common: parts of their ink that several of them have, or may have with others.
    """

    pages: tuple[PressedPage, ...]
    tags: Told
    letters: Mapping[Letter, None]
    pictures: Mapping[str, Recording]
    common: tuple[bytes, ...]


def pressed(documents: Iterable[Pages], language: str, foot_pt: float = FOOT_PT) -> Pressed:
    """Paint documents, one after the other.

    Args:
        documents: each asked for when the one before it is painted.
        language: of the file, as in BCP 47, such as ``en-US``.
        foot_pt: the size of what stands at the foot.
    """
    fonts.register_fonts()
    canvas = PressCanvas(language)
    press = Press(canvas, language, foot_pt)
    for document in documents:
        own = document[0].language if document else ""
        with canvas.growth.section(section_in(own) if own not in ("", language) else SECTION):
            for number, page in enumerate(document, start=1):
                page.put(press, number, len(document))
                canvas.showPage()
    return Pressed(
        pages=tuple(canvas.pages),
        tags=canvas.growth.told(),
        letters=canvas.needs.letters,
        pictures=canvas.needs.pictures,
        common=tuple(canvas.common.values()),
    )
