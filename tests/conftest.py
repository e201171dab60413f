"""Pages made once for all tests that read them: the three lessons, on letter and on A4."""

from dataclasses import dataclass
from pathlib import Path

import pytest

from foldmath.build import Made, make
from foldmath.drawing.draughtsman import Draughtsman

LESSONS = Path(__file__).parents[1] / "lessons"
NAMES = ("sail-cloth", "seed-trays", "tile-panels")
PAPERS = ("letter", "A4")


@dataclass(frozen=True)
class MadePages:
    """What was made of one lesson on one paper, and the folder it lies in."""

    name: str
    paper: str
    folder: Path
    made: Made

    @property
    def worksheet(self) -> Path:
        """The worksheet."""
        return self.folder / "worksheet.pdf"

    @property
    def key(self) -> Path:
        """The answer key."""
        return self.folder / "answer-key.pdf"


def in_silence(doing):
    """Say nothing of what is being done."""


@pytest.fixture(scope="session")
def draughtsman():
    with Draughtsman() as draughtsman:
        yield draughtsman


@pytest.fixture(scope="session")
def all_pages(tmp_path_factory, draughtsman):
    """Give every lesson's pages by the names of the lesson and the paper."""
    pages = {}
    for paper in PAPERS:
        out = tmp_path_factory.mktemp(paper)
        for name in NAMES:
            made = make(LESSONS / f"{name}.toml", out, paper, draughtsman, in_silence)
            pages[name, paper] = MadePages(name, paper, out / name, made)
    return pages


@pytest.fixture(scope="session", params=[(name, paper) for paper in PAPERS for name in NAMES], ids="-".join)
def pages(request, all_pages):
    """Give one lesson's pages on one paper, in turn."""
    return all_pages[request.param]
