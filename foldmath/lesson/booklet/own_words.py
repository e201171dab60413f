"""What the author of a lesson wrote on a page of its booklet: takes the page, gives the words."""

from collections.abc import Iterator
from typing import assert_never

from foldmath.lesson.booklet.plan import (
    Content,
    CreasesPicture,
    FoldPicture,
    Frame,
    Game,
    Heading,
    Lines,
    ModelPicture,
    NumberLine,
    PlannedPage,
    Prompt,
    RecordFold,
    RecordProduct,
    SheetPicture,
    Story,
    Table,
    Title,
)
from foldmath.phrases import Said


def own_words(page: PlannedPage) -> Iterator[Said]:
    """Give the words of a page's contents, without empty ones."""
    return (words for content in page.contents for words in _words(content) if words)


def _words(content: Content) -> Iterator[Said]:
    match content:
        case Title(text) | Heading(text) | Prompt(text) | Frame(text):
            yield text
        case Lines(_, answer):
            yield answer
        case Table(columns, rows, answers):
            yield from columns
            for row in (*rows, *answers):
                yield from row
        case (
            CreasesPicture()
            | SheetPicture()
            | NumberLine()
            | Story()
            | Game()
            | RecordFold()
            | RecordProduct()
            | FoldPicture()
            | ModelPicture()
        ):
            return
        case _:
            assert_never(content)
