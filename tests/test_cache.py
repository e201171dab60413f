"""What is kept between runs lies in a folder that only this user can write in."""

import os
import stat
import sys
import tempfile

import pytest

from foldmath import cache
from foldmath.lesson.grammar import step_parser
from foldmath.paper.steps import Pleat

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="modes of folders are those of POSIX")


@pytest.fixture
def passing(tmp_path, monkeypatch):
    """Give an empty folder for passing files."""
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    cache.cache_folder.cache_clear()
    yield tmp_path
    cache.cache_folder.cache_clear()


def test_the_folder_is_made_for_its_owner_alone(passing):
    folder = cache.cache_folder()
    assert folder.parent == passing
    assert stat.S_IMODE(folder.stat().st_mode) == stat.S_IRWXU


def test_a_folder_that_others_can_write_in_is_not_used(passing):
    (passing / f"foldmath-{os.getuid()}").mkdir()
    (passing / f"foldmath-{os.getuid()}").chmod(0o777)
    assert cache.cache_file("steps") is None


def test_a_link_to_somewhere_else_is_not_used(passing):
    (passing / "elsewhere").mkdir(mode=stat.S_IRWXU)
    (passing / f"foldmath-{os.getuid()}").symlink_to(passing / "elsewhere")
    assert cache.cache_file("steps") is None


def test_a_file_in_its_place_is_not_used(passing):
    (passing / f"foldmath-{os.getuid()}").touch()
    assert cache.cache_file("steps") is None


@pytest.mark.parametrize("spoilt", [b"", b"nonsense", None])
def test_steps_are_read_alike_from_a_new_grammar_a_kept_one_and_a_spoilt_one(spoilt, passing):
    for _ in range(2):
        step_parser._parser.cache_clear()
        assert isinstance(step_parser.step_in("pleat width into 5"), Pleat)
        if spoilt is not None:
            (cache.cache_folder() / "steps").write_bytes(spoilt)
    step_parser._parser.cache_clear()
