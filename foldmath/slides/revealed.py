"""The slides in print, one page a reveal: for rooms with a projector and no browser."""

from collections.abc import Iterator

from foldmath.drawing.legends import SAMPLES, legend_sample
from foldmath.drawing.scenes import Scene
from foldmath.drawing.sheets.folded_sheets import folded_sheet
from foldmath.lesson.proving import ProvedLesson
from foldmath.pages.pdf.paginating import PageMaster
from foldmath.pages.pdf.styles import SLIDE
from foldmath.pages.printing import Document
from foldmath.pages.templating import render
from foldmath.slides.gathering import GatherSlide
from foldmath.slides.printed import PAGE_WORDS, WHOLE_MM, SlidesInPrint, enlarged
from foldmath.slides.scenes import model_scene, opened_scene, resting_scene, turned_up
from foldmath.slides.slides import ProductSlide, Slide, StepSlide, slides
from foldmath.worksheets.worksheet import Worksheet

PICTURE_MM, BESIDE_MM = (180.0, 138.0), (136.0, 138.0)
"""The most room for a picture at the left of a page: 62 % of its width; less beside many words."""


def reveals_document(proved: ProvedLesson, sheet: Worksheet) -> SlidesInPrint:
    """Write the slides of a lesson with a page for each reveal; its style sheet is the one named ``slides``.

    Args:
        proved: the lesson.
        sheet: its core worksheet.
    """
    shown = slides(proved, sheet)
    html = render("slides/print_reveals.html", proved.lesson.language, sheet=sheet, slides=shown)
    master = PageMaster(SLIDE, proved.lesson.title, sheet.code, PAGE_WORDS)
    return SlidesInPrint(Document(html, master, answers=True), dict(_pictures(proved, shown)))


def _pictures(proved: ProvedLesson, shown: tuple[Slide, ...]) -> Iterator[tuple[str, Scene]]:
    for name in SAMPLES:
        yield f"legend-{name}", enlarged(legend_sample(name))
    yield "slide-whole", enlarged(folded_sheet(proved.states[0], None, *WHOLE_MM))
    for place, slide in enumerate(shown, start=1):
        for name, scene in _scenes(slide):
            yield f"reveal-{place}-{name}", _fitted(scene, PICTURE_MM)
            if isinstance(slide, StepSlide) and slide.row and slide.row.unequal:
                yield f"reveal-{place}-{name}-beside", _fitted(scene, BESIDE_MM)


def _scenes(slide: Slide) -> Iterator[tuple[str, Scene]]:
    """Give the pictures that a slide shows one after the other, by their names in the template."""
    if isinstance(slide, StepSlide):
        yield "before", resting_scene(slide.picture.before, slide.picture, slide.step.text)
        yield "after", resting_scene(slide.picture.after, slide.picture, slide.step.text)
        if slide.opens:
            yield "opened", opened_scene(slide.picture, slide.step.text, figures=False)
            yield "sizes", opened_scene(slide.picture, slide.step.text, figures=True)
    elif isinstance(slide, GatherSlide):
        for number, pose in enumerate(slide.poses):
            scene = pose.scene
            marks = tuple(turned_up(scene.marks, scene.height_mm))
            yield (
                str(number),
                Scene(width_mm=scene.width_mm, height_mm=scene.height_mm, marks=marks, words=scene.words),
            )
    elif isinstance(slide, ProductSlide) and slide.picture:
        words = slide.item.product.text
        yield "blank", model_scene(slide.picture, words, rows=False, columns=False)
        yield "rows", model_scene(slide.picture, words, rows=True, columns=False)
        yield "columns", model_scene(slide.picture, words, rows=True, columns=True)


def _fitted(scene: Scene, room_mm: tuple[float, float]) -> Scene:
    """Make a picture as large as its room."""
    return enlarged(scene, min(room_mm[0] / scene.width_mm, room_mm[1] / scene.height_mm))
