"""Where creases will fall: the opened sheet with a band for each crease, as wide as hands are uncertain."""

from foldmath.drawing.layout import View, view_of
from foldmath.drawing.scenes import Area, Hatching, Lean, Mark, Meaning, Scene, Spot, Stroke, Tone
from foldmath.drawing.stars import star_in_corner
from foldmath.measured import as_float
from foldmath.paper.state import Sheet
from foldmath.paper.steps import Axis
from foldmath.phrases import Phrase, phrase
from foldmath.plane.polygons import box
from foldmath.tolerance.accuracy import OUTER, Accuracy, CreaseError

MARGIN_MM = 0.5

NARROWEST_BAND_MM = 3.0
"""A narrower band has no room for its hatch."""

MOST_TIMES = 10
"""No band is drawn more times wider than it is."""

SHARE_OF_PART = 0.6
"""Bands leave the rest of the narrowest part between creases white."""

LEANS = {Axis.WIDTH: Lean.RIGHT, Axis.HEIGHT: Lean.LEFT}


def crease_bands(sheet: Sheet, made: Accuracy, width_mm: float, most_height_mm: float) -> Scene:
    """Draw the opened sheet with a hatched band where each crease may fall, and a line where it is meant to.

    A band reaches two standard deviations to both sides of where the crease falls on average; it is drawn
    ``times_wider`` than that. Upright bands are hatched leaning right, level ones leaning left.

    Args:
        sheet: the opened sheet.
        made: how true its folding comes out.
        width_mm: of the picture.
        most_height_mm: the same, at most.
    """
    view = view_of(box(sheet.outline), width_mm, most_height_mm, MARGIN_MM)
    times = times_wider(sheet, made, width_mm, most_height_mm)
    outline = view.spots(sheet.outline)
    marks: list[Mark] = [Area(outline, Tone.PRINTED_SIDE)]
    for crease in made.creases:
        band = _band(crease, view, _scale(sheet, view), times, outline)
        marks += (Hatching(band, LEANS[crease.axis]), *_sides(band, crease.axis))
    marks += (_meant(crease, view, sheet) for crease in made.creases)
    marks += (Stroke(outline, Meaning.SHEET_EDGE, closed=True), star_in_corner(outline[0], outline[2]))
    return Scene(
        width_mm=view.width_mm, height_mm=view.height_mm, marks=tuple(marks), words=_words(made, times)
    )


def times_wider(sheet: Sheet, made: Accuracy, width_mm: float, most_height_mm: float) -> int:
    """Tell how many times wider than they are the bands of such a picture are drawn, up to ``MOST_TIMES``.

    As much as the narrowest band needs to be seen, and no more than lets neighbouring bands stay apart.
    """
    scale = _scale(sheet, view_of(box(sheet.outline), width_mm, most_height_mm, MARGIN_MM))
    bands = [2 * crease.error.off_mm * scale for crease in made.creases if crease.error.off_mm > 0]
    if not bands:
        return 1
    parts = [part.size_mm * scale for part in made.parts]
    wanted = -(-NARROWEST_BAND_MM // min(bands))
    room = SHARE_OF_PART * min(parts) // max(bands)
    return int(max(1, min(wanted, room, MOST_TIMES)))


def _scale(sheet: Sheet, view: View) -> float:
    """Give how many mm of the picture one mm of the sheet takes."""
    return view.scale / as_float(sheet.unit_mm)


def _band(
    crease: CreaseError, view: View, scale: float, times: int, outline: tuple[Spot, ...]
) -> tuple[Spot, ...]:
    """Give the corners of a band, kept inside the sheet."""
    (left, bottom), _, (right, top), _ = outline
    low, high = (left, right) if crease.axis is Axis.WIDTH else (bottom, top)
    reach = OUTER * crease.error.sd_mm
    middle = view.margin_mm + crease.at_mm * scale
    start = max(low, middle + (crease.error.mean_mm - reach) * scale * times)
    end = min(high, middle + (crease.error.mean_mm + reach) * scale * times)
    if crease.axis is Axis.WIDTH:
        return Spot(start, bottom), Spot(end, bottom), Spot(end, top), Spot(start, top)
    return Spot(left, start), Spot(right, start), Spot(right, end), Spot(left, end)


def _sides(band: tuple[Spot, ...], axis: Axis) -> list[Mark]:
    one, two, three, four = band
    sides = ((one, four), (two, three)) if axis is Axis.WIDTH else ((one, two), (four, three))
    return [Stroke(side, Meaning.CREASE) for side in sides]


def _meant(crease: CreaseError, view: View, sheet: Sheet) -> Stroke:
    outline = view.spots(sheet.outline)
    (left, bottom), _, (right, top), _ = outline
    place = view.margin_mm + crease.at_mm * _scale(sheet, view)
    if crease.axis is Axis.WIDTH:
        return Stroke((Spot(place, bottom), Spot(place, top)), Meaning.OUTLINE)
    return Stroke((Spot(left, place), Spot(right, place)), Meaning.OUTLINE)


def _words(made: Accuracy, times: int) -> Phrase:
    if not made.creases:
        return phrase("The opened sheet, without creases whose places can be told.")
    widest = max(crease.error.off_mm for crease in made.creases)
    told = {"reach": f"{widest:.1f}", "times": times}
    if times > 1:
        return phrase(
            "Bands show where creases may fall, drawn {times} times as wide; the widest reaches {reach} mm "
            "from its line.",
            **told,
        )
    return phrase("Bands show where creases may fall; the widest reaches {reach} mm from its line.", **told)
