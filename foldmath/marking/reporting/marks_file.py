"""``marks.csv``: every answer with its mark, a row each; and what such a file says, read back."""

from collections.abc import Iterator
from functools import lru_cache

from foldmath.marking.judging.explanations import Explanation
from foldmath.marking.marked_class import MarkedAnswer, MarkedClass
from foldmath.marking.reporting.says import says_all
from foldmath.words.saying import say

HEADER = ("pupil", "item", "answer", "verdict", "rule", "says")
WIDTHS_MM = (40, 24, 28, 36, 48, 150)

EITHER = " or "
"""Between the names of rules that explain an answer equally well."""


def mark_rows(marked: MarkedClass, language: str) -> Iterator[tuple[str, ...]]:
    """Give the rows of ``marks.csv``, the header first; absent pupils have none."""
    yield HEADER
    for pupil in marked.present:
        for answer in pupil.answers:
            yield (pupil.pupil.label, answer.question.column, answer.answer, *_told(answer, language))


def _told(answer: MarkedAnswer, language: str) -> tuple[str, str, str]:
    mark = answer.mark
    if mark.reason:
        return mark.verdict.value, "", say(mark.reason, language)
    names = EITHER.join(dict.fromkeys(one.name for one in mark.explanations))
    return mark.verdict.value, names, _said(mark.explanations, language)


@lru_cache(maxsize=65_536)
def _said(explanations: tuple[Explanation, ...], language: str) -> str:
    return says_all(explanations, language)
