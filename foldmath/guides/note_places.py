"""Places for the ruler and the notes: beside the sheet on a larger page, or where no fold line runs."""

from collections.abc import Iterator

from foldmath.guides.check_ruler import place_ruler, ruler_marks
from foldmath.guides.free_places import Room
from foldmath.guides.lettering import Block, Note, block
from foldmath.guides.marks import Place
from foldmath.pages.pdf.exact import ExactMark

GAP_MM = 1.6
"""Kept free round words and the ruler."""

WIDTHS_MM = (250.0, 180.0, 140.0, 100.0, 64.0, 44.0, 32.0, 24.0, 18.0)
"""The columns in which notes are tried, widest first."""

NARROWEST_BESIDE_MM = 60.0
"""Beside the sheet no column of words is narrower."""

SMALLEST_PT = 7.0


def ruler_and_notes(
    room: Room, sheet: Place | None, notes: tuple[tuple[Note, ...], ...]
) -> Iterator[ExactMark]:
    """Set the ruler and the notes, and take their places.

    Args:
        room: of the whole page.
        sheet: where the sheet lies on a larger page; None if the page is the sheet.
        notes: in groups that stand together where they can.
    """
    beside = room.without(sheet.grown(GAP_MM)) if sheet else room
    place, turned = place_ruler(beside)
    if not beside.clear(place):
        place, turned = place_ruler(room)
    yield from ruler_marks(place, turned)
    for taken in (room, beside):
        taken.take(place.grown(GAP_MM))
    for group in notes:
        yield from _set(room, beside, group)


def _set(room: Room, beside: Room, notes: tuple[Note, ...]) -> Iterator[ExactMark]:
    """Set notes together, or else each where there is room for it."""
    found = _note_place(room, beside, notes)
    if not found and len(notes) > 1:
        for note in notes:
            yield from _set(room, beside, (note,))
        return
    if not found:
        small = block(_shrunk(notes), NARROWEST_BESIDE_MM)
        found = small, room.least_crossed(small.width_mm, small.height_mm)
    lines, place = found
    for taken in (room, beside):
        taken.take(place)
    yield from lines.marks(place)


def _note_place(room: Room, beside: Room, notes: tuple[Note, ...]) -> tuple[Block, Place] | None:
    """Find a free place for notes: as wide as may be, and only then smaller."""
    wide = tuple(width for width in WIDTHS_MM if width >= NARROWEST_BESIDE_MM)
    for sized in (notes, _shrunk(notes)):
        for tried, widths in ((beside, wide), (room, WIDTHS_MM)):
            for lines in (block(sized, width) for width in widths):
                place = tried.first_free(lines.width_mm + 2 * GAP_MM, lines.height_mm + 2 * GAP_MM)
                if place:
                    return lines, place.grown(-GAP_MM)
    return None


def _shrunk(notes: tuple[Note, ...]) -> tuple[Note, ...]:
    return tuple(Note(note.text, SMALLEST_PT, note.bold) for note in notes)
