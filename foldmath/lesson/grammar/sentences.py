"""Reading a step in any language, with a remedy for every sentence that is none."""

from collections.abc import Callable, Mapping

from foldmath.lesson.grammar.meaning import FoldInHalf
from foldmath.lesson.grammar.refusals import EdgeOntoNext, HalfWithoutSide, StepUnreadable
from foldmath.lesson.grammar.step_parser import sentence_in, step_in
from foldmath.paper.state import FoldedState
from foldmath.paper.steps import Edge, FoldEdge, Step
from foldmath.phrases import Said
from foldmath.words.languages import kin, languages
from foldmath.words.steps import WrittenStep


def parse_step(text: str) -> Step:
    """Read one sentence of the step language, whichever language it is in.

    Raises:
        StepUnreadable: it cannot be read; ``hint`` is the nearest sentence that can, or advice.
    """
    step = _spoken(text)
    if isinstance(step, FoldInHalf):
        raise HalfWithoutSide(text)
    return step


def written_step(
    text: str, line: int = 0, column: int = 0, lies: Callable[[], FoldedState] | None = None
) -> WrittenStep:
    """Read one sentence and keep it beside its step.

    Args:
        text: the sentence.
        line: where it begins in its file, counted from 1; 0 if it stands in none.
        column: the same.
        lies: gives the paper as it lies before the step; None where that is not known.

    Raises:
        StepUnreadable: as ``parse_step`` does.
        StepRefused: the paper does not come to lie so, since a step before cannot be done.
    """
    try:
        step = _spoken(text) if lies else parse_step(text)
    except EdgeOntoNext as refusal:
        if lies is None:
            raise
        box = lies().table.box
        raise refusal.on(box.width, box.height) from None
    if isinstance(step, FoldInHalf):
        assert lies is not None
        step = in_half(lies(), behind=step.behind)
    return WrittenStep(text=text.strip(), step=step, line=line, column=column)


def in_half(state: FoldedState, *, behind: bool = False) -> FoldEdge:
    """Give the fold that halves the longer side of the paper as it lies; a square's width.

    The left or the top edge travels.
    """
    box = state.table.box
    edge = Edge.LEFT if box.width >= box.height else Edge.TOP
    return FoldEdge(edge, edge.opposite.position, behind)


def _spoken(text: str) -> Step | FoldInHalf:
    refused: dict[str, StepUnreadable] = {}
    # British steps are read by the American grammar.
    for language in (language for language in languages() if not kin(language)):
        try:
            return sentence_in(text, language)
        except StepUnreadable as refusal:
            refused[language] = refusal
    language = _meant(text, refused)
    told = refused[language]
    if told.hint:
        raise told
    hint = _hint(text, told, language)
    raise StepUnreadable(told.message, told.column, told.words, told.instead, hint)


def _meant(text: str, refused: Mapping[str, StepUnreadable]) -> str:
    """Give the language of a sentence: its grammar read most of it, and it has most of the words."""
    # Imported here, since steps that can be read need no remedies.
    from foldmath.lesson.grammar.suggestions import words_known

    return max(refused, key=lambda language: (refused[language].column, words_known(text, language)))


def _hint(text: str, refusal: StepUnreadable, language: str) -> Said:
    start = refusal.column - 1
    replaced = text[:start] + refusal.instead + text[start + len(refusal.words) :]
    if refusal.instead:
        try:
            step_in(replaced, language)
        except StepUnreadable:
            pass
        else:
            return replaced
    from foldmath.lesson.grammar.suggestions import nearest_sentence

    return nearest_sentence(text, refusal, language)
