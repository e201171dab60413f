"""The papers of one lesson: which files a teacher prints, and from which document each is made."""

from collections.abc import Mapping
from dataclasses import dataclass

from foldmath.documents.exit_ticket import exit_ticket
from foldmath.documents.picture_book import SIZES, folding_pictures, item_pictures
from foldmath.documents.plan import plan, plan_html, plan_pictures
from foldmath.documents.print.pages import PageMaster
from foldmath.documents.printable import refuse_unprintable
from foldmath.documents.printing import REGULAR, Manuscript
from foldmath.documents.templating import html, render
from foldmath.documents.worksheet import Worksheet, folding_part, with_items
from foldmath.drawing.scenes import Scene
from foldmath.lesson.proving import ProvedLesson
from foldmath.statements.items import Level

EXIT_TICKET, TEACHERS_PLAN = "exit-ticket.pdf", "teacher-plan.pdf"
TEACHERS = (EXIT_TICKET, TEACHERS_PLAN)
"""The files that a class with numbers of its own needs too."""

PAGE_WORDS = "page {page} of {pages}"

SUFFIXES = {Level.GUIDED: "-guided", Level.CORE: "", Level.STRETCH: "-stretch"}
"""What a level adds to the names of its files."""


@dataclass(frozen=True)
class Papers:
    """What is printed for one lesson.

    Args:
        manuscripts: by the names of their files.
        looks: the name of each file's style sheet.
        pictures: those that they place.
        core: the worksheet of most of the class.
    """

    manuscripts: Mapping[str, Manuscript]
    looks: Mapping[str, str]
    pictures: Mapping[str, Scene]
    core: Worksheet


def papers(
    proved: ProvedLesson, page_paper: str, look: str, counts: Mapping[str, int] | None = None
) -> Papers:
    """Write the three masters of a class, their keys, the exit ticket and the teacher's plan.

    Args:
        proved: the lesson.
        page_paper: ``letter`` or ``A4``.
        look: the name of the style sheet.
        counts: how many pupils have each level; None for a class of the usual size.

    Raises:
        LessonRefused: the fonts of the pages lack letters of the lesson's words.
    """
    refuse_unprintable(proved.lesson)
    title = proved.lesson.title
    shared = folding_part(proved)
    pictures = folding_pictures(proved, shared, look)
    sheets = {level: with_items(shared, proved, level, SIZES[look].models) for level in SUFFIXES}
    ticket = exit_ticket(shared, sheets.values())
    manuscripts = {}
    for level, suffix in SUFFIXES.items():
        sheet = sheets[level]
        master = PageMaster(page_paper, title, sheet.code, PAGE_WORDS)
        manuscripts[f"worksheet{suffix}.pdf"] = Manuscript(
            html(sheet, look, key=False), master, answers=False
        )
        manuscripts[f"answer-key{suffix}.pdf"] = Manuscript(
            html(sheet, look, key=True, ticket=ticket), master, answers=True
        )
        pictures |= item_pictures(sheet, look)
    core = sheets[Level.CORE]
    plain = PageMaster(page_paper, title, core.code, PAGE_WORDS)
    ticket_html = render("exit_ticket.html", sheet=core, ticket=ticket, paper=page_paper)
    manuscripts[EXIT_TICKET] = Manuscript(ticket_html, plain, answers=False)
    teachers = plan(proved, core, counts)
    manuscripts[TEACHERS_PLAN] = Manuscript(plan_html(teachers), plain, answers=True)
    looks = {name: REGULAR if name == TEACHERS_PLAN else look for name in manuscripts}
    return Papers(manuscripts, looks, pictures | plan_pictures(proved, teachers), core)
