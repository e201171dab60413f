"""What the marks of a class show: who thinks what, how sure that is, and what to do with whom tomorrow."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Sequence
from enum import Enum

from foldmath.marking.judging.explanations import Explanation
from foldmath.marking.judging.marks import Verdict
from foldmath.marking.marked_class import PATTERN, MarkedAnswer, MarkedClass, MarkedPupil
from foldmath.values import frozen

FEW_PUPILS = 8
"""Of fewer pupils nothing is said about an item [common practice, no source]."""

MISSED = (3, 4)
"""An item that three pupils in four missed is looked at first: it may be at fault, not they."""

STRUGGLES = (1, 3)
"""A pupil with a third of the answers wrong works with the others again, pattern or none."""


class Pile(Enum):
    """Three piles of papers, for three groups tomorrow."""

    FOLD = "fold"
    """Slips at folding, and at saying what a fold did."""
    SHADE = "shade"
    """Slips at multiplying and at other work in figures."""
    GO_ON = "go on"


@frozen
class Thought:
    """What one pupil seems to think.

    Args:
        explanation: one of those that show it.
        answers: by which it is shown.
    """

    explanation: Explanation
    answers: tuple[MarkedAnswer, ...]

    @property
    def pattern(self) -> bool:
        """Whether enough answers show it."""
        return len(self.answers) >= PATTERN


@frozen
class PupilEvidence:
    """What one pupil's answers show.

    Args:
        marked: the pupil.
        thoughts: those shown by most answers first; of several that the same answers show, all.
        pile: for tomorrow.
    """

    marked: MarkedPupil
    thoughts: tuple[Thought, ...]
    pile: Pile

    @property
    def patterns(self) -> tuple[Thought, ...]:
        """The thoughts that enough answers show."""
        return tuple(thought for thought in self.thoughts if thought.pattern)


@frozen
class ClassThought:
    """What several pupils seem to think.

    Args:
        explanation: one of those that show it.
        surely: the pupils with a pattern.
        perhaps: those with one answer.
        example: the wrong answer of this kind that most pupils gave.
    """

    explanation: Explanation
    surely: tuple[MarkedPupil, ...]
    perhaps: tuple[MarkedPupil, ...]
    example: MarkedAnswer


@frozen(kw_only=True)
class ClassEvidence:
    """What the marks of a class show.

    Args:
        marked: the class.
        pupils: those who were there.
        thoughts: what is thought by most first.
        missed: the columns that nearly everybody missed, with how many did, of how many.
        unread: the answers that were left open, with their pupils.
    """

    marked: MarkedClass
    pupils: tuple[PupilEvidence, ...]
    thoughts: tuple[ClassThought, ...]
    missed: tuple[tuple[str, int, int], ...]
    unread: tuple[tuple[MarkedPupil, MarkedAnswer], ...]

    def pile(self, pile: Pile) -> tuple[PupilEvidence, ...]:
        """Give the pupils of a pile."""
        return tuple(pupil for pupil in self.pupils if pupil.pile is pile)


def evidence_of(marked: MarkedClass) -> ClassEvidence:
    """Gather what the marks of a class show."""
    pupils = tuple(_of_pupil(pupil) for pupil in marked.present)
    unread = tuple(
        (pupil, answer)
        for pupil in marked.present
        for answer in pupil.answers
        if answer.mark.verdict is Verdict.UNREAD
    )
    return ClassEvidence(
        marked=marked,
        pupils=pupils,
        thoughts=_thoughts_of(pupils),
        missed=tuple(_missed(marked.present)),
        unread=unread,
    )


def _of_pupil(marked: MarkedPupil) -> PupilEvidence:
    shown: defaultdict[str, list[MarkedAnswer]] = defaultdict(list)
    by_name: dict[str, Explanation] = {}
    for answer in marked.answers:
        for explanation in answer.mark.explanations:
            shown[explanation.name].append(answer)
            by_name.setdefault(explanation.name, explanation)
    thoughts = [Thought(by_name[name], tuple(answers)) for name, answers in shown.items()]
    kept = sorted(_not_outdone(thoughts), key=lambda thought: -len(thought.answers))
    return PupilEvidence(marked, tuple(kept), _pile(marked, kept))


def _not_outdone(thoughts: Sequence[Thought]) -> list[Thought]:
    """Leave out what is shown by nothing but a part of the answers that show another thought."""
    cells = {id(thought): {answer.question.column for answer in thought.answers} for thought in thoughts}
    return [
        thought
        for thought in thoughts
        if not any(cells[id(thought)] < cells[id(other)] for other in thoughts)
    ]


def _pile(marked: MarkedPupil, thoughts: Sequence[Thought]) -> Pile:
    """Put a pupil's papers on a pile: by a pattern, or else by where a third of the answers is wrong."""
    patterns = [thought.explanation for thought in thoughts if thought.pattern]
    if any(one.rule and one.rule.at_folds for one in patterns):
        return Pile.FOLD
    folds = [answer for answer in marked.answers if answer.question.fold is not None]
    others = [answer for answer in marked.answers if answer not in folds]
    if _struggles(folds):
        return Pile.FOLD
    return Pile.SHADE if patterns or _struggles(others) else Pile.GO_ON


def _struggles(answers: Sequence[MarkedAnswer]) -> bool:
    wrong = sum(answer.mark.verdict in (Verdict.WRONG, Verdict.NOT_DONE) for answer in answers)
    return bool(answers) and wrong * STRUGGLES[1] >= len(answers) * STRUGGLES[0]


def _thoughts_of(pupils: Iterable[PupilEvidence]) -> tuple[ClassThought, ...]:
    surely: defaultdict[str, list[MarkedPupil]] = defaultdict(list)
    perhaps: defaultdict[str, list[MarkedPupil]] = defaultdict(list)
    answers: defaultdict[str, list[MarkedAnswer]] = defaultdict(list)
    explanations: dict[str, Explanation] = {}
    for pupil in pupils:
        for thought in pupil.thoughts:
            name = thought.explanation.name
            (surely if thought.pattern else perhaps)[name].append(pupil.marked)
            answers[name] += thought.answers
            explanations.setdefault(name, thought.explanation)
    found = [
        ClassThought(one, tuple(surely[name]), tuple(perhaps[name]), _commonest(answers[name]))
        for name, one in explanations.items()
    ]
    return tuple(sorted(found, key=lambda thought: (-len(thought.surely), -len(thought.perhaps))))


def _commonest(answers: Sequence[MarkedAnswer]) -> MarkedAnswer:
    counted = Counter((str(answer.question.asks), answer.answer) for answer in answers)
    return max(answers, key=lambda answer: counted[str(answer.question.asks), answer.answer])


def _missed(pupils: Sequence[MarkedPupil]) -> list[tuple[str, int, int]]:
    """Find the items that nearly everybody missed, of those that enough pupils were asked alike."""
    asked: Counter[tuple[str, str]] = Counter()
    wrong: Counter[tuple[str, str]] = Counter()
    for pupil in pupils:
        for answer in pupil.answers:
            key = (answer.question.column, str(answer.question.asks))
            asked[key] += 1
            wrong[key] += answer.mark.verdict in (Verdict.WRONG, Verdict.NOT_DONE)
    share, of = MISSED
    return [
        (column, wrong[column, asks], count)
        for (column, asks), count in asked.items()
        if count >= FEW_PUPILS and wrong[column, asks] * of >= count * share
    ]
