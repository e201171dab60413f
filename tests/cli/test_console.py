"""Whatever the terminal lacks, what is said comes out as far as it can, and the exit code is the same."""

import json
import os
import subprocess
import sys
import tomllib
import unicodedata
from pathlib import Path

import pytest
from cli.test_in_a_shell import SEED_TRAYS, environment, run
from exchanged import crossing_lines, file_of

from foldmath.cli.terminal.signs import PLAIN_SIGNS, writable
from foldmath.errors import SurroundingsFailed
from foldmath.lesson.files.controls import is_control, printable

LOST = SurroundingsFailed.exit_code
NARROW = ["cp1252", "cp437", "cp850", "ascii", "latin-1"]
TRUE, FALSE, UNREADABLE = "2³ ÷ 1/2 = 16", "4 × 1/2 = 8", "4 ≈ 4"
CLOSED = pytest.mark.skipif(sys.platform == "win32", reason="closes descriptors as a POSIX shell does")


@pytest.mark.sweep("false in cp437")
@pytest.mark.parametrize(
    ("claim", "code", "encoding"),
    [
        pytest.param(TRUE, 0, "ascii", id="true in ascii"),
        *(pytest.param(FALSE, 1, encoding, id=f"false in {encoding}") for encoding in NARROW),
        pytest.param(UNREADABLE, 2, "ascii", id="unreadable in ascii"),
    ],
)
def test_a_terminal_that_lacks_a_sign_changes_no_exit_code(claim, code, encoding):
    done = run("check", claim, SEED_TRAYS, PYTHONIOENCODING=encoding)
    assert (done.returncode, b"Traceback" in done.stderr) == (code, False)
    assert (done.stdout + done.stderr).decode(encoding)


@pytest.mark.sweep("words0")
@pytest.mark.parametrize(
    "words",
    [
        ("trace", SEED_TRAYS),
        ("trace", "--details", SEED_TRAYS),
        ("explain", SEED_TRAYS, "--all"),
        ("plan", "2/3 × 4/5"),
        ("--help",),
    ],
)
def test_every_answer_in_words_fits_into_ascii(words):
    plain = run(*words, PYTHONIOENCODING="ascii")
    full = run(*words, PYTHONIOENCODING="utf-8")
    assert (plain.returncode, plain.stderr) == (full.returncode, full.stderr) == (0, b"")
    assert plain.stdout.decode("ascii") == writable(full.stdout.decode("utf-8"), "ascii")
    assert b"?" not in plain.stdout.replace(b"meant?", b"")


def test_in_the_plain_language_of_the_machine_a_sentence_is_read_as_it_was_typed():
    done = run("check", TRUE, LC_ALL="C", PYTHONUTF8="0", PYTHONCOERCECLOCALE="0")
    assert (done.returncode, done.stdout) == (0, b"true:   2^3 divided by 1/2 = 16\n")


def test_data_loses_nothing_where_the_terminal_lacks_signs():
    full = json.loads(run("check", FALSE, "--json").stdout)
    for encoding in ("ascii", "cp1252"):
        narrow = run("check", FALSE, "--json", PYTHONIOENCODING=encoding)
        assert narrow.stdout.isascii()
        assert json.loads(narrow.stdout) == full


def test_a_lesson_that_is_printed_is_toml_on_every_terminal(tmp_path):
    title = "Segeltuch für Łódź \U0001f9fa"
    pattern = file_of(tmp_path, crossing_lines(8, 6, {4: "V"}, {}) | {"file_title": title})
    done = run("import", str(pattern), PYTHONIOENCODING="cp1252")
    assert done.returncode == 0
    assert tomllib.loads(done.stdout.decode("utf-8"))["title"] == title


@pytest.mark.parametrize(
    ("text", "ascii_text"),
    [
        ("2¹⁰ = 1024", "2^10 = 1024"),
        ("1½ + ½ − ¼", "1 1/2 + 1/2 - 1/4"),
        ("4 × 1/2 … ≥ 2 → Zoë’s", "4 x 1/2 ... >= 2 -> Zoe's"),
        ("日本\udce9", "??\\xe9"),
    ],
)
def test_plain_signs_keep_the_meaning(text, ascii_text):
    assert writable(text, "ascii") == ascii_text


def test_signs_that_the_terminal_has_are_left_alone():
    assert writable("4 × ½ = 2", "cp1252") == "4 × ½ = 2"
    assert writable("2¹⁰ × ⅓", "cp1252") == "2^10 × 1/3"
    assert all(plain.isascii() for plain in PLAIN_SIGNS.values())


