"""A disk without room, as the system itself reports it: the old set stays, and the reason is told."""

import os
import subprocess
import sys

import pytest
from conftest import LESSONS
from making.placed_sets import run_of, set_of

from foldmath.making.sets.placing import place

LIMITED = """
import resource, sys
from pathlib import Path
resource.setrlimit(resource.RLIMIT_FSIZE, (100, 100))
from making.placed_sets import set_of
from foldmath.errors import CannotWrite
from foldmath.making.sets.placing import place
try:
    place(set_of("second", Path(sys.argv[1])))
except CannotWrite as error:
    print(error)
"""
ROOT = LESSONS.parent


@pytest.mark.skipif(sys.platform == "win32", reason="Windows sets no limit to the size of files")
def test_a_set_for_which_there_is_no_room_leaves_the_old_one_and_nothing_beside_it(tmp_path):
    place(set_of("first", tmp_path))
    done = subprocess.run(
        [sys.executable, "-c", LIMITED, str(tmp_path)],
        capture_output=True,
        text=True,
        env={**os.environ, "PYTHONPATH": f"{ROOT}{os.pathsep}{ROOT / 'tests'}"},
        check=True,
    )
    wrong, hint = done.stdout.splitlines()
    assert wrong == (
        f"{tmp_path / 'seed-trays'}: the pages cannot be written: file too large; nothing there was changed"
    )
    assert hint == "    try:  make room on this disk, or --out with a folder on another one"
    assert run_of(tmp_path / "seed-trays") == "first"
    assert os.listdir(tmp_path) == ["seed-trays"]
