"""Runs that write in one place take turns, and a killed one gives its turn back."""

import errno
import os
import signal
import subprocess
import sys
import threading
import time

import pytest
from conftest import LESSONS

from foldmath.making.sets import turns
from foldmath.making.sets.turns import beside, turn

HOLDING = """
import signal, sys, time
from pathlib import Path
from foldmath.making.sets.turns import turn
# Whoever runs the tests may ignore it.
signal.signal(signal.SIGINT, signal.default_int_handler)
print("waiting", flush=True)
with turn(Path(sys.argv[1])):
    print("mine", flush=True)
    time.sleep(60)
"""


def waiting_for(path):
    """Begin a process that waits for the turn, and keeps it."""
    environment = {**os.environ, "PYTHONPATH": str(LESSONS.parent)}
    run = subprocess.Popen(
        [sys.executable, "-c", HOLDING, str(path)], stdout=subprocess.PIPE, env=environment
    )
    assert run.stdout.readline() == b"waiting\n"
    return run


def holding(path):
    """Begin a process that has the turn, and keeps it."""
    run = waiting_for(path)
    assert run.stdout.readline() == b"mine\n"
    return run


def test_a_turn_is_waited_for_until_the_run_that_has_it_is_killed(tmp_path):
    path = tmp_path / "seed-trays"
    had = threading.Event()

    def have():
        with turn(path):
            had.set()

    with holding(path) as run:
        waiting = threading.Thread(target=have)
        waiting.start()
        assert not had.wait(0.2)
        run.kill()
        waiting.join(60)
    assert had.is_set()
    assert list(tmp_path.iterdir()) == []


def test_turns_at_other_folders_are_not_waited_for(tmp_path):
    with holding(tmp_path / "seed-trays") as run, turn(tmp_path / "tile-panels"):
        run.kill()


def test_many_runs_have_their_turns_one_after_the_other(tmp_path):
    inside, most = [], []

    def have():
        for _ in range(20):
            with turn(tmp_path / "seed-trays"):
                inside.append(1)
                most.append(len(inside))
                inside.pop()

    threads = [threading.Thread(target=have) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert most == [1] * 80
    assert list(tmp_path.iterdir()) == []


def test_a_lock_that_another_user_left_is_waited_for_by_reading_it(tmp_path, monkeypatch):
    lock = beside(tmp_path / "seed-trays", "-lock")
    lock.touch()
    whole_open = os.open

    def refuse(path, how, *rights):
        if how & os.O_CREAT:
            raise PermissionError(errno.EACCES, "Permission denied")
        return whole_open(path, how, *rights)

    monkeypatch.setattr(turns.os, "open", refuse)
    with turn(tmp_path / "seed-trays"):
        pass
    assert not lock.exists()


def test_where_nothing_may_be_written_that_is_said_and_not_that_the_lock_is_missing(tmp_path, monkeypatch):
    def refuse(path, how, *rights):
        raise PermissionError(errno.EACCES, "Permission denied") if how & os.O_CREAT else FileNotFoundError

    monkeypatch.setattr(turns.os, "open", refuse)
    with pytest.raises(PermissionError), turn(tmp_path / "seed-trays"):
        pass


@pytest.mark.skipif(sys.platform == "win32", reason="Windows locks files in another way")
def test_where_the_disk_knows_no_locks_sets_are_placed_all_the_same(tmp_path, monkeypatch):
    def refuse(descriptor, how):
        raise OSError(errno.ENOLCK, "No locks available")

    monkeypatch.setattr(turns.fcntl, "flock", refuse)
    with turn(tmp_path / "seed-trays"):
        pass
    monkeypatch.setattr(turns, "NO_LOCKS_HERE", ())
    with pytest.raises(OSError, match="No locks"), turn(tmp_path / "seed-trays"):
        pass


def asked_to_end_at(step, path):
    """Have the turn, and be asked to end at that line of what has it; say whether it came so far."""
    lines = iter(range(step))

    def asked(frame, event, _):
        if event == "line" and next(lines, None) is None:
            sys.settrace(None)
            raise KeyboardInterrupt
        return asked

    def only_of_turns(frame, *_):
        return asked if frame.f_code.co_filename == turns.__file__ else None

    try:
        sys.settrace(only_of_turns)
        with turn(path):
            pass
    except KeyboardInterrupt:
        return True
    finally:
        sys.settrace(None)
    return False


def test_a_run_that_is_asked_to_end_at_any_step_gives_its_turn_back_and_leaves_nothing(tmp_path):
    step = 0
    while asked_to_end_at(step, tmp_path / "seed-trays"):
        assert list(tmp_path.iterdir()) == [], f"asked to end at step {step}"
        step += 1
    assert step > 20


def test_a_run_that_gives_up_waiting_leaves_the_lock_to_the_run_that_has_it(tmp_path):
    path = tmp_path / "seed-trays"
    with holding(path) as run:
        with waiting_for(path) as waiting:
            time.sleep(0.1)
            waiting.send_signal(signal.SIGINT)
            assert waiting.stdout.read() == b""
        assert beside(path, "-lock").exists()
        run.kill()
