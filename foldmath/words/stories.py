"""Word problems in words: takes a telling and a language, gives what a pupil reads."""

import re
from dataclasses import dataclass

from foldmath.plane.numbers import ONE
from foldmath.statements.items.story import StoryItem
from foldmath.statements.ratios import Ratio
from foldmath.words.authored import table

_PLACEHOLDER = re.compile(r"\{(\w+)(?::([^|}]+)\|([^|}]+)(?:\|([^|}]+))?)?\}")


@dataclass(frozen=True)
class StoryWords:
    """One telling in one language.

    Args:
        sentences: fractions written as ``2/3``; the last one is the question.
        unit: of the answer and of the wrong answers: ``m``, ``of the bed``, ``boats``.
        answer: a whole sentence with the answer.
        also: the answer as a part of the total, which is right too; empty if it is not said so.
    """

    sentences: tuple[str, ...]
    unit: str
    answer: str
    also: str


def story_words(item: StoryItem, language: str) -> StoryWords:
    """Say a telling in a language."""
    written = table(language, "stories.toml")[item.frame.name]
    numbers = dict(item.numbers)
    also = {**numbers, "answer": numbers["in_whole"]} if item.frame.in_whole else numbers
    return StoryWords(
        tuple(_filled(sentence, numbers) for sentence in written["sentences"]),
        _filled(written["unit"], numbers),
        _filled(written["answer"], numbers),
        _filled(written.get("also", ""), also),
    )


def _filled(text: str, numbers: dict[str, Ratio]) -> str:
    """Put numbers, and the forms of words that go with them, in the place of their names.

    Two forms are for numbers up to 1 and above; three for numbers below 1, for 1, and above.
    """

    def put(found: re.Match[str]) -> str:
        name, *forms = found.groups()
        number = numbers[name]
        if forms[0] is None:
            return number.text
        least, middle, most = forms if forms[2] is not None else (forms[0], forms[0], forms[1])
        return least if number.value < ONE else middle if number.value == ONE else most

    return _PLACEHOLDER.sub(put, text)
