"""How fast a class set is made; pages a second, and their share of a floor, stand in ``extra_info``."""

import gc
import time
from concurrent.futures import Executor, Future
from io import BytesIO
from itertools import count
from statistics import median

import pypdfium2
import pytest
from conftest import LESSONS, in_silence
from reportlab.pdfgen.canvas import Canvas
from trial_classes import chooser_of, class_set

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.lesson.roster import Pupil
from foldmath.making import Access, Order, proved_lesson
from foldmath.making.classes import Classroom, Crew, make_class, own_crew
from foldmath.making.classes.crew import leave_garbage
from foldmath.statements.items import Level

LEVELS = tuple(Level)
LESSON = LESSONS / "seed-trays.toml"


@pytest.mark.parametrize("processes", [1, 2])
def test_ninety_pupils_at_three_levels(benchmark, processes):
    proved, _ = proved_lesson(LESSON)
    pupils = tuple(Pupil(f"Pupil {number}", LEVELS[number % 3]) for number in range(90))
    with PictureProcess() as picture_process, own_crew(processes) as crew:
        made = benchmark.pedantic(
            lambda: class_set(chooser_of(proved, picture_process), pupils, crew, in_silence),
            rounds=3,
            warmup_rounds=1,
        )
    pages = len(pypdfium2.PdfDocument(BytesIO(made.worksheets)))
    benchmark.extra_info["pages a second"] = round(pages / benchmark.stats.stats.median)


class AtOnce(Executor):
    """Does at once, in this process, what it is given: so all processor time is counted here."""

    def submit(self, work, /, *given, **named):
        done = Future()
        done.set_result(work(*given, **named))
        return done


def bare_canvas(pages):
    """Write 40 lines of 70 letters and 30 boxes a page straight on a canvas: a floor for any page of text."""
    canvas = Canvas(BytesIO())
    for _ in range(pages):
        canvas.setFont("Helvetica", 11)
        for line in range(40):
            canvas.drawString(50, 750 - line * 17, "x" * 70)
        for box in range(30):
            canvas.rect(50 + box * 10, 30, 8, 8)
        canvas.showPage()
    canvas.save()


def seconds(work, clock=time.process_time):
    begun = clock()
    work()
    return clock() - begun


@pytest.fixture
def as_in_a_crew():
    """Leave garbage in this process as the processes of a crew leave it."""
    leave_garbage()
    yield
    gc.enable()
    gc.unfreeze()


@pytest.mark.usefixtures("as_in_a_crew")
@pytest.mark.parametrize("again", [False, True], ids=["another class each time", "the same class again"])
def test_pages_and_key_of_240_pupils_beside_a_bare_canvas(benchmark, again):
    """What a process has made before it need not set again: nobody makes a class twice, so both are told."""
    proved, _ = proved_lesson(LESSON)
    rounds, ratios = count(), []

    def made(name):
        pupils = tuple(Pupil(f"{name} {number}", LEVELS[number % 3]) for number in range(240))
        return class_set(chooser_of(proved, picture_process), pupils, Crew(AtOnce(), 1), in_silence)

    def both():
        name = "Pupil" if again else f"Pupil {next(rounds)}"
        floor = seconds(lambda: bare_canvas(240))
        own = seconds(lambda: made(name))
        ratios.append((floor + seconds(lambda: bare_canvas(240))) / own)

    with PictureProcess() as picture_process:
        made("Pupil")
        benchmark.pedantic(both, rounds=5)
    benchmark.extra_info["of a bare canvas's pages a second of processor time"] = round(median(ratios), 2)


def test_pages_and_key_of_480_pupils_on_two_processes_beside_a_bare_canvas_on_one(benchmark):
    """By the clock of a machine that does nothing else, before and after the class in the same minute."""
    proved, _ = proved_lesson(LESSON)
    rounds, ratios = count(), []

    def made(name, number=480):
        pupils = tuple(Pupil(f"{name} {number}", LEVELS[number % 3]) for number in range(number))
        return class_set(chooser_of(proved, picture_process), pupils, crew, in_silence)

    def both():
        floor = seconds(lambda: bare_canvas(480), time.perf_counter)
        own = seconds(lambda: made(f"Pupil {next(rounds)}"), time.perf_counter)
        ratios.append((floor + seconds(lambda: bare_canvas(480), time.perf_counter)) / own)

    with PictureProcess() as picture_process, own_crew(2) as crew:
        made("Pupil", 48)
        benchmark.pedantic(both, rounds=5)
    benchmark.extra_info["of a bare canvas's pages a second by the clock"] = round(median(ratios), 2)


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
