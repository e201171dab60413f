"""A page's blocks as the words that are read on it, one after the other: to hold other renderings to them."""

from collections.abc import Iterable, Iterator

from foldmath.pages.markup.blocks import (
    Block,
    Box,
    Columns,
    LineBreak,
    NewPage,
    Paragraph,
    Picture,
    Row,
    Run,
    Stack,
    Text,
    Together,
    WritingLines,
)

BLANK = "□"


def words_of(blocks: Iterable[Block], *, answers: bool) -> list[str]:
    """Give words and signs in the order in which they are read; a fraction is one, such as ``2/□``."""
    return " ".join(_read(blocks, answers)).split()


def fractions_of(blocks: Iterable[Block], *, answers: bool) -> list[str]:
    """Give only the fractions, in order."""
    return [word for word in words_of(blocks, answers=answers) if "/" in word]


def _read(blocks: Iterable[Block], answers: bool) -> Iterator[str]:
    for block in blocks:
        match block:
            case Paragraph():
                yield "".join(_run(run, answers) for run in block.runs)
            case WritingLines():
                yield "".join(_run(run, answers) for run in block.answer) if answers else ""
            case Row():
                for cell in block.cells:
                    yield from _read(cell.blocks, answers)
            case Together() | Columns():
                yield from _read(block.blocks, answers)
            case Picture() | NewPage():
                pass


def _run(run: Run, answers: bool) -> str:
    match run:
        case Text():
            return run.text
        case LineBreak():
            return " "
        case Box():
            return f" {run.answer} " if answers or run.given else " "
        case Stack():
            above, below = (
                "".join(
                    (_run(part, answers).strip() or BLANK) if isinstance(part, Box) else _run(part, answers)
                    for part in level
                )
                for level in (run.above, run.below)
            )
            return f" {''.join(above.split())}/{''.join(below.split())} "
