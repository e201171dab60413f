"""Setting the words of guides: takes a template, gives its flowables, drawings at exact scale among them."""

from collections.abc import Callable, Mapping
from typing import Any, NoReturn, TypeAlias

from foldmath.pages.markup.blocks import Block, Picture
from foldmath.pages.markup.reading import blocks_of
from foldmath.pages.pdf.exact import ExactDrawing
from foldmath.pages.pdf.flowables import Painted, Running
from foldmath.pages.pdf.rows import Column
from foldmath.pages.pdf.setting import Compositor
from foldmath.pages.pdf.styles import StyleSheet, points
from foldmath.pages.templating import render
from foldmath.words.languages import DEFAULT

Drawn: TypeAlias = Callable[..., ExactDrawing]
"""Draws at exact scale, once it is given ``words`` that tell what is shown."""


class GuideCompositor(Compositor):
    """Turns the blocks of guides into flowables; their pictures are drawn at exact scale.

    Args:
        drawings: by their names.
        sheet: the styles.
    """

    def __init__(self, drawings: Mapping[str, Drawn], sheet: StyleSheet) -> None:
        super().__init__(_no_picture, sheet, DEFAULT, answers=False)
        self.drawings = drawings

    def flowable(self, block: Block) -> Painted:
        """Turn one block into a flowable."""
        if not isinstance(block, Picture):
            return super().flowable(block)
        return self.drawings[block.name](words=block.words)


def _no_picture(name: str) -> NoReturn:
    raise LookupError(f"not drawn at exact scale: {name}")


def blocks(template: str, language: str, /, **told: Any) -> tuple[Block, ...]:
    """Fill a template of this room, by the name of its file, and read its blocks."""
    return blocks_of(render(f"guides/{template}.html", language, language=language, **told))


def set_blocks(
    read: tuple[Block, ...], sheet: StyleSheet, drawings: Mapping[str, Drawn] | None = None
) -> list[Painted]:
    """Turn blocks into flowables."""
    return GuideCompositor(drawings or {}, sheet).flowables(read)


def wrapped(flowables: list[Painted], width_mm: float) -> tuple[Column, float, float]:
    """Stack paragraphs in a width; give the stack, and how wide and high it then is, in mm."""
    column = Column(flowables)
    height = column.wrap(points(width_mm), 0.0)[1]
    widest = max(line.length for part in flowables if isinstance(part, Running) for line in part.lines)
    return column, widest / points(1), height / points(1)
