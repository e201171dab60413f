"""What an attack comes to: takes a command, runs it in a process of its own within bounds, gives its end."""

import contextlib
import io
import os
import resource
import shutil
import signal
import sys
import tempfile
import traceback
from pathlib import Path
from typing import NamedTuple

from robustness.attacks import Attack

# Imported before the children are forked, so that each of them need not do it again.
import foldmath.cli.doors.planning
import foldmath.fold_format.refolding.lesson_writing
import foldmath.lesson.trace
import foldmath.making
import foldmath.pages.pdf.glyphs
import foldmath.statements.explaining  # noqa: F401

MOST_SECONDS, MOST_MEGABYTES = 5, 500
"""Of processor time and memory, for reading or refusing any input."""

SECONDS_OF_PAGES = 60
"""For the commands that lay out pages: their time grows with panels and folds, and they say what they do."""

PAGES = {"make", "booklet", "draw", "project", "mark", "parts"}
EXIT_CODES = {0, 1, 2, 74}
FAULT = 70
"""EX_SOFTWARE of ``sysexits.h``: what the child gives for an exception that nobody caught."""


class End(NamedTuple):
    """How a command ended.

    Args:
        code: its exit code; the negative signal that ended it.
        seconds: of processor time.
        megabytes: at most.
        said: the end of what it said on standard error, or else of its answer; or the traceback.
    """

    code: int
    seconds: float
    megabytes: int
    said: str

    def fault(self, words: tuple[str, ...]) -> str:
        """Say what is wrong with this end; empty if nothing is."""
        seconds = SECONDS_OF_PAGES if words[0] in PAGES else MOST_SECONDS
        if self.code not in EXIT_CODES:
            return f"ended with {self.code}"
        if "Traceback" in self.said:
            return "traceback"
        if self.seconds > seconds:
            return f"took {self.seconds:.1f} s"
        if self.megabytes > MOST_MEGABYTES:
            return f"took {self.megabytes} MB"
        if self.code and not self.said.strip():
            return "said nothing"
        return ""


def endured(attack: Attack) -> End:
    """Run one attack in a child of this process, and give its end."""
    folder = tempfile.mkdtemp(prefix="attack-")
    try:
        for name, content in attack.files.items():
            (Path(folder) / name).write_bytes(content)
        words = [word.replace("{here}", folder) for word in attack.words]
        reading, writing = os.pipe()
        child = os.fork()
        if not child:
            os.close(reading)
            _obey(words, folder, writing)
        os.close(writing)
        with os.fdopen(reading, "rb") as stream:
            said = stream.read().decode("utf-8", "replace")
        _, status, used = os.wait4(child, 0)
        code = os.waitstatus_to_exitcode(status)
        return End(code, used.ru_utime + used.ru_stime, used.ru_maxrss // 1024, said)
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def faults(attacks: list[Attack]) -> list[tuple[int, tuple[str, ...], str]]:
    """Run attacks in turn, and give the faults: the number of the attack, its words, and what was wrong.

    To be called in a fresh process: a child is said to take no less memory than the one it was forked from.
    """
    found = [(number, one.words, endured(one).fault(one.words)) for number, one in enumerate(attacks)]
    return [one for one in found if one[-1]]


def _obey(words: list[str], folder: str, writing: int) -> None:
    """Obey the words in the child, send the end of what was said, and leave."""
    os.chdir(folder)
    signal.alarm(20 * SECONDS_OF_PAGES)
    resource.setrlimit(resource.RLIMIT_CPU, (2 * SECONDS_OF_PAGES, 2 * SECONDS_OF_PAGES))
    said, answered = io.StringIO(), io.StringIO()
    code = FAULT
    try:
        with contextlib.redirect_stdout(answered), contextlib.redirect_stderr(said):
            code = _command(words)
    except SystemExit as leaving:
        code = leaving.code if isinstance(leaving.code, int) else FAULT
    except BaseException:
        said.write(traceback.format_exc())
    finally:
        # That a sentence is false is an answer: it has a code of its own, and stands on standard output.
        told = said.getvalue() or answered.getvalue()
        os.write(writing, told[-4_000:].encode("utf-8", "replace"))
        os.close(writing)
        os._exit(code)


def _command(words: list[str]) -> int:
    from foldmath.cli import main
    from foldmath.errors import FoldmathError

    if words[0] != "roster":
        return main(words)
    # A class list is read as ``make --class`` reads it, without the pages of all its pupils.
    from foldmath.lesson.roster import read_roster

    try:
        read_roster(Path(words[1]))
    except FoldmathError as refused:
        print(refused, file=sys.stderr)
        return refused.exit_code
    return 0
