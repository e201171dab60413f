"""Two processes lay out the pages of a lesson: one from the first document on, the other from the last."""

import subprocess
import sys
from concurrent.futures import Future

import pytest
from trial_printing import MASTER

from foldmath.pages.looks import REGULAR
from foldmath.pages.printing import Document
from foldmath.pages.sharing import Printing, printed_by_both

NAMES = ("first", "second", "third", "fourth")


def printing(name: str) -> Printing:
    document = Document(f"<html><body><h1>{name}</h1></body></html>", MASTER, answers=False)
    return Printing(document=document, pictures={}, title=name, language="en-US", look=REGULAR)


class Other:
    """A process that is at the first so many documents, and gets to no more of them."""

    def __init__(self, begun: int) -> None:
        self.begun, self.given = begun, []

    def submit(self, work):
        future: Future[bytes] = Future()
        if len(self.given) < self.begun:
            future.set_running_or_notify_cancel()
        self.given.append(work)
        return future


@pytest.mark.parametrize("begun", range(5))
def test_what_the_other_process_has_not_begun_is_printed_here(begun):
    made = printed_by_both({name: printing(name) for name in NAMES}, Other(begun))
    assert list(made) == list(NAMES)
    assert [isinstance(content, bytes) for content in made.values()] == [place >= begun for place in range(4)]


def test_a_document_is_the_same_whichever_process_prints_it(picture_process):
    for name in NAMES:
        assert picture_process.submit(printing(name).printed).result() == printing(name).printed()


PRINTS = """
import sys
from foldmath.pages.sharing import fetch_press
fetch_press()
print([name for name in ("reportlab", "reportlab.platypus", "sympy") if name in sys.modules])
"""


def test_to_print_no_exact_numbers_are_fetched_and_of_reportlab_only_what_writes_files():
    fetched = subprocess.run(
        [sys.executable, "-c", PRINTS], capture_output=True, text=True, check=True
    ).stdout
    assert fetched == "['reportlab']\n"
