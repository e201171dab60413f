"""A page that was printed once is marked by the items that it had: its code knows how they were chosen."""

from dataclasses import replace
from hashlib import sha256

from conftest import LESSONS

from foldmath.lesson.proving import prove
from foldmath.lesson.reading import read_lesson
from foldmath.practice.choosing import CHOOSING, choose
from foldmath.statements.items import Level

CHOSEN = {14: "d9880d4ff93cad49"}
"""What the version chooses for our own lessons: where that changes, ``CHOOSING`` is one more.

A lesson whose steps are reworded is another one too, with other numbers under another code.
"""


def test_what_is_chosen_changes_only_with_the_version():
    told = []
    for path in sorted(LESSONS.glob("*.toml")):
        proved = prove(replace(read_lesson(path), items=()))
        for level in Level:
            for seed in (None, 1, 2):
                asked = [(str(item.kind), str(item.asks)) for item in choose(proved, level, seed=seed)]
                told.append(f"{path.stem} {level} {seed} {asked}")
    assert sha256("\n".join(told).encode()).hexdigest()[:16] == CHOSEN[CHOOSING]
