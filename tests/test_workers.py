"""Processes that help end with the one that began them, and at once where that is stopped."""

import gc
import os
import signal
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from pathlib import Path

import pytest

from foldmath.errors import SurroundingsFailed
from foldmath.workers import Workers

LONG = 600
"""Seconds of work, which no test waits for."""

HANGS = 120
"""Seconds after which what has not come never does."""

BEGUN = """
import os, signal, sys, time
from foldmath.workers import Workers
with Workers(2) as workers:
    doing = [workers.submit(time.sleep, 600) for _ in range(2)]
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
    latest = time.monotonic() + HANGS
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
    with begun("time.sleep(600)") as run:
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
    then = f"signal.signal({int(ending)}, lambda *_: sys.exit(7)); print(flush=True); time.sleep(600)"
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


def test_others_take_the_place_of_workers_that_were_ended_from_outside():
    with Workers(1) as workers:
        for _ in range(2):
            assert isinstance(workers.submit(os._exit, 9).exception(), BrokenProcessPool)
            with ThreadPoolExecutor(4) as threads:
                first, *rest = threads.map(lambda _: workers.submit(os.getpid).result(), range(4))
            assert {first} == set(rest)


STOPPED = """
for hundredths in range(0, 15, 3):
    try:
        with workers.Workers(1) as helpers:
            hand_over(helpers)
            time.sleep(hundredths / 100)
            raise KeyboardInterrupt
    except KeyboardInterrupt:
        told.unlink()
sys.exit(7)
"""
KILLED = """
with workers.Workers(1) as helpers:
    hand_over(helpers)
    print(*helpers._pool._processes, flush=True)
    helpers._told.send_bytes(b"end")
    os.kill(os.getpid(), signal.SIGKILL)
"""
HANDED_OVER = """
import os, pathlib, signal, sys, time
from foldmath import workers
from test_workers import told_when_handed_over
workers.HANDING_OVER_SECONDS = workers.LOOKING_SECONDS = 0.001
told = pathlib.Path(sys.argv[1])
def hand_over(helpers):
    helpers.submit(told_when_handed_over, told)
    while not told.exists():
        time.sleep(0.001)
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


def stopped_while_it_is_handed_over(then, tmp_path):
    command = [sys.executable, "-c", HANDED_OVER + then, str(tmp_path / "told")]
    surrounded = {**os.environ, "PYTHONPATH": str(Path(__file__).parent)}
    return subprocess.run(
        command, env=surrounded, stdout=subprocess.PIPE, text=True, timeout=HANGS, check=False
    )


def test_workers_that_are_stopped_while_they_hand_a_result_over_leave_nobody_waiting_however_long_it_takes(
    tmp_path,
):
    assert stopped_while_it_is_handed_over(STOPPED, tmp_path).returncode == 7


def test_workers_end_when_the_process_is_killed_that_a_result_is_handed_over_to(tmp_path):
    done = stopped_while_it_is_handed_over(KILLED, tmp_path)
    assert done.returncode == -signal.SIGKILL
    assert gone([int(number) for number in done.stdout.split()])
