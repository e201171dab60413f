"""Pages in a language: takes what a page holds, gives the same with its texts said."""

from collections.abc import Iterable
from dataclasses import replace

from foldmath.lesson.booklet.plan import Content, Frame, Heading, Lines, Prompt, Table, Title
from foldmath.phrases import Said
from foldmath.words.page_texts import page_text


def told(content: Content, language: str) -> Content:
    """Say the texts of one content, those that come with the program in the language of the pages."""
    match content:
        case Title(text) | Heading(text) | Prompt(text):
            return replace(content, text=page_text(text, language))
        case Frame(caption):
            return replace(content, caption=page_text(caption, language))
        case Lines(_, answer):
            return replace(content, answer=page_text(answer, language))
        case Table(columns, rows, answers):
            return Table(
                _row(columns, language),
                tuple(_row(row, language) for row in rows),
                tuple(_row(row, language) for row in answers),
            )
        case _:
            return content


def _row(cells: Iterable[Said], language: str) -> tuple[str, ...]:
    return tuple(page_text(cell, language) for cell in cells)