def test_controls_are_those_of_the_unicode_database():
    steering = {"LRE", "RLE", "LRO", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI"}
    for code in range(sys.maxunicode + 1):
        sign = chr(code)
        obeyed = unicodedata.category(sign) in ("Cc", "Cs") or unicodedata.bidirectional(sign) in steering
        unfit_for_xml = code in (0xFFFE, 0xFFFF)
        assert is_control(sign) is (unfit_for_xml or (obeyed and sign not in "\n\t")), hex(code)


def test_a_name_that_steers_the_terminal_is_shown_and_not_obeyed():
    done = run("trace", "a\x1b[2J\r\u202e.toml")
    assert done.stderr.startswith(b"a\\x1b[2J\\r\\u202e.toml: there is no such file")
    assert printable("\x1b \x9b \ud800 \udcff \u2066") == "\\x1b \\x9b \\ud800 \\xff \\u2066"


def said_with(shell_redirection, *words):
    command = f'"{sys.executable}" -m foldmath "$@" {shell_redirection}'
    return subprocess.run(
        ["sh", "-c", command, "sh", *words], capture_output=True, text=True, env=environment(), check=False
    )


@pytest.mark.sweep(">&--words0", ">/dev/full-words0")
@CLOSED
@pytest.mark.parametrize("words", [("check", TRUE), ("check", FALSE), ("trace", SEED_TRAYS), ("--help",), ()])
@pytest.mark.parametrize("where", [">&-", ">/dev/full"])
def test_what_cannot_be_printed_is_one_line_and_a_code_of_its_own(where, words):
    done = said_with(where, *words)
    assert done.returncode == LOST == os.EX_IOERR
    assert done.stderr.startswith("standard output: what there is to say cannot be written: ")
    assert done.stderr.count("\n") == 1


@CLOSED
def test_pages_are_made_even_if_nothing_can_be_said_of_them(tmp_path):
    done = said_with(">/dev/full", "make", SEED_TRAYS, "--only", "worksheet", "--out", str(tmp_path))
    assert done.returncode == LOST
    assert (tmp_path / "seed-trays" / "worksheet.pdf").read_bytes().startswith(b"%PDF")


@CLOSED
@pytest.mark.sweep("0<&- 2>&- >&-")
@pytest.mark.parametrize("where", ["2>&-", "2>/dev/full", "2>&- >&-", "0<&- 2>&- >&-"])
def test_where_not_even_errors_can_be_told_the_exit_code_tells(where):
    assert said_with(where, "check", UNREADABLE).returncode == 2


@CLOSED
def test_a_file_opened_later_does_not_take_the_place_of_a_closed_stream(tmp_path):
    said_with("0<&- >&- 2>&-", "make", SEED_TRAYS, "--only", "worksheet,key", "--out", str(tmp_path))
    made = list((tmp_path / "seed-trays").glob("*.pdf"))
    assert made
    for path in made:
        assert path.read_bytes().startswith(b"%PDF")


@CLOSED
def test_a_reader_that_leaves_the_pipe_leaves_the_exit_code():
    reading, writing = os.pipe()
    os.close(reading)
    done = subprocess.run(
        [sys.executable, "-m", "foldmath", "check", FALSE],
        stdout=writing,
        stderr=subprocess.PIPE,
        env=environment(),
        check=False,
    )
    os.close(writing)
    assert (done.returncode, done.stderr) == (1, b"")


@CLOSED
def test_a_pipe_that_is_not_ready_is_waited_for():
    reading, writing = os.pipe()
    os.set_blocking(writing, False)
    running = subprocess.Popen(
        [sys.executable, "-m", "foldmath", "trace", "--json", *[SEED_TRAYS] * 40],
        stdout=writing,
        stderr=subprocess.PIPE,
        env=environment(),
    )
    os.close(writing)
    with os.fdopen(reading, "rb") as stream:
        read = stream.read()
    assert running.communicate()[1] == b""
    assert running.returncode == 0
    assert len(json.loads(read)) == 40


NO_FOLDERS = """
import tempfile
tempfile.tempdir = {folder!r}
"""


@pytest.mark.sweep("/proc/nowhere")
@CLOSED
@pytest.mark.parametrize("folder", ["/proc/nowhere", "/dev/full"])
def test_without_a_folder_for_passing_files_there_is_one_line_and_nothing_is_written(folder, tmp_path):
    (tmp_path / "sitecustomize.py").write_text(NO_FOLDERS.format(folder=folder), "utf-8")
    search = os.pathsep.join([str(tmp_path), str(Path(SEED_TRAYS).parents[1])])
    without = {"HOME": "/proc/nowhere", "PYTHONPATH": search, "MPLCONFIGDIR": "", "XDG_CACHE_HOME": ""}
    without["XDG_CONFIG_HOME"] = ""
    done = run("make", SEED_TRAYS, "--out", str(tmp_path / "out"), **without)
    assert (done.returncode, done.stdout) == (LOST, b"")
    assert b"no folder for passing files can be used" in done.stderr
    assert b"Traceback" not in done.stderr
    assert not (tmp_path / "out").exists()
    assert run("trace", SEED_TRAYS, **without).returncode == 0
