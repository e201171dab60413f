"""A few of the kills that ``kills.py`` deals out by the hundred."""

import json
import subprocess
import sys

import pytest
from conftest import LESSONS
from robustness import killed_placing, kills

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="finds the processes of a run in /proc")


@pytest.mark.parametrize("way", ["exchange", "rename"])
def test_a_set_that_is_killed_at_any_step_of_placing_it_is_whole_and_its_folder_is_cleared_by_the_next(
    way, tmp_path
):
    command = [sys.executable, killed_placing.__file__, str(tmp_path), way, "steps"]
    done = subprocess.run(command, capture_output=True, text=True, env=kills.environment(""), check=False)
    assert done.stderr == ""
    assert json.loads(done.stdout) > 60


@pytest.mark.sweep
def test_runs_that_are_killed_or_asked_to_end_leave_whole_sets_and_no_processes(tmp_path):
    counts = dict(kills.all_of(seed=1, kills=3, signals=3, placings=4, folder=tmp_path))
    assert {name: count.told() for name, count in counts.items() if count.faults} == {}
    assert [count.runs for count in counts.values()] == [3, 3, 4, 4]


def test_the_processes_of_a_run_are_found():
    with kills.marked() as mark:
        command = [sys.executable, "-m", "foldmath", "make", str(LESSONS / "no-such.toml")]
        waiting = [sys.executable, "-c", "import time; time.sleep(60)"]
        with subprocess.Popen(waiting, env=kills.environment(mark)) as run:
            assert kills.processes_of(mark) == [run.pid]
            run.kill()
        subprocess.run(command, env=kills.environment(mark), capture_output=True, check=False)
        assert kills.left_of(mark) == []
