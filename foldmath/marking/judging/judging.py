"""Judging one answer: takes a question and what was typed, gives its mark."""

from collections import Counter
from collections.abc import Mapping
from functools import lru_cache, singledispatch

from foldmath.errors import FoldmathError
from foldmath.lesson.grammar.step_parser import step_in
from foldmath.marking.asking.questions import (
    AnyQuestion,
    FoldingQuestion,
    NumberQuestion,
    NumbersQuestion,
    ReasonQuestion,
    SentenceQuestion,
    SignQuestion,
    TicksQuestion,
    TruthQuestion,
)
from foldmath.marking.judging.explaining import Written, explain
from foldmath.marking.judging.explanations import Explanation, Way, share
from foldmath.marking.judging.marks import Mark, Verdict
from foldmath.marking.reading.answers import (
    Answer,
    DateMade,
    Judged,
    NoNumber,
    NotDone,
    Number,
    Numbers,
    Sentence,
    SignAnswer,
    Ticks,
    Truth,
    Unread,
    Words,
)
from foldmath.phrases import Said, counted, phrase
from foldmath.statements.answers import Sorting
from foldmath.statements.expressions import Claim, Comparison, value
from foldmath.statements.items import NoSuchItem
from foldmath.statements.items.which_fold import sizes_after
from foldmath.statements.ratios import Ratio, fraction
from foldmath.statements.rules import Rule, likeliest_rules

Elsewhere = Mapping[Written, str]
Followed = frozenset[Rule]

RIGHT, WRONG, NOT_DONE = Mark(Verdict.RIGHT), Mark(Verdict.WRONG), Mark(Verdict.NOT_DONE)


def judge(
    question: AnyQuestion,
    answer: Answer,
    elsewhere: Elsewhere,
    followed: Followed = frozenset(),
) -> Mark:
    """Mark an answer.

    Args:
        question: that was asked.
        answer: that was typed.
        elsewhere: the columns of the page's other questions, by their right answers.
        followed: rules that the pupil follows in other answers.
    """
    if isinstance(answer, NotDone):
        return NOT_DONE
    if isinstance(answer, Judged):
        return RIGHT if answer.right else WRONG
    if isinstance(answer, Unread):
        return Mark(Verdict.UNREAD, reason=answer.reason)
    if isinstance(answer, DateMade):
        texts = [ratio.text for ratio in answer.readings]
        readings = phrase("{first} or {second}", first=texts[0], second=texts[-1])
        made = phrase("a spreadsheet made this date of a fraction: was it {readings}?", readings=readings)
        return _unread(made)
    return _judge(question, answer, elsewhere, followed)


@singledispatch
def _judge(question: AnyQuestion, answer: Answer, elsewhere: Elsewhere, followed: Followed) -> Mark:
    raise TypeError(f"not a question: {question!r}")


@_judge.register
def _(question: NumberQuestion, answer: Answer, elsewhere: Elsewhere, followed: Followed) -> Mark:
    ratio = _one_number(answer)
    if isinstance(answer, NoNumber):
        return WRONG
    if ratio is None:
        return _unread(phrase("a number is wanted"))
    if question.over and ratio.whole:
        ratio = fraction(ratio.numerator, question.over)
    if ratio.value != question.answer.value:
        return Mark(Verdict.WRONG, explain(question, ratio, elsewhere, followed))
    return RIGHT if ratio.text in question.forms else Mark(Verdict.ANOTHER_FORM)


@_judge.register
def _(question: NumbersQuestion, answer: Answer, elsewhere: Elsewhere, followed: Followed) -> Mark:
    given = answer.ratios if isinstance(answer, Numbers) else ()
    if isinstance(answer, Number):
        given = (answer.ratio,)
    if not given:
        return _unread(phrase("a number is wanted"))
    if len(given) != len(question.answers):
        wanted = counted("one number is wanted", "{count} numbers are wanted", len(question.answers))
        return _unread(wanted)
    values, right = [ratio.value for ratio in given], [ratio.value for ratio in question.answers]
    same = values == right if question.in_order else Counter(values) == Counter(right)
    return RIGHT if same else WRONG


