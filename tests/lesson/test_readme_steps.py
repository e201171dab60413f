"""Every sentence of the README's table of steps can be read."""

import re
from pathlib import Path

import pytest

from foldmath.lesson.grammar.sentences import parse_step
from foldmath.lesson.grammar.step_parser import sentence_in

README = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
TOLD = README.partition("## The step language")[2].partition('"Left edge to 1/3"')[0]
TABLE, _, POINTS = TOLD.partition("A point is")
SENTENCES = [
    sentence
    for sentence in re.findall(r"`([^`]+)`", TABLE)
    if sentence not in ("behind", "with the cover at column 0")
]
SENTENCES += [
    f"fold the top left corner to {point}"
    for point in re.findall(r"`([^`]+)`", POINTS.partition("Steps may also")[0])
]
SENTENCES += re.findall(r"`([^`]+)`", POINTS.partition("Steps may also")[2])


@pytest.mark.parametrize("sentence", SENTENCES)
def test_a_sentence_of_the_readme_can_be_read(sentence):
    if sentence == "fold in half":
        assert sentence_in(sentence, "en-US").behind is False
    else:
        parse_step(sentence)
