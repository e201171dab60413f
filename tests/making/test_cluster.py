"""Class pages laid out by a Dask cluster: the same bytes as here, also where a worker is lost midway."""

import re
import subprocess
import sys
from concurrent.futures import CancelledError

import pytest
from conftest import LESSONS, in_silence
from trial_classes import chooser_of, class_set

from foldmath import __version__
from foldmath.errors import SurroundingsFailed, Unreadable
from foldmath.lesson.roster import Pupil
from foldmath.making import Access, Order, proved_lesson
from foldmath.making.classes import Classroom, make_class, own_crew
from foldmath.making.classes.class_set import BATCH
from foldmath.making.classes.cluster import cluster_crew, keeps_names
from foldmath.statements.items import Level

distributed = pytest.importorskip("distributed", reason="the package distributed is not installed")

LESSON = LESSONS / "seed-trays.toml"
PUPILS = tuple(Pupil(f"Pupil {number}", Level.CORE) for number in range(3 * BATCH))


def begun(words, says):
    """Start a process of the cluster; give it with what it says of itself."""
    run = subprocess.Popen([sys.executable, "-m", *words], stderr=subprocess.PIPE, text=True)
    for line in run.stderr:
        found = re.search(says, line)
        if found:
            return run, found[1]
    raise AssertionError(f"{words} ended with {run.wait()}")


@pytest.fixture
def cluster():
    """Give the address of a scheduler on this machine, and its two workers."""
    here = ["--host", "127.0.0.1", "--port", "0", "--no-dashboard"]
    runs = []
    try:
        scheduler, address = begun(
            ["distributed.cli.dask_scheduler", *here], r"Scheduler at:\s+(tcp://127\.0\.0\.1:\d+)"
        )
        runs.append(scheduler)
        worker = ["distributed.cli.dask_worker", address, "--nthreads", "1", "--no-nanny", "--no-dashboard"]
        workers = [begun(worker, r"(Starting established connection)")[0] for _ in range(2)]
        runs += workers
        yield address, workers
    finally:
        for run in runs:
            run.kill()
            run.communicate()


@pytest.mark.sweep
def test_two_workers_one_of_them_killed_midway_give_the_same_bytes_as_this_machine(cluster, picture_process):
    address, workers = cluster
    proved, _ = proved_lesson(LESSON)
    with own_crew(1) as crew:
        here = class_set(chooser_of(proved, picture_process), PUPILS, crew, in_silence)
    told = []

    def kill_a_worker(ready):
        told.append(ready)
        workers[0].kill()

    with cluster_crew(address) as crew:
        assert crew.size == 2
        there = class_set(chooser_of(proved, picture_process), PUPILS, crew, kill_a_worker)
    assert there == here
    assert told == [BATCH, 2 * BATCH, 3 * BATCH]


@pytest.mark.parametrize(
    ("address", "kept"),
    [
        ("tls://scheduler.example:8786", True),
        ("tcp://127.0.0.1:8786", True),
        ("tcp://[::1]:8786", True),
        ("tcp://localhost:8786", True),
        ("tcp://10.0.0.7:8786", False),
        ("tcp://scheduler.example:8786", False),
    ],
)
def test_names_are_sent_by_tls_or_within_this_machine_only(address, kept):
    assert keeps_names(address) == kept


def test_where_names_are_not_sent_pages_carry_numbers_and_the_same_sums(tmp_path, picture_process):
    sent, beside = [], []

    class Listening:
        """An executor that hears what it is sent."""

        def submit(self, work, batch, *more):
            sent.append(batch)
            beside.append(more)
            return crew.executor.submit(work, batch, *more)

    room = Classroom("4b", (Pupil("Ada", Level.CORE), Pupil("Bo", Level.CORE)), Access.OWNER)
    path = tmp_path / "seed-trays.toml"
    path.write_text('names = ["Olu"]\n' + LESSON.read_text(encoding="utf-8"), encoding="utf-8")
    with own_crew(1) as crew:
        for knows_names in (True, False):
            others = type(crew)(Listening(), 1, knows_names)
            order = Order(out=tmp_path / str(knows_names))
            make_class(path, order, room, others, picture_process, in_silence)
    named, _, _, *to_strangers = sent
    numbered, *_ = to_strangers
    assert "Ada" in named.key_rows
    for name in ("Ada", "Olu"):
        assert name in repr(named)
        assert name not in repr((to_strangers, beside[len(beside) // 2 :]))
    for place, pages in enumerate(numbered.worksheets, start=1):
        assert f">#{place}<" in pages.parts[0].html
    assert [pages.code for pages in numbered.worksheets] == [pages.code for pages in named.worksheets]


@pytest.mark.parametrize(
    "address", ["here", "http://127.0.0.1:1", "tcp://127.0.0.1", "tcp://127.0.0.1:x", "tcp://[::1"]
)
def test_what_is_no_address_of_a_scheduler_is_refused(address):
    with pytest.raises(Unreadable, match="no address"), cluster_crew(address):
        raise AssertionError("nobody is there")
    with pytest.raises(Unreadable, match="no address"):
        keeps_names(address)


class Gone:
    """A client whose scheduler goes while it works."""

    def __enter__(self):
        return self

    def __exit__(self, *_):
        return None

    def run(self, *_, **__):
        return {"worker": __version__}

    def nthreads(self):
        return {"worker": 1}

    def get_executor(self):
        return None


@pytest.mark.parametrize("gone", [CancelledError(), distributed.KilledWorker("task", None, ())])
def test_a_cluster_that_goes_while_pages_are_laid_out_is_told_of_in_one_line(gone, monkeypatch):
    monkeypatch.setattr("foldmath.making.classes.cluster._client", lambda _: Gone())
    with pytest.raises(SurroundingsFailed, match="have gone"), cluster_crew("tcp://127.0.0.1:8786"):
        raise gone


def test_where_nobody_answers_this_is_said(monkeypatch):
    monkeypatch.setattr("foldmath.making.classes.cluster.SECONDS_TO_ANSWER", 0.5)
    with pytest.raises(SurroundingsFailed, match="no scheduler answers"), cluster_crew("tcp://127.0.0.1:9"):
        raise AssertionError("nobody is there")
