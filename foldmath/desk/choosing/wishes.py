"""Lessons from a wish: takes what is wanted of a sheet, gives the planner's answers with their pictures."""

from markupsafe import Markup

from foldmath.drawing.rendering.svg import svg
from foldmath.drawing.sheets.crease_patterns import crease_pattern
from foldmath.drawing.sheets.folded_sheets import folded_sheet
from foldmath.lesson.proving import prove
from foldmath.lesson.reading import lesson_in
from foldmath.paper.sizes import paper_named
from foldmath.paper.steps import FoldStep
from foldmath.phrases import Phrase, phrase
from foldmath.planning.plan_lesson import Class, lesson_text
from foldmath.planning.plan_words import figures, why
from foldmath.planning.planner import plan
from foldmath.planning.ranking import Ranked, priority_of
from foldmath.planning.wanted import DIVIDERS, Wanted, wanted_panels, wanted_product, wanted_sizes
from foldmath.statements.products import EXAMPLE
from foldmath.statements.refusals import SentenceRefused
from foldmath.tolerance.assumed.spread import default_spread
from foldmath.tolerance.assumed.stock import usual_stock
from foldmath.values import frozen
from foldmath.words.steps import step_sentence

GOALS = phrase("2/3 × 4/5, or 24 panels, or 1/6, 1/6, 2/3")
"""One of each that can be wanted."""

LONGEST_NUMBER = 9
"""Figures of a number of panels; more are refused as any number past the most is."""

PICTURE_MM = (44.0, 34.0)
BEST = 5


@frozen(kw_only=True)
class Answer:
    """One folding that fulfils a wish.

    Args:
        pictures: the sheet before each fold, with the fold to come, and the opened sheet at the end.
        sentences: its steps.
        figures: folds, layers, the smallest panel, how true it comes out.
        why: it stands where it does.
    """

    pictures: tuple[Markup, ...]
    sentences: tuple[str, ...]
    figures: Phrase
    why: Phrase


@frozen
class Answers:
    """What the planner found for a wish, best first, and for whom."""

    wanted: Wanted
    ranked: tuple[Ranked, ...]
    made_for: Class

    def shown(self, language: str) -> list[Answer]:
        """Give the answers as they are shown to who reads a language."""
        return [_answer(ranked, self.made_for, language) for ranked in self.ranked]

    def lesson(self, number: int, language: str) -> str:
        """Write one of the answers, counted from 0, as a lesson, once it is proved to be one.

        Raises:
            IndexError: there are not so many.
            LessonRefused: it is none.
        """
        text = lesson_text(self.wanted, self.ranked[number], self.made_for, language)
        prove(lesson_in(text, str(self.wanted.said)))
        return text


def answers(words: str, grade: int, paper: str, orientation: str) -> Answers:
    """Ask the planner.

    Raises:
        FoldmathError: the wish cannot be read, or nothing fulfils it.
    """
    wanted = wanted_in_words(words)
    size = paper_named(paper)
    stock = usual_stock(size.name, size.unit)
    spread = default_spread(grade, stock)
    made_for = Class(grade=grade, size=size, orientation=orientation, spread=spread)
    planned = plan(
        wanted,
        made_for.size,
        orientation,
        made_for.spread,
        stock,
        best=BEST,
        priority=priority_of(grade),
    )
    return Answers(wanted, planned.ranked, made_for)


def wanted_in_words(words: str) -> Wanted:
    """Read a wish as a teacher writes it: ``2/3 × 4/5``, ``24 panels``, or ``1/6, 1/6, 2/3``.

    Raises:
        SentenceRefused: it is no product, nor anything else.
        WantRefused: no sheet of paper can be folded so.
    """
    first, *rest = words.split() or [""]
    if first.isdecimal() and all(word.isalpha() for word in rest):
        return wanted_panels(int(first[:LONGEST_NUMBER]))
    if any(divider in words for divider in DIVIDERS):
        return wanted_sizes(words)
    try:
        return wanted_product(words)
    except SentenceRefused as refusal:
        # What has no near product may have been meant as any of the three.
        raise refusal.with_hint(GOALS) if refusal.hint == EXAMPLE else refusal from None


def _answer(ranked: Ranked, made_for: Class, language: str) -> Answer:
    folds = [moment for moment in ranked.moments if isinstance(moment.step, FoldStep)]
    pictures = [svg(folded_sheet(moment.before, moment.step, *PICTURE_MM), language) for moment in folds]
    pictures.append(svg(crease_pattern(ranked.moments[-1].after, *PICTURE_MM), language))
    return Answer(
        pictures=tuple(pictures),
        sentences=tuple(step_sentence(step, language) for step in ranked.plan.steps),
        figures=figures(ranked, made_for.spread),
        why=why(ranked),
    )
