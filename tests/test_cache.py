"""What is kept between runs comes from this user alone: whoever else lays something there is not obeyed."""

import os
import pickle
import shutil
import stat
import subprocess
import sys
from pathlib import Path

import platformdirs
import pytest
from jinja2.bccache import bc_magic

from foldmath import cache
from foldmath.cache import cache_folder, keep, read_kept
from foldmath.grammars import MARK_BYTES
from foldmath.lesson.grammar import step_parser
from foldmath.paper.steps import Pleat

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="owners and modes are those of POSIX")
ROOT = Path(__file__).parents[1]
AS_ROOT = pytest.mark.skipif(getattr(os, "getuid", int)() != 0, reason="only root gives files away")
SOMEONE_ELSE = 65534
GRAMMARS = {"steps-en-US", "positions", "claims"}


class Attack:
    """A pickle that leaves a mark when it is loaded."""

    def __init__(self, mark):
        self.mark = str(mark)

    def __reduce__(self):
        return open, (self.mark, "w")


@pytest.fixture
def home(tmp_path, monkeypatch):
    """Give the place of the caches of a user who has just come."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "caches"))
    return tmp_path


@pytest.fixture
def folder(home):
    """Give the cache folder, with one thing kept in it."""
    keep("steps", b"kept")
    assert read_kept("steps") == b"kept"
    return home / "caches" / "foldmath"


def test_what_is_kept_is_this_users_alone(folder):
    assert cache_folder() == folder
    assert stat.S_IMODE(folder.stat().st_mode) == 0o700
    assert stat.S_IMODE((folder / "steps").stat().st_mode) == 0o600
    assert os.listdir(folder) == ["steps"]


def test_what_was_kept_before_is_replaced(folder):
    keep("steps", b"newer")
    assert read_kept("steps") == b"newer"
    assert read_kept("claims") is None


@pytest.mark.parametrize("mode", [0o701, 0o710, 0o720, 0o702, 0o777, 0o1777, 0o500])
def test_a_folder_that_lets_others_in_is_not_used(folder, mode):
    folder.chmod(mode)
    assert read_kept("steps") is None
    keep("claims", b"more")
    assert not (folder / "claims").exists()


@AS_ROOT
def test_a_folder_of_someone_else_is_not_used(folder):
    os.chown(folder, SOMEONE_ELSE, SOMEONE_ELSE)
    assert read_kept("steps") is None


def test_a_link_to_a_folder_is_not_used(folder):
    folder.rename(folder.with_name("elsewhere"))
    folder.symlink_to(folder.with_name("elsewhere"))
    assert read_kept("steps") is None


@pytest.mark.parametrize("lay", [Path.touch, os.mkfifo], ids=["file", "pipe"])
def test_something_else_in_the_place_of_the_folder_is_not_used(home, lay):
    (home / "caches").mkdir()
    lay(home / "caches" / "foldmath")
    keep("steps", b"kept")
    assert read_kept("steps") is None


@pytest.mark.parametrize("mode", [0o620, 0o602, 0o666])
def test_a_file_that_others_can_write_is_not_read(folder, mode):
    (folder / "steps").chmod(mode)
    assert read_kept("steps") is None


@AS_ROOT
def test_a_file_of_someone_else_is_not_read(folder):
    os.chown(folder / "steps", SOMEONE_ELSE, SOMEONE_ELSE)
    assert read_kept("steps") is None


def test_a_link_or_a_second_name_of_a_file_is_not_read(folder):
    (folder / "claims").symlink_to("steps")
    assert read_kept("claims") is None
    (folder / "places").hardlink_to(folder / "steps")
    assert read_kept("places") is None


def test_a_pipe_in_the_place_of_a_file_is_not_waited_for(folder):
    (folder / "steps").unlink()
    os.mkfifo(folder / "steps")
    assert read_kept("steps") is None


def test_a_folder_exchanged_after_it_was_looked_at_is_not_read(folder, monkeypatch):
    """The one who owns the folder above can exchange ours, but what was opened stays what it was."""
    other = folder.with_name("other")
    other.mkdir(mode=0o700)
    (other / "steps").write_bytes(b"theirs")
    looked = os.fstat

    def exchange(handle):
        found = looked(handle)
        if other.exists():
            folder.rename(folder.with_name("ours"))
            other.rename(folder)
        return found

    monkeypatch.setattr(cache.os, "fstat", exchange)
    assert read_kept("steps") == b"kept"
    assert not other.exists()


@pytest.mark.parametrize("place", [".", "caches", ""])
def test_the_current_folder_is_no_cache(place, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("HOME", ".")
    monkeypatch.setenv("XDG_CACHE_HOME", place)
    folder = cache_folder()
    assert folder is None or (folder.is_absolute() and not folder.is_relative_to(tmp_path))


def test_where_no_place_is_known_nothing_is_kept(monkeypatch):
    monkeypatch.setattr(platformdirs, "user_cache_path", lambda *_names, **_more: Path("~/.cache/foldmath"))
    assert cache_folder() is None
    keep("steps", b"kept")
    assert read_kept("steps") is None


def test_a_home_that_is_not_there_is_not_made(tmp_path, monkeypatch):
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "no" / "home"))
    keep("steps", b"kept")
    assert os.listdir(tmp_path) == []


def test_a_full_disk_keeps_nothing_and_leaves_nothing(folder, monkeypatch):
    def full(*_names, **_folders):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(cache.os, "replace", full)
    keep("claims", b"more")
    assert os.listdir(folder) == ["steps"]


@pytest.mark.parametrize("spoilt", [slice(0), slice(1, None), slice(100)])
def test_steps_are_read_alike_from_a_new_grammar_a_kept_one_and_a_spoilt_one(spoilt, home):
    for _ in range(2):
        step_parser._parser.cache_clear()
        assert isinstance(step_parser.step_in("pleat width into 5"), Pleat)
        keep("steps-en-US", read_kept("steps-en-US")[spoilt])
    step_parser._parser.cache_clear()
    assert isinstance(step_parser.step_in("pleat width into 5"), Pleat)
    assert len(read_kept("steps-en-US")) > 1000
    step_parser._parser.cache_clear()


def make_all(home, folder, **changes):
    """Run a command that reads every kind of thing that is kept."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "XDG_CACHE_HOME": str(home / "caches"), **changes}
    done = subprocess.run(
        [
            sys.executable,
            "-m",
            "foldmath",
            "make",
            ROOT / "lessons" / "seed-trays.toml",
            "--only",
            "worksheet",
            "--out",
            home / "out",
        ],
        capture_output=True,
        env=environment,
        cwd=folder,
        check=False,
    )
    assert (done.returncode, b"Traceback" in done.stderr) == (0, False)


