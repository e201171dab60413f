"""Flowables that are painted in one process and placed by another."""

import pickle

import pytest
from trial_printing import MASTER

from foldmath.drawing.rendering.recording import Recording
from foldmath.pages.markup.reading import blocks_of
from foldmath.pages.page_shapes import upright
from foldmath.pages.pdf import fonts
from foldmath.pages.pdf.binding import bound
from foldmath.pages.pdf.imprinted import imprinted, under
from foldmath.pages.pdf.paginating import Copy, paged
from foldmath.pages.pdf.press import Needs
from foldmath.pages.pdf.rows import CellsInRow, Repeated
from foldmath.pages.pdf.setting import Compositor
from foldmath.pages.pdf.styles import points, style_sheet

CELL = '<th class="class-name" scope="{}"><p class="note">{}</p></th>'


def table_of(names):
    head = f'<thead><tr class="note-head-row">{CELL.format("col", "Student")}</tr></thead>'
    rows = (f'<tr class="note-row">{CELL.format("row", name)}</tr>' for name in names)
    return f"<html><body><table>{head}{''.join(rows)}</table></body></html>"


def compositor():
    none: dict[str, Recording] = {}
    return Compositor(none.__getitem__, style_sheet("regular"), "en-US", answers=True)


def file_of(flowables):
    return bound([paged([Copy(flowables, MASTER)], "en-US", 9.0)], "Key", "en-US")


@pytest.mark.parametrize("count", [1, 90])
def test_rows_painted_elsewhere_give_the_file_that_they_give_here_its_head_on_every_page(count):
    fonts.register_fonts()
    names = [f"Pupil {number}" for number in range(count)]
    here = compositor().flowables(blocks_of(table_of(names)))
    shape = upright("letter")
    room = points(shape.usable_width_mm), points(shape.usable_height_mm)
    rows = []
    for some in (names[: count // 2], names[count // 2 :]):
        _, *set_here = compositor().flowables(blocks_of(table_of(some)))
        rows += pickle.loads(pickle.dumps(imprinted(set_here, *room, "en-US")))
    (head,) = compositor().flowables(blocks_of(table_of([])))
    assert isinstance(head, CellsInRow)
    assert file_of([head, *under((Repeated(head),), rows)]) == file_of(here)


def test_what_was_needed_elsewhere_is_told_from_what_is_needed_here():
    """It is known again by its identity, which another object may have in another process."""
    needed, inner = Needs(), Needs()
    needed.add(inner)
    sent = pickle.loads(pickle.dumps(needed))
    assert vars(sent)["_known"] == {}
