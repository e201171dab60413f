"""Word problems in words: takes a telling and a language, gives what a pupil reads."""

import re
from collections.abc import Iterator

from foldmath.plane.numbers import ONE
from foldmath.statements.items.story import StoryItem
from foldmath.statements.ratios import Ratio
from foldmath.statements.wordings import Name, Part, Wording
from foldmath.values import frozen
from foldmath.words.authored import table

_PLACEHOLDER = re.compile(r"\{(\w+)(?::([^|}]+)(?:\|([^|}]+))?(?:\|([^|}]+))?)?\}")

WHO = "who"
"""Stands for whom a story tells of."""


@frozen
class StoryWords:
    """One telling in one language.

    Args:
        sentences: the last one is the question.
        unit: of the answer and of the wrong answers: ``m``, ``of the bed``, ``boats``.
        answer: a whole sentence with the answer.
        also: the answer as a part of the total, which is right too; None if it is not said so.
    """

    sentences: tuple[Wording, ...]
    unit: Wording
    answer: Wording
    also: Wording | None


def story_words(item: StoryItem, language: str) -> StoryWords:
    """Say a telling in a language."""
    written = table(language, "stories.toml")[item.frame.name]
    numbers = dict(item.numbers)
    also = {**numbers, "answer": numbers["in_whole"]} if item.frame.in_whole else numbers
    return StoryWords(
        tuple(_filled(sentence, numbers, item.name) for sentence in written["sentences"]),
        _filled(written["unit"], numbers),
        _filled(written["answer"], numbers, item.name),
        _filled(written["also"], also) if "also" in written else None,
    )


def _filled(text: str, numbers: dict[str, Ratio], who: str = "") -> Wording:
    """Put numbers, the forms of words that go with them, and whom it tells of in the place of their names.

    Two forms are for numbers up to 1 and above; three for numbers below 1, for 1, and above.
    """
    parts: list[Part] = []
    end = 0
    for found in _PLACEHOLDER.finditer(text):
        name, *forms = found.groups()
        parts.append(text[end : found.start()])
        if name == WHO:
            parts += _who(who, forms[0], forms[1])
        else:
            parts.append(_form(numbers[name], forms) if forms[0] else numbers[name])
        end = found.end()
    return Wording((*parts, text[end:]))


def _who(name: str, anybody: str, verb: str | None) -> Iterator[Part]:
    """Give a name, with its verb where the words for anybody have one; these words where there is none."""
    if not name:
        yield anybody
        return
    yield Name(name)
    if verb:
        yield f" {verb}"


def _form(number: Ratio, forms: list[str | None]) -> str:
    one, other, third = forms
    least, middle, most = (one, other, third) if third else (one, one, other)
    return (least if number.value < ONE else middle if number.value == ONE else most) or ""
