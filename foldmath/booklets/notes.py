"""Notes for the teacher: takes a booklet laid out, gives what to know before it is printed and folded."""

import tomllib
from collections.abc import Callable, Iterator
from functools import cache
from importlib.resources import files
from typing import Any

from foldmath.booklets.booklet_styles import PageRoom
from foldmath.booklets.fitting import SIZES, fit_whole
from foldmath.booklets.imposing import Imposed, imposed
from foldmath.booklets.laying_out import LaidPage, Layout, contents_of, ruling_mm
from foldmath.errors import LessonRefused, Problem
from foldmath.lesson.booklet.reading import on_sheet
from foldmath.lesson.proving import ProvedLesson
from foldmath.measured import as_float
from foldmath.pages.looks import LARGE
from foldmath.pages.page_fit import fit, own_page
from foldmath.paper.booklet.booklet import Booklet, Face, SlitRoom
from foldmath.paper.lengths import Length
from foldmath.paper.measures import length_said, measures_said, paper_said, ruler_length, ruler_length_for
from foldmath.paper.sizes import paper_named, sheet
from foldmath.paper.state import Sheet
from foldmath.phrases import Phrase, Said, joined, phrase
from foldmath.plane.numbers import Exact, exact
from foldmath.worksheets.folding_part import FoldingPart

USUAL_PAPERS = {
    "in": ("letter", "legal", "tabloid", "construction 12 x 18", "construction 18 x 24"),
    "mm": ("A4", "A3", "A2", "A1"),
    "cm": ("A4", "A3", "A2", "A1"),
}
"""Papers that a school can get, by the unit of the lesson's own, the smallest first.

Common practice, no source.
"""

FEWEST_LINES = 6
"""A page with fewer is filled by one thought (common practice, no source)."""

WORDS_A_LINE, LETTERS_A_WORD = 2, 6
LETTER_SHARE = 0.4
"""A line holds two words of five letters and a space, each letter 0.4 of the ruling wide (no source)."""

HAIR_MM = 0.01


class TooSmallForLargePrint(LessonRefused):
    """A booklet with pages on which large print does not fit.

    Args:
        problems: each page, with the paper on which all of them fit.
        paper: the name of that paper; empty if there is none.
    """

    def __init__(self, problems: list[Problem], paper: str) -> None:
        super().__init__(problems)
        self.paper = paper


def paper_notes(paper: Sheet, page_paper: str) -> Iterator[Said]:
    """Tell how to print a sheet on a printer's paper, at exact scale."""
    yield said("exact")
    lies = fit(paper, page_paper)
    if lies is None:
        yield said("larger", paper=paper_said(page_paper), measures=measures_said(paper))
    elif not lies.fills_page:
        yield said("smaller", paper=paper_said(page_paper))