@_judge.register
def _(question: SignQuestion, answer: Answer, elsewhere: Elsewhere, followed: Followed) -> Mark:
    if not isinstance(answer, SignAnswer):
        return _unread(phrase("<, > or = is wanted"))
    return RIGHT if answer.sign is question.sign else _ruled(question, answer.sign)


@_judge.register
def _(question: TicksQuestion, answer: Answer, elsewhere: Elsewhere, followed: Followed) -> Mark:
    if not isinstance(answer, Ticks) or len(answer.about) != len(question.about):
        return _unread(counted("one c or s is wanted", "{count} of c and s are wanted", len(question.about)))
    return RIGHT if answer.about == question.about else _ruled(question, Sorting(answer.about))


@_judge.register
def _(question: TruthQuestion, answer: Answer, elsewhere: Elsewhere, followed: Followed) -> Mark:
    if not isinstance(answer, Truth):
        return _unread(phrase("true or false is wanted, or t or f"))
    return RIGHT if answer.true is question.true else WRONG


@_judge.register
def _(question: SentenceQuestion, answer: Answer, elsewhere: Elsewhere, followed: Followed) -> Mark:
    if isinstance(answer, Number) and question.alone:
        right = answer.ratio.value == question.alone.value
        return RIGHT if right else _ruled(question, answer.ratio)
    if not isinstance(answer, Sentence):
        return _unread(phrase("the whole sentence is wanted, as {example}", example=question.answer))
    claim = answer.claim
    values = [value(side) for side in claim.sides]
    true = all(
        comparison.holds(*pair)
        for comparison, *pair in zip(claim.comparisons, values, values[1:], strict=False)
    )
    if true and values[-1] in question.values and Comparison.EQUAL in claim.comparisons:
        return RIGHT
    return _ruled(question, claim)


@_judge.register
def _(question: FoldingQuestion, answer: Answer, elsewhere: Elsewhere, followed: Followed) -> Mark:
    made = _sizes(answer.text) if isinstance(answer, Words) else None
    if made is None:
        return _unread(phrase("steps are wanted, as {example}; or ✓ or ✗", example=question.answer))
    return RIGHT if made == question.sizes else WRONG


@_judge.register
def _(question: ReasonQuestion, answer: Answer, elsewhere: Elsewhere, followed: Followed) -> Mark:
    return _unread(phrase("✓ or ✗ is wanted, since the answer is in words"))


def _one_number(answer: Answer) -> Ratio | None:
    """Give a number; of a whole sentence what it ends with, which is the pupil's answer."""
    if isinstance(answer, Number):
        return answer.ratio
    if isinstance(answer, Sentence):
        last = answer.claim.sides[-1]
        return last if isinstance(last, Ratio) else None
    return None


def _ruled(question: AnyQuestion, said: Comparison | Sorting | Claim | Ratio) -> Mark:
    """Look up by which rule a pupil says this."""
    problem = question.problem
    found = tuple(
        Explanation(way=Way.RULE, rule=rule, per_mille=share(rule))
        for rule in (likeliest_rules(problem) if problem else ())
        if problem and said in rule.answers(problem)
    )
    return Mark(Verdict.WRONG, found)


@lru_cache(maxsize=1024)
def _sizes(text: str) -> tuple[tuple[int, object], ...] | None:
    """Fold a sheet by the steps that were typed; None where they cannot be read or done."""
    try:
        steps = tuple(step_in(sentence.strip()) for sentence in text.split(";"))
        return sizes_after(steps)
    except (FoldmathError, NoSuchItem):
        return None


def _unread(reason: Said) -> Mark:
    return Mark(Verdict.UNREAD, reason=reason)
