"""How fast a class set is made; pages a second stand in ``extra_info``."""

from io import BytesIO

import pypdfium2
import pytest
from conftest import LESSONS, in_silence

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.lesson.roster import Pupil
from foldmath.making import proved_lesson
from foldmath.making.classes import own_crew
from foldmath.making.classes.class_set import ClassOrder, class_set
from foldmath.statements.items import Level

LEVELS = tuple(Level)


@pytest.mark.parametrize("processes", [1, 2])
def test_ninety_pupils_at_three_levels(benchmark, processes):
    proved, _ = proved_lesson(LESSONS / "seed-trays.toml")
    pupils = tuple(Pupil(f"Pupil {number}", LEVELS[number % 3]) for number in range(90))
    order = ClassOrder("letter", "regular")
    with PictureProcess() as picture_process, own_crew(processes) as crew:
        made = benchmark.pedantic(
            lambda: class_set(proved, pupils, order, crew, picture_process, in_silence),
            rounds=3,
            warmup_rounds=1,
        )
    pages = len(pypdfium2.PdfDocument(BytesIO(made.worksheets)))
    benchmark.extra_info["pages a second"] = round(pages / benchmark.stats.stats.median)
