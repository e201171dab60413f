"""The papers of one lesson: which files a teacher prints, and from which document each is made."""

from foldmath.documents.print.pages import PageMaster
from foldmath.documents.printing import Manuscript
from foldmath.documents.templating import html
from foldmath.documents.worksheet import Worksheet

PAGE_WORDS = "page {page} of {pages}"


def papers(sheet: Worksheet, page_paper: str) -> dict[str, Manuscript]:
    """Give the documents of a lesson by the names of their files."""
    master = PageMaster(page_paper, sheet.lesson.title, sheet.code, PAGE_WORDS)
    return {
        "worksheet.pdf": Manuscript(html(sheet, key=False), master, answers=False),
        "answer-key.pdf": Manuscript(html(sheet, key=True), master, answers=True),
    }
