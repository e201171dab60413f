"""The file to double-click opens the desk on the teacher's folder, whatever the folder is called."""

import configparser
import os
import re
import shlex
from pathlib import Path

import pytest

from foldmath.cli import main
from foldmath.desk.starting import NAMES, starter

FOLDERS = ["/home/ana/lessons", "/home/ana/My lessons", '/home/a"na/50% $HOME `x` \\ é', "/home/ana/it's"]


@pytest.mark.parametrize("folder", FOLDERS)
def test_on_macos_the_shell_reads_the_folder_as_it_is(folder):
    _, content = starter(Path(folder), "darwin", "/opt/python 3/bin/python")
    said = shlex.split(content.decode().splitlines()[1])
    assert said == ["exec", "/opt/python 3/bin/python", "-m", "foldmath", "desk", "--folder", folder]


@pytest.mark.parametrize("folder", FOLDERS)
def test_on_linux_the_entry_reads_back_as_the_folder(folder):
    """By the Desktop Entry Specification 1.5: first the file's escapes, then those within quotes, then %%."""
    _, content = starter(Path(folder), "linux", "/usr/bin/python3")
    entry = configparser.RawConfigParser()
    entry.read_string(content.decode())
    value = entry["Desktop Entry"]["exec"].replace("\\\\", "\\")
    words = [re.sub(r"\\(.)", r"\1", word) for word in re.findall(r'"((?:[^"\\]|\\.)*)"', value)]
    assert [word.replace("%%", "%") for word in words][-1] == folder


def test_on_windows_lines_end_as_there_and_percent_signs_are_doubled():
    name, content = starter(Path("C:/Ana/50% off"), "win32", "C:/Python/python.exe")
    assert name.endswith(".bat")
    assert b'"C:/Python/python.exe" "-m" "foldmath" "desk" "--folder" "C:/Ana/50%% off"\r\n' in content


def test_the_command_writes_the_file_so_that_it_can_be_run(tmp_path, capsys):
    assert main(["desk", "--starter", str(tmp_path), "--folder", str(tmp_path / "lessons")]) == 0
    (path,) = tmp_path.iterdir()
    assert path.name in NAMES.values()
    assert os.access(path, os.X_OK)
    assert str(path) in capsys.readouterr().out
