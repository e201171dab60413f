"""Processes that help end with the one that began them, and at once where that is stopped."""

import gc
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from foldmath.errors import SurroundingsFailed
from foldmath.workers import Workers

LONG = 60
"""Seconds of work, which no test waits for."""

BEGUN = """
import os, signal, sys, time
from foldmath.workers import Workers
with Workers(2) as workers:
    doing = [workers.submit(time.sleep, 60) for _ in range(2)]
    print(*workers._pool._processes, flush=True)
    {then}
"""


def is_there(process: int) -> bool:
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    return True


def gone(processes: list[int]) -> bool:
    latest = time.monotonic() + 10
    while any(map(is_there, processes)) and time.monotonic() < latest:
        time.sleep(0.01)
    return not any(map(is_there, processes))


def begun(then: str) -> "subprocess.Popen[str]":
    command = [sys.executable, "-c", BEGUN.format(then=then)]
    return subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, start_new_session=True
    )


def test_workers_give_what_the_work_gives():
    with Workers(2) as workers:
        assert workers.submit(pow, 2, 10).result() == 1024
        assert workers.submit(os.getpid).result() != os.getpid()


def test_each_of_the_workers_settles_before_it_works():
    with Workers(1, gc.disable) as workers, Workers(1) as others:
        assert not workers.submit(gc.isenabled).result()
        assert others.submit(gc.isenabled).result()


def test_workers_end_when_the_process_that_began_them_is_killed():
    with begun("time.sleep(60)") as run:
        workers = [int(number) for number in run.stdout.readline().split()]
        assert len(workers) == 2
        run.kill()
        assert gone(workers)


def test_workers_that_are_busy_are_not_waited_for_after_an_error():
    began = time.monotonic()

    def stop(workers):
        workers.submit(time.sleep, LONG)
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt), Workers(2) as workers:
        stop(workers)
    assert time.monotonic() - began < LONG / 2


@pytest.mark.parametrize("ending", [signal.SIGINT, signal.SIGHUP])
def test_workers_leave_a_signal_to_all_processes_of_a_terminal_to_the_one_that_began_them(ending):
    then = f"signal.signal({int(ending)}, lambda *_: sys.exit(7)); print(flush=True); time.sleep(60)"
    with begun(then) as run:
        workers = [int(number) for number in run.stdout.readline().split()]
        run.stdout.readline()
        os.killpg(run.pid, ending)
        assert (run.wait(), run.stderr.read()) == (7, "")
        assert gone(workers)


def test_a_worker_that_is_ended_from_outside_is_one_clear_error():
    with (
        pytest.raises(SurroundingsFailed, match=r"ended from outside\n.*little memory"),
        Workers(1) as workers,
    ):
        workers.submit(os._exit, 9).result()


HANDED_OVER = """
import pathlib, sys, time
from foldmath.workers import Workers
from test_workers import told_when_handed_over
told = pathlib.Path(sys.argv[1])
for hundredths in range(2, 20, 2):
    try:
        with Workers(1) as workers:
            workers.submit(told_when_handed_over, told)
            while not told.exists():
                pass
            time.sleep(hundredths / 100)
            raise KeyboardInterrupt
    except KeyboardInterrupt:
        told.unlink()
sys.exit(7)
"""
MUCH = 100_000_000
"""Bytes; they take so long to be handed over that some end comes in the midst of them."""


class ToldWhenHandedOver:
    """A large result that writes a file when it begins to be handed over."""

    def __init__(self, told):
        self.told = told

    def __reduce__(self):
        self.told.touch()
        return bytes, (b" " * MUCH,)


def told_when_handed_over(told):
    return ToldWhenHandedOver(told)


def test_workers_that_are_stopped_while_they_hand_a_result_over_leave_nobody_waiting(tmp_path):
    command = [sys.executable, "-c", HANDED_OVER, str(tmp_path / "told")]
    surrounded = {**os.environ, "PYTHONPATH": str(Path(__file__).parent)}
    done = subprocess.run(command, env=surrounded, timeout=LONG, check=False)
    assert done.returncode == 7
