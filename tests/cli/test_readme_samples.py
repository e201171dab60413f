"""What the README shows of the terminal is what the program says."""

import re
import shlex
from pathlib import Path

import pytest

from foldmath.cli import main

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
INDENT = "    "
SAMPLES = re.findall(rf"^{INDENT}\$ foldmath (.*)\n((?:{INDENT}.*\n|\n)+)", README, re.MULTILINE)


def test_there_are_samples():
    assert len(SAMPLES) >= 2


@pytest.mark.parametrize(("words", "shown"), SAMPLES, ids=[words for words, _ in SAMPLES])
def test_a_sample_in_the_readme_is_what_the_program_says(words, shown, capsys, monkeypatch):
    monkeypatch.chdir(ROOT)
    main(shlex.split(words))
    said = capsys.readouterr().out
    sample, cut, _ = "\n".join(line.removeprefix(INDENT) for line in shown.splitlines()).partition("\n…")
    assert said.startswith(sample) if cut else said.strip() == sample.strip()
