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
    begun = _Begun(proved, page_paper, look)
    documents: dict[str, Document] = {}
    pictures = folding_pictures(proved, begun.folding, look)
    for level, sheet in begun.sheets.items():
        documents |= begun.masters(level)
        pictures |= item_pictures(sheet, look)
    masters = Papers(documents, dict.fromkeys(documents, look), pictures, begun.sheets[Level.CORE])
    if parts.isdisjoint((Part.TICKET, Part.PLAN)):
        return masters.only(parts)
    teachers = begun.teachers(None)
    both = Papers(
        {**documents, **teachers.documents},
        {**masters.looks, **teachers.looks},
        {**pictures, **teachers.pictures},
        masters.core,
    )
    return both.only(parts)


def teachers_papers(proved: ProvedLesson, page_paper: str, look: str, own: OwnPages) -> Papers:
    """Write only the exit ticket and the teacher's plan, for a class in which pupils have their own pages.

    Args:
        proved: the lesson.
        page_paper: ``letter`` or ``A4``.
        look: the name of the style sheet.
        own: their pages.

    Raises:
        LessonRefused: as ``papers``.
    """
    return _Begun(proved, page_paper, look).teachers(own)


def _part(name: str) -> Part:
    return next(part for begins, part in PARTS.items() if name.startswith(begins))


class _Begun:
    """The worksheets of the three levels and their exit ticket, chosen but not written."""

    def __init__(self, proved: ProvedLesson, page_paper: str, look: str) -> None:
        refuse_unprintable(proved.lesson)
        self.proved, self.page_paper, self.look = proved, page_paper, look
        self.folding = folding_part(proved)
        models = SIZES[look].models
        self.sheets = {level: with_items(self.folding, proved, level, models) for level in SUFFIXES}
        self.ticket = exit_ticket(self.folding, self.sheets.values())

    def _master(self, code: str) -> PageMaster:
        return PageMaster(upright(self.page_paper), self.proved.lesson.title, code, PAGE_WORDS)

    def masters(self, level: Level) -> dict[str, Document]:
        """Write the worksheet of a level, and its key."""
        sheet, suffix = self.sheets[level], SUFFIXES[level]
        master = self._master(sheet.code)
        blank = html(sheet, self.look, key=False)
        answered = html(sheet, self.look, key=True, ticket=self.ticket)
        return {
            f"worksheet{suffix}.pdf": Document(blank, master, answers=False),
            f"answer-key{suffix}.pdf": Document(answered, master, answers=True),
        }

    def teachers(self, own: OwnPages | None) -> Papers:
        """Write the exit ticket and the plan; None for a class that shares the masters.

        Pages of pupils' own bear codes of their own, so that there is none for all of them.
        """
        # Imported here, since worksheets and keys by themselves need no plan.
        from foldmath.teachers_plan.plan import plan, plan_html, plan_pictures

        core = self.sheets[Level.CORE]
        master = self._master("" if own else core.code)
        ticket_html = render(
            "worksheets/exit_ticket.html",
            self.proved.lesson.language,
            sheet=core,
            ticket=self.ticket,
            paper=self.page_paper,
        )
        planned = plan(self.proved, core, own)
        documents = {
            EXIT_TICKET: Document(ticket_html, master, answers=False),
            TEACHERS_PLAN: Document(plan_html(planned), master, answers=True),
        }
        looks = {EXIT_TICKET: self.look, TEACHERS_PLAN: REGULAR}
        pictures = folding_pictures(self.proved, self.folding, self.look)
        return Papers(documents, looks, pictures | plan_pictures(self.proved, planned), core)
