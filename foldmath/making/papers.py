"""The papers of one lesson: which files a teacher prints, and from which document each is made."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from foldmath.drawing.scenes import Scene
from foldmath.lesson.proving import ProvedLesson
from foldmath.making.order import EVERY_PART, LEVELS, Part
from foldmath.pages.looks import REGULAR
from foldmath.pages.page_shapes import upright
from foldmath.pages.pdf.paginating import PAGE_WORDS, PageMaster
from foldmath.pages.printable import refuse_unprintable
from foldmath.pages.printing import Document
from foldmath.pages.templating import render
from foldmath.phrases import phrase
from foldmath.statements.items import Level
from foldmath.teachers_plan.copies import OwnPages
from foldmath.words.saying import say
from foldmath.worksheets.exit_ticket import exit_ticket
from foldmath.worksheets.folding_part import folding_part
from foldmath.worksheets.picture_book import SIZES, folding_pictures, item_pictures
from foldmath.worksheets.rendering import html
from foldmath.worksheets.worksheet import Worksheet, with_items

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


@dataclass(frozen=True)
class Papers:
    """What is printed for one lesson.

    Args:
        documents: by the names of their files.
        looks: the name of each file's style sheet.
        pictures: those that they place.
        core: the worksheet of most of the class.
    """

    documents: Mapping[str, Document]
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
    masters = Masters(proved, page_paper, look)
    documents: dict[str, Document] = {}
    pictures = folding_pictures(proved, masters.folding, look)
    for level, sheet in masters.sheets.items():
        documents |= masters.of_level(level)
        pictures |= item_pictures(sheet, look)
    of_levels = Papers(documents, dict.fromkeys(documents, look), pictures, masters.core)
    if parts.isdisjoint((Part.TICKET, Part.PLAN)):
        return of_levels.only(parts)
    return of_levels.and_(masters.ticket_paper(masters.core.code)).and_(masters.plan_paper(None)).only(parts)


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

    def _master(self, code: str) -> PageMaster:
        return PageMaster(upright(self.page_paper), self.proved.lesson.title, code, PAGE_WORDS)

    def of_level(self, level: Level) -> dict[str, Document]:
        """Write the worksheet of a level, and its key."""
        sheet, suffix = self.sheets[level], SUFFIXES[level]
        master = self._master(sheet.code)
        blank = html(sheet, self.look, key=False)
        answered = html(sheet, self.look, key=True, ticket=self.ticket)
        return {
            f"worksheet{suffix}.pdf": Document(blank, master, answers=False),
            f"answer-key{suffix}.pdf": Document(answered, master, answers=True),
        }

    def ticket_paper(self, code: str) -> Papers:
        """Write the exit ticket, with a code at its foot; empty for pupils who have codes of their own."""
        ticket_html = render(
            "worksheets/exit_ticket.html",
            self.proved.lesson.language,
            sheet=self.core,
            ticket=self.ticket,
            paper=self.page_paper,
        )
        document = Document(ticket_html, self._master(code), answers=False)
        return Papers({EXIT_TICKET: document}, {EXIT_TICKET: self.look}, {}, self.core)

    def plan_paper(self, own: OwnPages | None) -> Papers:
        """Write the teacher's plan for a class with pages of its own; None for one that shares the masters.

        Pages of pupils' own bear codes of their own, so that there is none for all of them.
        """
        # Imported here, since worksheets and keys by themselves need no plan.
        from foldmath.teachers_plan.plan import plan, plan_html, plan_pictures

        planned = plan(self.proved, self.core, own)
        document = Document(plan_html(planned), self._master("" if own else self.core.code), answers=True)
        pictures = plan_pictures(self.proved, planned)
        return Papers({TEACHERS_PLAN: document}, {TEACHERS_PLAN: REGULAR}, pictures, self.core)
