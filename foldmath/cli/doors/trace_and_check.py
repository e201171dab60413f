"""``trace`` and ``check``: what a lesson does, and whether a sentence is true."""

import os
from pathlib import Path
from typing import TYPE_CHECKING, Any

from foldmath.cli.terminal.data import print_data
from foldmath.cli.terminal.speaking import in_columns, in_two_columns, spoken, tell_error
from foldmath.errors import FoldmathError
from foldmath.phrases import Said, phrase
from foldmath.statements.checking.claims import Verdict, check_claim, verdict_json
from foldmath.statements.expressions import with_of
from foldmath.words.languages import terminal_language
from foldmath.words.saying import OF

if TYPE_CHECKING:
    from foldmath.lesson.proving import ProvedLesson
    from foldmath.words.steps import WrittenStep


def tell_trace(lessons: list[str], *, as_json: bool, with_details: bool = False) -> int:
    """Print the traces of lessons, with the figures of how true they fold if asked; give the exit code."""
    from foldmath.lesson.trace import table, trace
    from foldmath.making import proved_lesson

    code = 0
    traces: list[dict[str, Any]] = []
    for name in lessons:
        try:
            proved, _ = proved_lesson(Path(name))
        except FoldmathError as error:
            code = max(code, tell_error(error))
            continue
        if as_json:
            traces.append(trace(proved))
        else:
            print(table(proved, terminal_language(os.environ)))
            print(_how_true(proved, with_details=with_details))
    if as_json and traces:
        told = traces[0] if len(lessons) == 1 else traces
        print_data(told)
    return code


def _how_true(proved: "ProvedLesson", *, with_details: bool) -> str:
    """Say how far off hands of the grade may be, and what they can hardly fold; nothing for a flat sheet."""
    from foldmath.making.languages import said_in
    from foldmath.tolerance.accuracy import accuracy
    from foldmath.tolerance.accuracy_in_words import advised, by_chance, details, ways
    from foldmath.tolerance.alternatives import MOST_SINGLY, alternatives
    from foldmath.tolerance.assumed.spread import default_spread
    from foldmath.tolerance.limits import Severity, judged

    lesson, moments = proved.lesson, proved.moments
    made = accuracy(moments, default_spread(lesson.grade, lesson.stock))
    judgements = judged(moments, lesson.stock)
    refused = any(judgement.severity is Severity.IMPOSSIBLE for judgement in judgements)
    counted = bool(made.creases) and not refused
    grade = said_in(proved, terminal_language(os.environ)).lesson.named_grade
    by_hand = phrase("folded in grade {grade}: {accuracy}", grade=grade, accuracy=advised(moments, made))
    lines = [spoken(by_hand)] if counted else []
    lines += [spoken(judgement.message) for judgement in judgements]
    if with_details and counted:
        compared = in_columns(ways(made, alternatives(moments, made)))
        lines += ["", compared, "", in_columns(details(made))]
        lines += [spoken(by_chance(made))] if len(made.creases) <= MOST_SINGLY else []
    return "\n".join([*lines, ""])


def tell_verdict(claim: str, lesson: str | None, *, as_json: bool) -> int:
    """Print whether a claim is true; give 0 for true and 1 for false."""
    verdict = check_claim(claim)
    shown = _shown_by(verdict, lesson) if lesson else []
    if as_json:
        told = verdict_json(verdict)
        if lesson:
            told["shown_by"] = [found for _, found in shown]
        print_data(told)
    else:
        print(_in_words(verdict))
        if lesson:
            print(_steps_in_words(shown))
    return 0 if verdict.true else 1


def _in_words(verdict: Verdict) -> str:
    rows: list[tuple[Said, Said]] = []
    of = spoken(OF)
    if verdict.true:
        rows.append((phrase("true:"), with_of(verdict.claim, of)))
    else:
        rows.append((phrase("false:"), with_of(verdict.claim, of)))
        rows.append((phrase("really:"), with_of(verdict.really, of)))
    if verdict.slip:
        from foldmath.words.rules import what_it_tells

        rows.append((phrase("mistake:"), what_it_tells(verdict.slip, terminal_language(os.environ))))
    label = phrase("meant:")
    for sentence in verdict.meant:
        rows.append((label, with_of(sentence, of)))
        label = phrase("   or:")
    return in_two_columns(rows)


def _shown_by(verdict: Verdict, name: str) -> list[tuple["WrittenStep", dict[str, Any]]]:
    """Find the steps of a lesson that show a claim or, where it is false, what was probably meant."""
    from foldmath.making import proved_lesson
    from foldmath.statements.sameness import same
    from foldmath.statements.sentences import fold_sentences

    proved, _ = proved_lesson(Path(name))
    wanted = (verdict.claim,) if verdict.true else (verdict.really, *verdict.meant)
    found = []
    for number, (step, moment) in enumerate(zip(proved.lesson.steps, proved.moments, strict=True), start=1):
        for sentence in fold_sentences(moment):
            for claim in wanted:
                if same(claim, sentence.claim):
                    told = {"step": number, "sentence": step.text}
                    shows = {"about": sentence.about.value, "shows": str(sentence.claim)}
                    found.append((step, {**told, **shows}))
    return found


def _steps_in_words(shown: list[tuple["WrittenStep", dict[str, Any]]]) -> str:
    from foldmath.lesson.trace import about_names
    from foldmath.statements.sentences import About
    from foldmath.words.steps import for_reader

    if not shown:
        return spoken(phrase("no step of the lesson shows it"))
    names, language = about_names(), terminal_language(os.environ)
    return "\n".join(
        spoken(
            phrase(
                "step {step} shows it: {sentence}  ({about}: {shows})",
                **found | {"about": names[About(found["about"])], "sentence": for_reader(step, language)},
            )
        )
        for step, found in shown
    )
