"""``explain``: everything true that the steps of a lesson show, best for its grade first."""

import os
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from foldmath.cli.terminal.data import print_data
from foldmath.cli.terminal.speaking import spoken
from foldmath.errors import Unreadable
from foldmath.phrases import counted, phrase
from foldmath.words.languages import terminal_language

if TYPE_CHECKING:
    from foldmath.statements.explaining import Explanation
    from foldmath.words.steps import WrittenStep

USUAL_OF_A_KIND = 2
"""How many sentences of each kind are told of a step, unless all are wished for."""

LEAST_FAMILY = 11
"""Signs of room for what kind of sentence it is, so that steps stand under one another."""


def tell_explanations(lesson: str, step: int | None, *, most: int | None, as_json: bool) -> int:
    """Print what the steps of a lesson show, or what one step shows; give the exit code.

    Args:
        lesson: the path of the lesson.
        step: counted from 1; None for all steps.
        most: how many sentences of each kind are told; None for all of them.
        as_json: as data.

    Raises:
        Unreadable: there is no such step.
    """
    from foldmath.making import proved_lesson
    from foldmath.statements.explaining import best_of_each_kind, explanations

    proved, _ = proved_lesson(Path(lesson))
    steps, grade = proved.lesson.steps, proved.lesson.grade
    if step is not None and not 1 <= step <= len(steps):
        raise Unreadable(
            phrase("--step {step}: the lesson has steps 1 to {last}", step=step, last=len(steps)),
            f"--step {len(steps)}",
        )
    told = []
    for number in range(1, len(steps) + 1) if step is None else (step,):
        found = explanations(proved.moments, number - 1, grade=grade, followed=proved.lesson.followed)
        kept = found if most is None else best_of_each_kind(found, most)
        told.append((number, steps[number - 1], kept, len(found)))
    if as_json:
        print_data([_data(*one[:3]) for one in told])
    else:
        parts = [_in_words(*one, grade) for one in told]
        print("\n\n".join([*parts, *_notices([one for _, _, kept, _ in told for one in kept])]))
    return 0


def _notices(found: "Sequence[Explanation]") -> list[str]:
    """Give what the owners of the codes that are told ask to be said beside them, each once."""
    return list(dict.fromkeys(one.standard.curriculum.notice for one in found if one.standard))


def _data(number: int, step: "WrittenStep", found: "Sequence[Explanation]") -> dict[str, Any]:
    return {
        "step": number,
        "sentence": step.text,
        "shows": [
            {
                "about": one.family.name.lower(),
                "text": str(one.claim),
                "of": str(one.of or ""),
                "standard": one.standard.code if one.standard else "",
                "grade": one.standard.grade if one.standard else None,
            }
            for one in found
        ],
        "notices": _notices(found),
    }


def _in_words(
    number: int, step: "WrittenStep", found: "Sequence[Explanation]", total: int, grade: int
) -> str:
    from foldmath.words.steps import for_reader

    sentence = for_reader(step, terminal_language(os.environ))
    lines = [spoken(phrase("step {number}: {sentence}", number=number, sentence=sentence))]
    rows = [(spoken(one.family.said), _text(one), _standard(one, grade)) for one in found]
    widths = [max((len(row[column]) for row in rows), default=0) for column in range(2)]
    label = max(widths[0], LEAST_FAMILY)
    lines += [f"  {said:{label}} {text:{widths[1]}}  {standard}".rstrip() for said, text, standard in rows]
    if not found:
        lines.append("  " + spoken(phrase("it cuts no panel and shades none, so it shows no sentence")))
    if len(found) < total:
        more = total - len(found)
        lines.append(
            "  "
            + spoken(counted("and {count} more; --all tells it", "and {count} more; --all tells them", more))
        )
    return "\n".join(lines)


def _text(one: "Explanation") -> str:
    from foldmath.statements.explaining import Family

    if one.family is Family.COUNT:
        return spoken(phrase("{claim} panels", claim=one.claim))
    if one.of:
        return spoken(phrase("{reason}, so {claim}", reason=one.of, claim=one.claim))
    return str(one.claim)


def _standard(one: "Explanation", grade: int) -> str:
    if one.standard is None:
        return ""
    if one.standard.grade > grade:
        return spoken(phrase("{standard} (later)", standard=one.standard.code))
    return one.standard.code
