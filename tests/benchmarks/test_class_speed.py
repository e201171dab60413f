"""How fast a class set is made; pages a second stand in ``extra_info``."""

from io import BytesIO
from itertools import count

import pypdfium2
import pytest
from conftest import LESSONS, in_silence

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.lesson.roster import Pupil
from foldmath.making import Access, Order, proved_lesson
from foldmath.making.classes import Classroom, make_class, own_crew
from foldmath.making.classes.class_set import class_set
from foldmath.making.order import ClassOrder
from foldmath.statements.items import Level

LEVELS = tuple(Level)
LESSON = LESSONS / "seed-trays.toml"


@pytest.mark.parametrize("processes", [1, 2])
def test_ninety_pupils_at_three_levels(benchmark, processes):
    proved, _ = proved_lesson(LESSON)
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


@pytest.mark.parametrize("processes", [1, 2])
def test_ten_classes_of_thirty(benchmark, processes, tmp_path):
    """Whole sets, each with its plan, ticket, slides and guide sheets: what a school asks for at once."""
    rooms = [
        Classroom(
            f"{number}a", tuple(Pupil(f"Pupil {one}", LEVELS[one % 3]) for one in range(30)), Access.OWNER
        )
        for number in range(10)
    ]
    runs = count()

    def made():
        order = Order(out=tmp_path / str(next(runs)))
        return [make_class(LESSON, order, room, crew, picture_process, in_silence) for room in rooms]

    with PictureProcess() as picture_process, own_crew(processes) as crew:
        sets = benchmark.pedantic(made, rounds=2)
    worksheets = [path for each in sets for path in each.files if path.name == "class-worksheets.pdf"]
    pages = sum(len(pypdfium2.PdfDocument(path)) for path in worksheets)
    benchmark.extra_info["pupils' pages a second"] = round(pages / benchmark.stats.stats.median)