class Adviser:
    """Gives the notes on one booklet.

    Args:
        layout: the booklet.
        proved: its lesson.
        folding: the folding part of the lesson's worksheets.
        look: the name of the look.
    """

    def __init__(self, layout: Layout, proved: ProvedLesson, folding: FoldingPart, look: str) -> None:
        self.layout, self.proved, self.folding, self.look = layout, proved, folding, look
        self.ruling = ruling_mm(layout.plan, look)

    def notes(self) -> Iterator[Said]:
        """Give every note: on folding, on writing room, and on pages that are too full."""
        made = self.layout.plan.booklet
        if any(page.face is Face.BACK for page in made.pages):
            yield said("both_sides")
        if made.trims:
            yield said("trim")
        if made.slit_room:
            yield self._slit_room(made.slit_room)
        yield from made.warnings
        yield from self._writing_room()
        yield from self._too_small()
        notes = [note for page in self.layout.pages for note in self._too_full(page)]
        yield from notes
        if notes:
            yield self._on_paper("all_fit", self._all_fit_on)

    def refuse_smaller_print(self) -> None:
        """Make sure that in large print no page needs smaller letters.

        Raises:
            TooSmallForLargePrint: some do; says which, and the paper on which all of them fit.
        """
        full = [page for page in self.layout.pages if not page.whole]
        if self.look != LARGE or not full:
            return
        paper, size = self._paper_on_which(self._all_fit_on), f"{SIZES[LARGE][-1]:g}"
        hint = f'paper = "{paper}"' if paper else said("tiny_hint")
        raise TooSmallForLargePrint([self._problem(page, size, hint) for page in full], paper or "")

    def _problem(self, page: LaidPage, size: str, hint: Said) -> Problem:
        return Problem(
            file=self.proved.lesson.file,
            line=page.planned.line,
            column=page.planned.column,
            message=said("too_small", page=page.imposed.page.number, size=size),
            hint=hint,
        )

    def _slit_room(self, room: SlitRoom) -> Phrase:
        """Say how much too long the slit may be, rounded down."""
        lengths = {"harmless": room.harmless, "tearing": room.tearing}
        unit_mm = self.layout.sheet.unit_mm
        return said("slit_room", **{name: self._ruled(each * unit_mm) for name, each in lengths.items()})

    def _ruled(self, millimetres: Exact) -> Phrase:
        """Say a length as a ruler shows it that goes with the lesson's paper."""
        return length_said(*ruler_length(millimetres, self.layout.sheet.unit))

    def _pitch(self, ruling: Length) -> Phrase:
        """Say the ruling in its own unit; by a ruler where the look needs more, or rulers have no inches."""
        grown = abs(as_float(ruling.in_millimetres) - self.ruling) > HAIR_MM
        if grown or (ruling.unit == "in" and self.layout.sheet.unit != "in"):
            return self._ruled(_exact_mm(self.ruling))
        return length_said(ruling.number, ruling.unit)

    def _writing_room(self) -> Iterator[Phrase]:
        rooms = [page.content.room for page in self.layout.pages]
        lines, width = _lines_in(rooms), _width_of(rooms)
        yield said(
            "room",
            lines=lines,
            width=self._ruled(exact(int(width))),
            ruling=self._pitch(self.layout.plan.ruling),
        )
        counted = {page.imposed.page.number: page.fit.lines for page in self.layout.pages if page.fit.lines}
        if counted:
            told = [said("page_lines", page=number, lines=lines) for number, lines in counted.items()]
            yield said("lines", pages=joined(", ", told))

    def _too_small(self) -> Iterator[Phrase]:
        rooms = [page.content.room for page in self.layout.pages]
        grade = self.proved.lesson.grade
        lines, width = _lines_in(rooms), _width_of(rooms)
        if self._roomy(rooms):
            return
        if lines < FEWEST_LINES:
            yield said("few_lines", grade=grade, lines=lines, fewest=FEWEST_LINES)
        else:
            yield said(
                "few_words",
                grade=grade,
                width=self._ruled(exact(int(width))),
                words=WORDS_A_LINE,
                needed=length_said(
                    *ruler_length_for(_exact_mm(needed_width_mm(self.ruling)), self.layout.sheet.unit)
                ),
            )
        yield self._on_paper("would_do", lambda paper: self._roomy(self._rooms_on(paper)))

    def _roomy(self, rooms: list[PageRoom]) -> bool:
        return _lines_in(rooms) >= FEWEST_LINES and _width_of(rooms) >= needed_width_mm(self.ruling)

    def _too_full(self, page: LaidPage) -> Iterator[Phrase]:
        number, fit = page.imposed.page.number, page.fit
        if not page.whole:
            told = {"kept": fit.kept, "parts": len(page.content.written.parts)}
            yield self._placed(page, said("unfit", page=number, size=f"{SIZES[self.look][-1]:g}", **told))

    def _placed(self, page: LaidPage, note: Phrase) -> Phrase:
        """Put the page's place in the lesson file before a note, where it has one."""
        if not page.planned.line:
            return note
        place = f"{self.proved.lesson.file}:{page.planned.line}:{page.planned.column}"
        return phrase("{place}: {message}", place=place, message=note)

    def _on_paper(self, note: str, fits: Callable[[Sheet], bool]) -> Phrase:
        """Say on which paper something fits."""
        paper = self._paper_on_which(fits)
        return said(note, paper=paper_said(paper)) if paper else said("none_would_do")

    def _paper_on_which(self, fits: Callable[[Sheet], bool]) -> str | None:
        """Name the smallest usual paper, larger than the lesson's own, on which something fits."""
        for name in USUAL_PAPERS[self.layout.sheet.unit]:
            paper = sheet(paper_named(name), self._orientation())
            if _area(paper) > _area(self.layout.sheet) and fits(paper):
                return name
        return None

    def _orientation(self) -> str:
        own = self.layout.sheet
        return "landscape" if own.width >= own.height else "portrait"

    def _booklet_on(self, paper: Sheet) -> Booklet:
        return on_sheet(self.layout.plan, paper).booklet

    def _places_on(self, paper: Sheet) -> tuple[Imposed, ...]:
        return imposed(self._booklet_on(paper), paper, own_page(paper), self.look)

    def _rooms_on(self, paper: Sheet) -> list[PageRoom]:
        return [place.room(self.ruling) for place in self._places_on(paper)]

    def _all_fit_on(self, paper: Sheet) -> bool:
        """Tell whether all pages fit at the look's own size."""
        planned = [page.planned for page in self.layout.pages]
        contents = contents_of(planned, self._places_on(paper), self.ruling, self.proved, self.folding)
        return all(fit_whole(page, SIZES[self.look][-1:]) for page in contents)


def needed_width_mm(ruling: float) -> float:
    """Give how wide a line is that holds as many words as a page should, in mm."""
    return WORDS_A_LINE * LETTERS_A_WORD * LETTER_SHARE * ruling


def _lines_in(rooms: list[PageRoom]) -> int:
    return min(int(room.height_mm // room.ruling_mm) for room in rooms)


def _width_of(rooms: list[PageRoom]) -> float:
    return min(room.width_mm for room in rooms)


def _area(paper: Sheet) -> Exact:
    """Give an area in square mm."""
    return paper.area * paper.unit_mm * paper.unit_mm


def _exact_mm(millimetres: float) -> Exact:
    """Give a length to a hundredth of a mm."""
    return exact(round(100 * millimetres), 100)


@cache
def _wording() -> dict[str, Any]:
    return tomllib.loads(files(__package__).joinpath("words.toml").read_text(encoding="utf-8"))


def said(note: str, **told: object) -> Phrase:
    """Give one of the wordings, by its name."""
    return phrase(str(_wording()[note]), **told)
