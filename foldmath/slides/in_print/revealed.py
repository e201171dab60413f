"""The slides in print, one page a reveal: for rooms with a projector and no browser."""

from dataclasses import replace

from foldmath.drawing.scenes import Scene
from foldmath.slides.gathering import GatherSlide
from foldmath.slides.in_print.documents import Pictures, SlidesInPrint, enlarged, in_print
from foldmath.slides.in_print.scenes import model_scene, opened_scene, resting_scene, turned_up
from foldmath.slides.slides import ProductSlide, Slide, SlideShow, StepSlide

PICTURE_MM, BESIDE_MM = (180.0, 138.0), (136.0, 138.0)
"""The most room for a picture at the left of a page: 62 % of its width; less beside many words."""


def reveals_document(show: SlideShow) -> SlidesInPrint:
    """Write the slides of a lesson with a page for each reveal."""
    return in_print("slides/print_reveals.html", show, _pictures)


def _pictures(place: int, slide: Slide) -> Pictures:
    for name, scene in _scenes(slide):
        yield f"reveal-{place}-{name}", _fitted(scene, PICTURE_MM)
        if isinstance(slide, StepSlide) and slide.row and slide.row.unequal:
            yield f"reveal-{place}-{name}-beside", _fitted(scene, BESIDE_MM)


def _scenes(slide: Slide) -> Pictures:
    """Give the pictures that a slide shows one after the other, by their names in the template."""
    if isinstance(slide, StepSlide):
        yield "before", resting_scene(slide.picture.before, slide.picture)
        yield "after", resting_scene(slide.picture.after, slide.picture)
        if slide.opens:
            yield "opened", opened_scene(slide.picture, figures=False)
            yield "sizes", opened_scene(slide.picture, figures=True)
    elif isinstance(slide, GatherSlide):
        for number, pose in enumerate(slide.poses):
            marks = tuple(turned_up(pose.scene.marks, pose.scene.height_mm))
            yield str(number), replace(pose.scene, marks=marks)
    elif isinstance(slide, ProductSlide) and slide.picture:
        yield "blank", model_scene(slide.picture, rows=False, columns=False)
        yield "rows", model_scene(slide.picture, rows=True, columns=False)
        yield "columns", model_scene(slide.picture, rows=True, columns=True)


def _fitted(scene: Scene, room_mm: tuple[float, float]) -> Scene:
    """Make a picture as large as its room."""
    return enlarged(scene, min(room_mm[0] / scene.width_mm, room_mm[1] / scene.height_mm))
