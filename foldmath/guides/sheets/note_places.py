"""Places for the ruler and the notes: beside the sheet on a larger page, or where no fold line runs."""

from collections.abc import Iterator
from typing import NamedTuple

from foldmath.drawing.scenes import Spot
from foldmath.guides.pieces.check_ruler import ruler_marks
from foldmath.guides.pieces.letters import Letters
from foldmath.guides.pieces.setting import set_blocks, wrapped
from foldmath.guides.sheets.free_places import Room
from foldmath.guides.sheets.ruler_places import place_ruler
from foldmath.pages.markup.blocks import Block
from foldmath.pages.pdf.exact import ExactMark, Placed, Rectangle
from foldmath.pages.pdf.rows import Column
from foldmath.pages.pdf.styles import StyleSheet

GAP_MM = 1.6
"""Kept free round words and the ruler."""

WIDTHS_MM = (250.0, 180.0, 140.0, 100.0, 64.0, 44.0, 32.0, 24.0, 18.0)
"""The columns in which notes are tried, widest first."""

NARROWEST_BESIDE_MM = 60.0
"""Beside the sheet no column of words is narrower."""

Group = tuple[Block, ...]
"""Notes that stand together where they can."""


class Found(NamedTuple):
    """Notes in lines, and a place of their size."""

    column: Column
    place: Rectangle


def ruler_and_notes(
    room: Room, sheet: Rectangle | None, groups: tuple[Group, ...], letters: Letters
) -> Iterator[ExactMark]:
    """Set the ruler and the notes, and take their places.

    Args:
        room: of the whole page.
        sheet: where the sheet lies on a larger page; None if the page is the sheet.
        groups: of notes.
        letters: how large they are.
    """
    beside = room.without(sheet.grown(GAP_MM)) if sheet else room
    lying = place_ruler(beside, letters.ruler)
    if not beside.clear(lying.place):
        lying = place_ruler(room, letters.ruler)
    yield from ruler_marks(lying.place, lying.turned, lying.ruler)
    for taken in (room, beside):
        taken.take(lying.place.grown(GAP_MM))
    for group in groups:
        yield from _set(room, beside, group, letters.notes)


def _set(
    room: Room,
    beside: Room,
    notes: Group,
    styles: tuple[StyleSheet, ...],
    following: Rectangle | None = None,
) -> Iterator[Placed]:
    """Set notes together, or else as many of the last as there is room for, and those before them earlier.

    Args:
        room: of the page.
        beside: what of it lies beside the sheet.
        notes: in order.
        styles: to try.
        following: the place of what is read after them.
    """
    tried = ((first, limit) for limit in dict.fromkeys((following, None)) for first in range(len(notes)))
    for first, limit in tried:
        found = _note_place(room, beside, notes[first:], styles, limit)
        if found:
            break
    else:
        first = len(notes) - 1
        column, wide, high = wrapped(set_blocks(notes[first:], styles[-1]), NARROWEST_BESIDE_MM)
        found = Found(column, room.least_crossed(wide, high))
    for taken in (room, beside):
        taken.take(found.place)
    if first:
        yield from _set(room, beside, notes[:first], styles, found.place)
    yield Placed(found.column, Spot(found.place.left, found.place.bottom))


def _note_place(
    room: Room, beside: Room, notes: Group, styles: tuple[StyleSheet, ...], following: Rectangle | None
) -> Found | None:
    """Find a free place for notes: as wide as may be, and only then smaller."""
    wide = tuple(width for width in WIDTHS_MM if width >= NARROWEST_BESIDE_MM)
    for flowables in [set_blocks(notes, style) for style in styles]:
        for tried, widths in ((beside, wide), (room, WIDTHS_MM)):
            for width in widths:
                column, across, up = wrapped(flowables, width)
                place = tried.first_free(across + 2 * GAP_MM, up + 2 * GAP_MM, following)
                if place:
                    return Found(column, place.grown(-GAP_MM))
    return None
