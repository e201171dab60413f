"""Papers are called as people call them; those of the standards have one name everywhere."""

import re

import pytest

from foldmath.paper.measures import paper_said
from foldmath.paper.sizes import all_papers
from foldmath.words.saying import say


@pytest.mark.parametrize(
    ("name", "english", "spanish"),
    [
        ("A4", "A4", "A4"),
        ("JIS B5", "JIS B5", "JIS B5"),
        ("letter", "letter", "carta"),
        ("construction 12 x 18", "construction paper 12 × 18", "cartulina de color 12 × 18"),
        ("origami 15 cm", "origami paper 15 cm", "papel de origami 15 cm"),
    ],
)
def test_a_paper_is_said_in_the_words_of_a_language(name, english, spanish):
    assert say(paper_said(name), "en-US") == english
    assert say(paper_said(name), "es") == spanish


def test_every_paper_whose_name_is_words_is_said_otherwise_in_spanish():
    worded = [
        paper.name for paper in all_papers() if re.search("[a-z]{3}", paper.name) and "JIS" not in paper.name
    ]
    assert len(worded) > 10
    assert [
        name
        for name in worded
        if not name.startswith(("Arch", "ANSI")) and say(paper_said(name), "es") == name
    ] == []
