"""Reading a step, with a remedy for every sentence that is none."""

from foldmath.lesson.grammar.refusals import StepUnreadable
from foldmath.lesson.grammar.step_parser import step_in
from foldmath.paper.steps import Step
from foldmath.words.steps import WrittenStep


def parse_step(text: str) -> Step:
    """Read one sentence of the step language.

    Raises:
        StepUnreadable: it cannot be read; ``hint`` is the nearest sentence that can, or advice.
    """
    try:
        return step_in(text)
    except StepUnreadable as refusal:
        raise StepUnreadable(
            refusal.message, refusal.column, refusal.words, refusal.instead, _hint(text, refusal)
        ) from None


def written_step(text: str, line: int = 0, column: int = 0) -> WrittenStep:
    """Read one sentence and keep it beside its step.

    Args:
        text: the sentence.
        line: where it begins in its file, counted from 1; 0 if it stands in none.
        column: the same.

    Raises:
        StepUnreadable: as ``parse_step`` does.
    """
    return WrittenStep(text.strip(), parse_step(text), line, column)


def _hint(text: str, refusal: StepUnreadable) -> str:
    if refusal.hint:
        return str(refusal.hint)
    start = refusal.column - 1
    replaced = text[:start] + refusal.instead + text[start + len(refusal.words) :]
    if refusal.instead:
        try:
            step_in(replaced)
        except StepUnreadable:
            pass
        else:
            return replaced
    from foldmath.lesson.grammar.suggestions import nearest_sentence

    return nearest_sentence(text, refusal)
