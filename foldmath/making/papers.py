"""The papers of one lesson: which files a teacher prints, and from which document each is made."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import cached_property, reduce
from typing import TYPE_CHECKING, TypeVar

from foldmath.drawing.scenes import Scene
from foldmath.lesson.proving import ProvedLesson
from foldmath.making.order import EVERY_PART, LEVELS, Part
from foldmath.pages.looks import REGULAR
from foldmath.pages.page_shapes import upright
from foldmath.pages.printable import refuse_unprintable
from foldmath.pages.templating import render
from foldmath.pages.written import Written
from foldmath.phrases import phrase
from foldmath.statements.items import Level
from foldmath.values import frozen
from foldmath.words.saying import say
from foldmath.worksheets.exit_ticket import ExitTicket, exit_ticket
from foldmath.worksheets.folding_part import folding_part
from foldmath.worksheets.picture_book import SIZES, folding_pictures, item_pictures
from foldmath.worksheets.rendering import html
from foldmath.worksheets.worksheet import Worksheet, with_items

if TYPE_CHECKING:
    from foldmath.teachers_plan.copies import OwnPages

Kept = TypeVar("Kept")

EXIT_TICKET, TEACHERS_PLAN = "exit-ticket.pdf", "teacher-plan.pdf"

PARTS = {
    "worksheet": Part.WORKSHEET,
    "answer-key": Part.KEY,
    "exit-ticket": Part.TICKET,
    "teacher-plan": Part.PLAN,
}
"""The part to which a file belongs, by how its name begins."""

TITLES = {
    Part.WORKSHEET: phrase("worksheet"),
    Part.KEY: phrase("answer key"),
    Part.TICKET: phrase("exit ticket"),
    Part.PLAN: phrase("teacher's plan"),
}
"""What the titles of files say of them."""

SUFFIXES = {Level.GUIDED: "-guided", Level.CORE: "", Level.STRETCH: "-stretch"}
"""What a level adds to the names of its files."""

IN_ORDER = (
    *(f"{kind}{suffix}.pdf" for suffix in SUFFIXES.values() for kind in ("worksheet", "answer-key")),
    EXIT_TICKET,
    TEACHERS_PLAN,
)
"""The files of a lesson as they are told; they are not written in this order."""


@frozen
class Papers:
    """What is printed for one lesson.

    Args:
        documents: by the names of their files.
        looks: the name of each file's style sheet.
        pictures: those that they place.
        core: the worksheet of most of the class.
    """

    documents: Mapping[str, Written]
    looks: Mapping[str, str]
    pictures: Mapping[str, Scene]
    core: Worksheet

    def title(self, name: str, language: str) -> str:
        """Give the title of a file, which tells it from all others: ``Seed trays: answer key, core``."""
        kind = TITLES[_part(name)]
        levels = [level for level, suffix in SUFFIXES.items() if suffix and name.endswith(f"{suffix}.pdf")]
        level = LEVELS[levels[0] if levels else Level.CORE]
        told = [kind, level] if _part(name) in (Part.WORKSHEET, Part.KEY) else [kind]
        return f"{self.core.lesson.title}: {', '.join(say(words, language) for words in told)}"

    def and_(self, others: "Papers") -> "Papers":
        """Give these papers, and others of the same lesson after them."""
        return Papers(
            {**self.documents, **others.documents},
            {**self.looks, **others.looks},
            {**self.pictures, **others.pictures},
            self.core,
        )


def papers(proved: ProvedLesson, page_paper: str, look: str, parts: frozenset[Part] = EVERY_PART) -> Papers:
    """Write the three masters of a class, their keys, the exit ticket and the teacher's plan.

    Args:
        proved: the lesson.
        page_paper: ``letter`` or ``A4``.
        look: the name of the style sheet.
        parts: those that are wanted; all, if nothing is said.

    Raises:
        LessonRefused: the fonts of the pages lack letters of the lesson's words.
    """
    masters = Masters(proved, page_paper, look)
    written = reduce(Papers.and_, papers_in_turn(masters, parts), Papers({}, {}, {}, masters.core))
    return replace(written, documents=in_order(written.documents))


def in_order(files: Mapping[str, Kept]) -> dict[str, Kept]:
    """Put files of a lesson, by their names, into the order in which they are told."""
    return {name: files[name] for name in IN_ORDER if name in files}


def papers_in_turn(masters: "Masters", parts: frozenset[Part] = EVERY_PART) -> Iterator[Papers]:
    """Write the same one by one, so that each is printed at once.

    The worksheet of most of the class comes first: it is printed while the items of other levels are chosen,
    all of which are in the keys, since these have the answers to the exit ticket.
    """
    if Part.WORKSHEET in parts:
        yield from map(masters.worksheet, (Level.CORE, Level.GUIDED, Level.STRETCH))
    if Part.KEY in parts:
        yield from map(masters.key, SUFFIXES)
    if Part.TICKET in parts:
        yield masters.ticket_paper(masters.core.code)
    if Part.PLAN in parts:
        yield masters.plan_paper(None)


def _part(name: str) -> Part:
    return next(part for begins, part in PARTS.items() if name.startswith(begins))


class Masters:
    """The worksheets of the three levels and their exit ticket, chosen but not written.

    Args:
        proved: the lesson.
        page_paper: ``letter`` or ``A4``.
        look: the name of the style sheet.

    Raises:
        LessonRefused: the fonts of the pages lack letters of the lesson's words.
    """

    def __init__(self, proved: ProvedLesson, page_paper: str, look: str) -> None:
        refuse_unprintable(proved.lesson)
        self.proved, self.page_paper, self.look = proved, page_paper, look
        self.folding = folding_part(proved)
        self._sheets: dict[Level, Worksheet] = {}

    def sheet(self, level: Level) -> Worksheet:
        """Give what the worksheet of a level says."""
        if level not in self._sheets:
            models = SIZES[self.look].models
            self._sheets[level] = with_items(self.folding, self.proved, level, models)
        return self._sheets[level]

    @property
    def core(self) -> Worksheet:
        """The worksheet of most of the class."""
        return self.sheet(Level.CORE)

    @cached_property
    def ticket(self) -> ExitTicket:
        """What the exit ticket asks, which no worksheet does."""
        return exit_ticket(self.folding, [self.sheet(level) for level in SUFFIXES])

    @cached_property
    def _pictures(self) -> dict[str, Scene]:
        """Those that every worksheet places."""
        return folding_pictures(self.proved, self.folding, self.look)

    def _written(self, html: str, code: str, *, answers: bool) -> Written:
        shape, title = upright(self.page_paper), self.proved.lesson.title
        return Written(html=html, shape=shape, footer=title, code=code, answers=answers)

    def worksheet(self, level: Level) -> Papers:
        """Write the worksheet of a level."""
        blank = html(self.sheet(level), self.look, key=False)
        return self._of_level(f"worksheet{SUFFIXES[level]}.pdf", level, blank, answers=False)

    def key(self, level: Level) -> Papers:
        """Write the key to the worksheet of a level."""
        answered = html(self.sheet(level), self.look, key=True, ticket=self.ticket)
        return self._of_level(f"answer-key{SUFFIXES[level]}.pdf", level, answered, answers=True)

    def _of_level(self, name: str, level: Level, html: str, *, answers: bool) -> Papers:
        sheet = self.sheet(level)
        document = self._written(html, sheet.code, answers=answers)
        pictures = self._pictures | item_pictures(sheet, self.look)
        return Papers({name: document}, {name: self.look}, pictures, self.core)

    def ticket_paper(self, code: str) -> Papers:
        """Write the exit ticket, with a code at its foot; empty for pupils who have codes of their own."""
        ticket_html = render(
            "worksheets/exit_ticket.html",
            self.proved.lesson.language,
            sheet=self.core,
            ticket=self.ticket,
            paper=self.page_paper,
        )
        document = self._written(ticket_html, code, answers=False)
        return Papers({EXIT_TICKET: document}, {EXIT_TICKET: self.look}, {}, self.core)

    def plan_paper(self, own: "OwnPages | None") -> Papers:
        """Write the teacher's plan for a class with pages of its own; None for one that shares the masters.

        Pages of pupils' own bear codes of their own, so that there is none for all of them.
        """
        # Imported here, since worksheets and keys by themselves need no plan.
        from foldmath.teachers_plan.plan import plan, plan_html, plan_pictures

        planned = plan(self.proved, self.core, own)
        document = self._written(plan_html(planned), "" if own else self.core.code, answers=True)
        pictures = plan_pictures(self.proved, planned)
        return Papers({TEACHERS_PLAN: document}, {TEACHERS_PLAN: REGULAR}, pictures, self.core)
