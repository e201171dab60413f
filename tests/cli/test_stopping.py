"""A signal to end gives a clear word, an exit code of its own, and nothing half done."""

import os
import signal
import subprocess
import sys
import threading

import pytest
from conftest import LESSONS

from foldmath.cli.terminal.stopping import EndSignals

ENDINGS = {signal.SIGHUP: 129, signal.SIGINT: 130, signal.SIGTERM: 143}
"""The exit code after each, as shells tell it and as the README does."""

WAITING = """
import os, signal, sys, time
from foldmath.cli import console
def wait(seconds=60):
    os.write(1, b"ready\\n")
    time.sleep(seconds)
def main():
    {doing}
console.main = main
sys.exit(console.run())
"""


@pytest.fixture(autouse=True)
def _heard():
    """Have signals heard here and by what is begun here: ``nohup`` and scripts have some ignored."""
    before = {ending: signal.signal(ending, signal.default_int_handler) for ending in ENDINGS}
    yield
    for ending, handler in before.items():
        signal.signal(ending, handler)


def stopped(ending, doing="wait()", before=""):
    return ended_by(ending, [sys.executable, "-c", before + WAITING.format(doing=doing)])


def ended_by(ending, command, folder=None):
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, cwd=folder
    ) as run:
        run.stdout.readline()
        run.send_signal(ending)
        out, err = run.communicate()
        return run.returncode, out, err


@pytest.mark.parametrize(("ending", "code"), ENDINGS.items())
def test_each_signal_to_end_has_its_exit_code(ending, code):
    assert stopped(ending) == (code, "", "")


def test_what_a_signal_breaks_is_not_told_as_a_fault():
    doing = """
    try:
        wait()
    finally:
        raise ImportError("half imported")
    """
    assert stopped(signal.SIGTERM, doing.strip()) == (143, "", "")


def test_a_signal_that_a_library_swallows_still_gives_its_exit_code():
    doing = """
    try:
        wait()
    except BaseException:
        return 0
    """
    assert stopped(signal.SIGTERM, doing.strip()) == (143, "", "")


def test_a_signal_within_code_that_is_given_as_text_gives_its_exit_code_to_python_m_too(tmp_path):
    (tmp_path / "waiting.py").write_text(WAITING.format(doing="exec('wait()', globals())"))
    command = [sys.executable, "-m", "waiting"]
    assert ended_by(signal.SIGHUP, command, tmp_path) == (129, "", "")


def test_a_second_signal_does_not_disturb_the_clearing_up():
    doing = """
    try:
        wait()
    finally:
        os.kill(os.getpid(), signal.SIGINT)
        os.kill(os.getpid(), signal.SIGHUP)
        print("cleared up")
    """
    assert stopped(signal.SIGTERM, doing.strip()) == (143, "cleared up\n", "")


def test_a_run_that_was_begun_to_outlive_its_terminal_does():
    ignoring = "import signal; signal.signal(signal.SIGHUP, signal.SIG_IGN)\n"
    code, out, err = stopped(signal.SIGHUP, "wait(0.3); print('done'); return 0", ignoring)
    assert (code, out, err) == (0, "done\n", "")


def test_signals_are_what_they_were_once_all_is_done():
    before = {ending: signal.getsignal(ending) for ending in ENDINGS}
    with EndSignals() as signals:
        assert all(signal.getsignal(ending) != handler for ending, handler in before.items())
    assert signals.exit_code is None
    assert {ending: signal.getsignal(ending) for ending in ENDINGS} == before


def test_a_thread_other_than_the_first_leaves_signals_alone():
    heard = []

    def look():
        with EndSignals():
            heard.append(signal.getsignal(signal.SIGTERM))

    thread = threading.Thread(target=look)
    thread.start()
    thread.join()
    assert heard == [signal.getsignal(signal.SIGTERM)]


def test_a_run_that_is_stopped_says_so_and_writes_nothing(tmp_path):
    command = [
        sys.executable,
        "-m",
        "foldmath",
        "make",
        str(LESSONS / "seed-trays.toml"),
        "--out",
        str(tmp_path),
    ]
    environment = {**os.environ, "PYTHONPATH": str(LESSONS.parent)}
    with subprocess.Popen(command, stderr=subprocess.PIPE, text=True, env=environment) as run:
        # The first that is heard of it comes after a second of work.
        first = run.stderr.readline()
        run.send_signal(signal.SIGTERM)
        rest = run.stderr.read()
    if "stopped" in rest:
        assert run.returncode == 143
        assert first.startswith(command[4])
        assert list(tmp_path.iterdir()) == []
