"""The command as a shell runs it: quick to start, at ease in a pipe, the same in every process."""

import os
import subprocess
import sys

import pytest
from conftest import LESSONS

SEED_TRAYS = str(LESSONS / "seed-trays.toml")
TILE_PANELS = str(LESSONS / "tile-panels.toml")
ROOT = LESSONS.parent


def environment(**changes):
    return {**os.environ, "PYTHONPATH": str(ROOT)} | changes


def run(*words, **changes):
    command = [sys.executable, "-m", "foldmath", *words]
    return subprocess.run(command, capture_output=True, env=environment(**changes), check=False)


@pytest.mark.parametrize(
    "doing",
    ["import foldmath.cli.console", "from foldmath.cli.arguments import parser; parser([]).format_help()"],
)
def test_nothing_heavy_is_imported_before_a_command_needs_it(doing):
    heavy = {"sympy", "matplotlib", "reportlab", "jinja2", "numpy", "lark", "voluptuous"}
    # Each of these takes as long as all of ours; an environment may have loaded them before any program.
    heavy |= {"dataclasses", "typing", "unicodedata"}
    code = (
        f"import sys; before = set(sys.modules); {doing}; print(sorted({heavy} & set(sys.modules) - before))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, env=environment(), check=True
    )
    assert done.stdout.strip() == "[]"


def test_another_process_makes_the_same_pages(tmp_path, all_pages):
    done = run("make", SEED_TRAYS, "--out", str(tmp_path), PYTHONHASHSEED="1234")
    assert (done.returncode, b"Traceback" in done.stderr) == (0, False)
    first = all_pages["seed-trays", "letter"].folder
    for path in (tmp_path / "seed-trays").rglob("*.*"):
        assert path.read_bytes() == (first / path.relative_to(tmp_path / "seed-trays")).read_bytes()


@pytest.mark.sweep("words0-buffered", "words0-unbuffered")
@pytest.mark.parametrize("buffered", ["", "1"], ids=["buffered", "unbuffered"])
@pytest.mark.parametrize("words", [(), ("check", "1/2 = 2/4"), ("trace", "--json", TILE_PANELS, TILE_PANELS)])
def test_a_reader_that_leaves_the_pipe_is_no_error(words, buffered):
    """As in ``foldmath trace … | head -1``."""
    reading, writing = os.pipe()
    os.close(reading)
    done = subprocess.run(
        [sys.executable, "-m", "foldmath", *words],
        stdout=writing,
        stderr=subprocess.PIPE,
        env=environment(PYTHONUNBUFFERED=buffered),
        check=False,
    )
    os.close(writing)
    assert (done.returncode, done.stderr) == (0, b"")
