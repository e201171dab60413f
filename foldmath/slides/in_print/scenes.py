"""The pictures of the slides as scenes for print: the same marks, heights counted from the bottom.

What each shows is said by the templates of the slides.
"""

from collections.abc import Iterable, Iterator

from foldmath.drawing.scenes import Area, Figure, Mark, Meaning, Scene, Spot, Star, Stroke, Tone
from foldmath.drawing.stars import SLIDE_STAR_MM
from foldmath.slides.models import ModelPicture
from foldmath.slides.motion.flaps import Face
from foldmath.slides.pictures import Resting, StepPicture


def resting_scene(paper: Resting, picture: StepPicture) -> Scene:
    """Give the paper as it lies, in the frame that all pictures of its step share."""
    marks: list[Mark] = [Stroke(paper.whole, Meaning.WHOLE, closed=True)]
    for flap in paper.flaps:
        marks += _face(flap.faces[0])
    marks += [Star(_middle(paper.hollow), SLIDE_STAR_MM, hollow=True)] if paper.hollow else []
    marks += paper.marks
    return _scene(marks, picture)


def opened_scene(picture: StepPicture, *, figures: bool) -> Scene:
    """Give the opened sheet, with or without its fractions."""
    sheet = picture.opened
    assert sheet is not None
    marks: list[Mark] = [Area(sheet.outline, Tone.PRINTED_SIDE)]
    creases = sheet.creases
    for lines, meaning in (
        (creases.valley, Meaning.VALLEY),
        (creases.mountain, Meaning.MOUNTAIN),
        (creases.cut, Meaning.CUT),
    ):
        marks += (Stroke(line, meaning) for line in lines)
    marks += [
        Stroke(sheet.outline, Meaning.SHEET_EDGE, closed=True),
        Star(_middle(sheet.star), SLIDE_STAR_MM),
    ]
    if figures:
        marks += sheet.figures
        for label in sheet.beside:
            marks += (Stroke(line, Meaning.CREASE) for line in label.lines)
            marks.append(label.figure)
    return _scene(marks, picture)


def model_scene(picture: ModelPicture, *, rows: bool, columns: bool) -> Scene:
    """Give the sheets of a product, as far as they are shaded."""
    marks: list[Mark] = []
    for model in picture.models:
        marks.append(Area(model.outline, Tone.PRINTED_SIDE))
        hatches = (*(model.rows if rows else ()), *(model.columns if columns else ()))
        marks += (Stroke(line, Meaning.HATCH) for line in hatches)
        marks += (Stroke(line, Meaning.GRID) for line in model.grid)
        marks += [Stroke(model.outline, Meaning.OUTLINE, closed=True), model.star]
    return Scene(
        width_mm=picture.width,
        height_mm=picture.height,
        marks=tuple(turned_up(marks, picture.height)),
        words="",
    )


def _face(face: Face) -> Iterator[Mark]:
    tone = Tone.PRINTED_SIDE if face.printed else Tone.BACK_SIDE
    yield from (Area(outline, tone) for outline in face.outlines)
    yield from (Stroke(line, Meaning.HATCH) for line in face.hatches)
    yield from (Stroke(line, Meaning.CREASE) for line in face.creases)
    yield from (Stroke(line, Meaning.CUT) for line in face.cuts)
    yield from (Stroke(outline, Meaning.SHEET_EDGE, closed=True) for outline in face.outlines)
    if face.star:
        yield Star(_middle(face.star), SLIDE_STAR_MM)


def _middle(corners: tuple[Spot, ...]) -> Spot:
    return Spot(sum(x for x, _ in corners) / len(corners), sum(y for _, y in corners) / len(corners))


def _scene(marks: Iterable[Mark], picture: StepPicture) -> Scene:
    left, right = picture.aside
    return Scene(
        width_mm=left + picture.width + right,
        height_mm=picture.height,
        marks=tuple(turned_up(marks, picture.height, left)),
        words="",
    )


def turned_up(marks: Iterable[Mark], height: float, aside: float = 0) -> Iterator[Mark]:
    """Count the heights of marks from the bottom, and their places from the left of the room beside."""
    for mark in marks:
        match mark:
            case Figure(middle, numerator, denominator, size):
                yield Figure(Spot(middle.x + aside, height - middle.y), numerator, denominator, size)
            case Star(middle, radius, hollow):
                yield Star(Spot(middle.x + aside, height - middle.y), radius, hollow)
            case Stroke(spots, meaning, closed, bends):
                yield Stroke(_up(spots, height, aside), meaning, closed, bends)
            case Area(spots, tone):
                yield Area(_up(spots, height, aside), tone)
            case _:
                raise TypeError(f"no slide draws {mark!r}")


def _up(spots: Iterable[Spot], height: float, aside: float) -> tuple[Spot, ...]:
    return tuple(Spot(x + aside, height - y) for x, y in spots)
