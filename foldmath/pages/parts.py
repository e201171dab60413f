"""Documents in parts: what comes again on the pages of a class is set once, and placed as often as needed."""

from collections.abc import Iterable, Iterator, Mapping
from functools import lru_cache
from itertools import groupby

from foldmath.drawing.rendering.recording import Recording
from foldmath.pages.markup.reading import blocks_of
from foldmath.pages.pdf.flowables import Painted
from foldmath.pages.pdf.rows import InColumns
from foldmath.pages.pdf.setting import Compositor
from foldmath.pages.pdf.styles import style_sheet
from foldmath.values import frozen

PARTS_KEPT = 2048
"""Most parts of a class's pages are the same; one, with its ink, is about ten kilobytes."""


@frozen
class Part:
    """A part of a document; no heading at its end needs what follows it.

    Args:
        html: blocks, by the templates.
        pictures: the names of those it places.
        in_columns: whether it stands in the columns of the page, which parts that follow each other share.
        common: whether many pages have it, most of them at the same place.
    """

    html: str
    pictures: tuple[str, ...] = ()
    in_columns: bool = False
    common: bool = False


def flowables_of(
    parts: Iterable[Part], pictures: Mapping[str, Recording], look: str, language: str
) -> Iterator[Painted]:
    """Give the flowables of a document whose answers are hidden; the same part gives the same ones again.

    Args:
        parts: of the document, in order.
        pictures: by their names.
        look: the name of the style sheet.
        language: of the document.
    """
    for in_columns, some in groupby(parts, key=lambda part: part.in_columns):
        laid = [
            flowable
            for part in some
            for flowable in _set(part, tuple(pictures[name] for name in part.pictures), look, language)
        ]
        if in_columns:
            yield InColumns(laid, style_sheet(look).columns)
        else:
            yield from laid


@lru_cache(maxsize=PARTS_KEPT)
def _set(part: Part, pictures: tuple[Recording, ...], look: str, language: str) -> tuple[Painted, ...]:
    named = dict(zip(part.pictures, pictures, strict=True))
    compositor = Compositor(named.__getitem__, style_sheet(look), language, answers=False)
    flowables = compositor.anew(blocks_of(f"<html><body>{part.html}</body></html>"))
    for flowable in flowables:
        flowable.common = part.common
    return tuple(flowables)
