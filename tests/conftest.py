"""Pages made once for all tests that read them: the three lessons, on letter and on A4."""

import gc
import os
import pickle
from dataclasses import dataclass
from itertools import product
from pathlib import Path

import pytest
from chromium import started_chromium
from hypothesis import HealthCheck, settings
from lessons_in_words import sheet_at

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.making import Made, Order, make
from foldmath.making.classes import own_crew
from foldmath.making.papers import SUFFIXES
from foldmath.making.sets.turns import turn
from foldmath.statements.items import Level
from foldmath.worksheets.worksheet import Worksheet

# How long an example takes says how busy the machine is; speed is measured in the benchmarks.
UNTIMED = settings(deadline=None, suppress_health_check=[HealthCheck.too_slow])
# A run fails for what was changed, and not by the luck of its draw; others are drawn by --hypothesis-profile.
settings.register_profile("alike", UNTIMED, derandomize=True, database=None)
settings.register_profile("fresh", UNTIMED, derandomize=False)
settings.load_profile("alike")

LESSONS = Path(__file__).parents[1] / "lessons"
NAMES = ("sail-cloth", "seed-trays", "tile-panels")
PAPERS = ("letter", "A4")
FILES = (
    *(f"{what}{suffix}.pdf" for suffix in SUFFIXES.values() for what in ("worksheet", "answer-key")),
    "exit-ticket.pdf",
    "teacher-plan.pdf",
)
"""Every file that is printed of a lesson."""


@dataclass(frozen=True)
class MadePages:
    """What was made of one lesson on one paper, and the folder it lies in."""

    name: str
    paper: str
    folder: Path
    made: Made

    @property
    def ticket(self) -> Path:
        """The exit ticket."""
        return self.folder / "exit-ticket.pdf"

    @property
    def plan(self) -> Path:
        """The teacher's plan."""
        return self.folder / "teacher-plan.pdf"

    def at(self, level: Level) -> "LevelPages":
        """Give the pages of one level."""
        return LevelPages(self, level)


@dataclass(frozen=True)
class LevelPages:
    """The worksheet and the key of one level."""

    pages: MadePages
    level: Level

    @property
    def worksheet(self) -> Path:
        """The worksheet."""
        return self.pages.folder / f"worksheet{SUFFIXES[self.level]}.pdf"

    @property
    def key(self) -> Path:
        """The answer key."""
        return self.pages.folder / f"answer-key{SUFFIXES[self.level]}.pdf"

    @property
    def sheet(self) -> Worksheet:
        """What the worksheet says."""
        return sheet_at(self.level, self.pages.made.proved)


def in_silence(doing):
    """Say nothing of what is being done."""


def printed_here(printing, process):
    """Print a document in this process alone, where a test listens, or has laid something beside."""
    return printing.printed(process.recordings([*printing.scenes.values()]).result())


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_auto_num_workers():
    """Take two processes for each core: many a test waits for a browser or for a program that it runs."""
    return 2 * (os.cpu_count() or 1)


def pytest_ignore_collect(collection_path, config):
    """Leave the benchmarks out, and all that they import, but where they are asked for."""
    return True if collection_path.name == "benchmarks" and not config.getoption("benchmark_only") else None


def pytest_addoption(parser):
    """Let the whole of the sweeps be chosen, or the rest: what does not run every day."""
    parser.addoption(
        "--sweeps", choices=("daily", "rest", "all"), default="daily", help="what of the sweeps to run"
    )


def pytest_collection_modifyitems(config, items):
    """Take of each sweep what is chosen; every other test runs every day."""
    chosen = config.getoption("--sweeps")
    if chosen == "all":
        return
    taken, left = [], []
    for item in items:
        (taken if (chosen == "daily") is runs_daily(item) else left).append(item)
    config.hook.pytest_deselected(items=left)
    items[:] = taken


def pytest_collection_finish():
    """Keep what was collected, ten thousand statements, out of every later search for garbage."""
    gc.collect()
    gc.freeze()


def runs_daily(item):
    """Tell whether a test is no sweep, or one of those that its sweep names."""
    sweep = item.get_closest_marker("sweep")
    return sweep is None or (hasattr(item, "callspec") and item.callspec.id in sweep.args)


@pytest.fixture(scope="session")
def chromium():
    """Give a real Chromium, one for all tests of a process: playwright cannot be started twice in one."""
    with started_chromium() as browser:
        yield browser


@pytest.fixture(scope="session")
def picture_process():
    with PictureProcess() as picture_process:
        yield picture_process


@pytest.fixture(scope="session")
def crew():
    with own_crew(1) as crew:
        yield crew


@pytest.fixture(scope="session")
def once(tmp_path_factory):
    """Give what makes something once for all processes that run tests: in a folder of its own."""
    own = tmp_path_factory.getbasetemp()
    whole = own.parent if "PYTEST_XDIST_WORKER" in os.environ else own

    def made(name, make_in):
        folder, kept = whole / name, whole / f"{name}.pickle"
        with turn(kept):
            if not kept.exists():
                folder.mkdir()
                kept.write_bytes(pickle.dumps(make_in(folder)))
        return pickle.loads(kept.read_bytes())

    return made


@pytest.fixture(scope="session")
def all_pages(once, picture_process):
    """Give every lesson's pages by the names of the lesson and the paper."""

    def pages_in(folder):
        pages = {}
        for name, paper in product(NAMES, PAPERS):
            order = Order(out=folder / paper, paper=paper)
            made = make(LESSONS / f"{name}.toml", order, picture_process, in_silence)
            pages[name, paper] = MadePages(name, paper, folder / paper / name, made)
        return pages

    return once("pages", pages_in)


@pytest.fixture(scope="session", params=[(name, paper) for paper in PAPERS for name in NAMES], ids="-".join)
def pages(request, all_pages):
    """Give one lesson's pages on one paper, in turn."""
    return all_pages[request.param]


@pytest.fixture(scope="session", params=list(Level), ids=lambda level: level.value)
def leveled(request, pages):
    """Give the worksheet and the key of one level, in turn."""
    return pages.at(request.param)