@pytest.fixture(scope="module")
def kept(tmp_path_factory):
    """Give a cache folder in which everything is kept that a command keeps."""
    home = tmp_path_factory.mktemp("user")
    make_all(home, home)
    folder = home / "caches" / "foldmath"
    assert set(os.listdir(folder)) > GRAMMARS
    return folder


def poison(folder, mark):
    """Make every kept file one that leaves a mark when it is obeyed, wherever it is taken for sound."""
    for path in folder.iterdir():
        head = path.read_bytes()[:MARK_BYTES]
        if path.name in GRAMMARS:
            path.write_bytes(head + pickle.dumps(Attack(mark / path.name)))
        else:
            # Behind its magic number Jinja unpickles the checksum of the template.
            path.write_bytes(bc_magic + pickle.dumps(Attack(mark / "template")))


@pytest.fixture
def attacked(kept, tmp_path):
    """Give a copy of the kept folder that is poisoned, a place for its marks, and a folder to run in."""
    (tmp_path / "caches").mkdir()
    folder = tmp_path / "caches" / "foldmath"
    shutil.copytree(kept, folder)
    (tmp_path / "marks").mkdir()
    (tmp_path / "here").mkdir()
    poison(folder, tmp_path / "marks")
    return folder


def test_the_attack_of_these_tests_works_on_whoever_attacks_himself(attacked, tmp_path):
    """Else the tests below would prove nothing."""
    make_all(tmp_path, tmp_path / "here")
    assert set(os.listdir(tmp_path / "marks")) == {*GRAMMARS, "template"}


def test_a_poisoned_folder_that_others_can_write_runs_nothing(attacked, tmp_path):
    attacked.chmod(0o777)
    make_all(tmp_path, tmp_path / "here")
    assert os.listdir(tmp_path / "marks") == []


@pytest.mark.sweep
def test_poisoned_files_in_the_folder_for_passing_files_or_the_current_one_run_nothing(attacked, tmp_path):
    shared = tmp_path / "shared"
    shared.mkdir()
    shared.chmod(0o777)
    user = os.getuid()
    for name in ("foldmath", f"foldmath-{user}", f"_jinja2-cache-{user}"):
        shutil.copytree(attacked, shared / name)
        shutil.copytree(attacked, tmp_path / "here" / name)
    shutil.rmtree(attacked)
    without_home = {"XDG_CACHE_HOME": ".", "HOME": "/proc/nowhere", "TMPDIR": str(shared)}
    make_all(tmp_path, tmp_path / "here", **without_home)
    make_all(tmp_path, tmp_path / "here", TMPDIR=str(shared))
    assert os.listdir(tmp_path / "marks") == []
