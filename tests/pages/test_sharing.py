"""Two processes lay out the pages of a lesson: one from the first document on, the other from the last."""

import pickle
import subprocess
import sys
from concurrent.futures import Future

import pytest
from conftest import LESSONS

from foldmath.pages.looks import REGULAR
from foldmath.pages.page_shapes import upright
from foldmath.pages.sharing import WORTH_HELPING, Printing, begin, gathered
from foldmath.pages.written import Written

NAMES = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh")


def printing(name: str) -> Printing:
    written = Written(
        html=f"<html><body><h1>{name}</h1></body></html>",
        shape=upright("letter"),
        footer="A trial",
        code="AAAAA",
        answers=False,
    )
    return Printing(written=written, scenes={}, title=name, language="en-US", look=REGULAR)


class Other:
    """A process that comes to documents, in turn, when it is told to."""

    def __init__(self) -> None:
        self.given: list[Future[bytes]] = []
        self.drawn = 0

    def submit(self, _):
        self.given.append(Future())
        return self.given[-1]

    def recordings(self, scenes):
        self.drawn += 1
        future = Future()
        future.set_result(list(scenes))
        return future

    def come_to(self, count):
        for future in [one for one in self.given if not one.done()][:count]:
            future.set_running_or_notify_cancel()
            future.set_result(b"printed there")
        return b"done meanwhile"


@pytest.mark.parametrize(("first", "then"), [(0, 0), (0, 5), (1, 0), (1, 1), (1, 5), (7, 0)])
def test_what_the_other_process_has_not_come_to_is_printed_here(first, then):
    other = Other()
    begun = {name: begin(printing(name), other) for name in NAMES}
    other.come_to(first)
    made = gathered(begun | {"own": lambda: other.come_to(then)})
    assert list(made) == [*NAMES, "own"]
    assert made.pop("own") == b"done meanwhile"
    there = [content == b"printed there" for content in made.values()]
    assert there == [place < first + then for place in range(7)]


@pytest.mark.parametrize("waiting", [WORTH_HELPING - 1, WORTH_HELPING])
def test_a_few_documents_are_left_to_the_process_that_has_fetched_what_prints(waiting):
    other = Other()
    begun = {name: begin(printing(name), other) for name in NAMES[:waiting]}
    made = gathered(begun | {"own": lambda: other.come_to(waiting)})
    assert {*made.values()} == {b"printed there", b"done meanwhile"}
    assert other.drawn == (waiting if waiting == WORTH_HELPING else 0)


def test_files_that_are_there_or_come_by_themselves_keep_their_place():
    coming: Future[bytes] = Future()
    coming.set_result(b"a picture")
    assert gathered({"page": b"written", "picture": coming, "own": lambda: b"own"}) == {
        "page": b"written",
        "picture": b"a picture",
        "own": b"own",
    }


def test_a_document_is_the_same_whichever_process_prints_it(picture_process):
    for name in NAMES:
        there = picture_process.submit(printing(name).drawn_and_printed).result()
        assert there == printing(name).printed([])


PRINTS = """
import pickle, sys
from foldmath.pages.printing_process import fetch_press
fetch_press()
pickle.load(sys.stdin.buffer).drawn_and_printed()
print([name for name in ("reportlab", "reportlab.platypus", "foldmath.plane.numbers") if name in sys.modules])
"""


def test_to_print_no_exact_numbers_are_fetched_and_of_reportlab_only_what_writes_files():
    fetched = subprocess.run(
        [sys.executable, "-c", PRINTS], capture_output=True, input=pickle.dumps(printing("first")), check=True
    ).stdout
    assert fetched == b"['reportlab']\n"


WRITES = """
import sys
from pathlib import Path
from foldmath.making.order import proved_lesson
from foldmath.making.papers import papers
papers(proved_lesson(Path(sys.argv[1]))[0], "letter", "regular").documents
names = ("jinja2", "foldmath.pages.pdf.paginating", "foldmath.pages.pdf.fonts")
print([name for name in names if name in sys.modules])
"""


def test_to_write_pages_nothing_is_fetched_that_prints_them():
    fetched = subprocess.run(
        [sys.executable, "-c", WRITES, str(LESSONS / "seed-trays.toml")], capture_output=True, check=True
    ).stdout
    assert fetched == b"['jinja2']\n"
