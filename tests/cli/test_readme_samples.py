"""What the README shows of the terminal is what the program says."""

import re
import shlex
import tomllib
from pathlib import Path

import pytest

from foldmath.cli import main
from foldmath.lesson.files.built_in import built_in_lessons
from foldmath.lesson.grammar.step_parser import step_in

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


STEP_TABLE = README.partition("## The step language")[2].partition("\nA point is")[0]
SHORTENED = re.findall(r"^\| (.*); in short (.*?) \|", STEP_TABLE, re.MULTILINE)


@pytest.mark.parametrize(("long", "short"), SHORTENED, ids=[short for _, short in SHORTENED])
def test_what_the_readme_gives_in_short_means_what_stands_before_it(long, short):
    longs, shorts = (re.findall(r"`(\w[^`]*)`", row) for row in (long, short))
    assert {step_in(said) for said in shorts} <= {
        step_in(said) for said in longs if not said.startswith("with")
    }


def test_the_readme_shows_every_word_that_steps_of_the_lessons_that_come_along_are_made_of():
    lessons = [tomllib.loads(path.read_text("utf-8")) for path in built_in_lessons().values()]
    words = {word for lesson in lessons for step in lesson["steps"] for word in re.findall(r"[a-z]+", step)}
    assert words <= set(re.findall(r"[a-z]+", README.partition("## The step language")[2]))
