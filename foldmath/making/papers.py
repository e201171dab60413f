"""The papers of one lesson: which files a teacher prints, and from which document each is made."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import cached_property, reduce
from typing import TYPE_CHECKING

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
from foldmath.worksheets.exit_ticket import exit_ticket
from foldmath.worksheets.folding_part import folding_part
from foldmath.worksheets.picture_book import SIZES, folding_pictures, item_pictures
from foldmath.worksheets.rendering import html
from foldmath.worksheets.worksheet import Worksheet, with_items

if TYPE_CHECKING:
    from foldmath.teachers_plan.copies import OwnPages

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

    def only(self, parts: frozenset[Part]) -> "Papers":
        """Leave out the files of all other parts."""
        documents = {name: self.documents[name] for name in self.documents if _part(name) in parts}
        return replace(self, documents=documents)


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
    first, *others = papers_in_turn(proved, page_paper, look, parts)
    return reduce(Papers.and_, others, first)


def papers_in_turn(
    proved: ProvedLesson, page_paper: str, look: str, parts: frozenset[Part] = EVERY_PART
) -> Iterator[Papers]:
    """Write the same one level after the other, then those for the teacher, so that each is printed at once.

    Raises:
        LessonRefused: as ``papers``, and before the first of them.
    """
    masters = Masters(proved, page_paper, look)
    for level in masters.sheets:
        yield masters.of_level(level).only(parts)
    if not parts.isdisjoint((Part.TICKET, Part.PLAN)):
        yield masters.ticket_paper(masters.core.code).only(parts)
        yield masters.plan_paper(None).only(parts)


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
        models = SIZES[look].models
        self.sheets = {level: with_items(self.folding, proved, level, models) for level in SUFFIXES}
        self.ticket = exit_ticket(self.folding, self.sheets.values())

    @property
    def core(self) -> Worksheet:
        """The worksheet of most of the class."""
        return self.sheets[Level.CORE]

    @cached_property
    def _pictures(self) -> dict[str, Scene]:
        """Those that every worksheet places."""
        return folding_pictures(self.proved, self.folding, self.look)

    def _written(self, html: str, code: str, *, answers: bool) -> Written:
        shape, title = upright(self.page_paper), self.proved.lesson.title
        return Written(html=html, shape=shape, footer=title, code=code, answers=answers)

    def of_level(self, level: Level) -> Papers:
        """Write the worksheet of a level, and its key."""
        sheet, suffix = self.sheets[level], SUFFIXES[level]
        blank = html(sheet, self.look, key=False)
        answered = html(sheet, self.look, key=True, ticket=self.ticket)
        documents = {
            f"worksheet{suffix}.pdf": self._written(blank, sheet.code, answers=False),
            f"answer-key{suffix}.pdf": self._written(answered, sheet.code, answers=True),
        }
        pictures = self._pictures | item_pictures(sheet, self.look)
        return Papers(documents, dict.fromkeys(documents, self.look), pictures, self.core)

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
