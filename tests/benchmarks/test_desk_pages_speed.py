"""How soon pages are seen at the desk: the first after it is up, and those of a changed lesson.

In each benchmark's extra information stand the time within which 95 of 100 are done, and a floor; nothing
here fails for being slow.
"""

import time
from pathlib import Path

import pytest
from benchmarks.test_folding_desk_speed import told
from desk.test_attacks import ask, served

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.lesson.files.built_in import built_in_lessons
from foldmath.making import proved_lesson
from foldmath.making.previews import Preview
from foldmath.pages.page_pictures import page_picture

LESSON: Path = built_in_lessons()["seed-trays"]
DOTS_PER_INCH = 110
STARTS, ROUNDS = 5, 12


@pytest.fixture(scope="module")
def pictures():
    with PictureProcess() as process:
        Preview(*proved_lesson(LESSON), "regular", process).pdf("worksheet.pdf")
        yield process


@pytest.fixture
def timed(benchmark):
    """Give a function that times another, with a floor that is measured in the same minute."""

    def run(done, floor_name, floor, rounds=ROUNDS):
        taken = []

        def once():
            begun = time.perf_counter()
            done()
            taken.append(time.perf_counter() - begun)

        benchmark.pedantic(once, rounds=rounds, warmup_rounds=1)
        told(benchmark, taken[1:])
        begun = time.perf_counter()
        floor()
        benchmark.extra_info[f"{floor_name}, ms"] = round(1000 * (time.perf_counter() - begun), 1)

    return run


def test_the_first_page_after_the_desk_is_up(benchmark, tmp_path):
    """The shelf, with the picture of every lesson; the floor is the same page once more."""
    first, again = [], []

    def opened():
        with served(tmp_path) as (_, port, entry):
            begun = time.perf_counter()
            cookie = ask(port, "GET", entry)[2]["Set-Cookie"].partition(";")[0]
            for taken in (first, again):
                assert ask(port, "GET", "/", {"Cookie": cookie})[0] == 200
                taken.append(time.perf_counter() - begun)
                begun = time.perf_counter()

    benchmark.pedantic(opened, rounds=STARTS)
    told(benchmark, first)
    benchmark.extra_info["the same page again, ms"] = round(1000 * min(again), 1)


def test_the_visible_page_of_a_changed_lesson(timed, pictures):
    def seen():
        pdf = Preview(*proved_lesson(LESSON), "regular", pictures).pdf("worksheet.pdf")
        return page_picture(pdf, 1, DOTS_PER_INCH)

    made = Preview(*proved_lesson(LESSON), "regular", pictures).pdf("worksheet.pdf")
    timed(seen, "a picture of a page that is made", lambda: page_picture(made, 1, DOTS_PER_INCH))


def test_all_worksheets_and_keys_of_a_changed_lesson(timed, pictures):
    def made():
        preview = Preview(*proved_lesson(LESSON), "regular", pictures)
        return [preview.pdf(name) for name in preview.papers.documents]

    scenes = list(Preview(*proved_lesson(LESSON), "regular", pictures).papers.pictures.values())
    timed(made, "drawing their pictures alone", lambda: pictures.recordings(scenes).result())
