"""Answers as HTML: takes what is right or wrong, however it is written, gives it as a key shows it."""

from functools import lru_cache
from typing import assert_never

from markupsafe import Markup, escape

from foldmath.pages.markup.mathml import NO_BREAK, SENTENCES_KEPT, prose, stacked, unbroken
from foldmath.phrases import phrase
from foldmath.statements.answers import Answer, Folds, Sorting, Working
from foldmath.statements.expressions import Claim, Comparison
from foldmath.statements.items import ExplainItem, Item, OwnItem
from foldmath.statements.items.story import StoryItem
from foldmath.statements.ratios import Ratio
from foldmath.statements.sentences import About
from foldmath.statements.wordings import Name, Part, Wording
from foldmath.words.saying import say
from foldmath.words.steps import step_sentence
from foldmath.words.stories import story_words

ABOUT = {
    About.COUNT: phrase("count"),
    About.SIZE: phrase("size"),
    About.WHOLE: phrase("whole"),
    About.SHADED: phrase("shaded"),
}
"""What a sentence tells; a key shows the first letter of each."""

WHY = phrase("why")
"""Before the reason of a sentence that is true, where a key tells no more than answers."""


@lru_cache(maxsize=SENTENCES_KEPT)
def answered(answer: Answer | Wording, language: str) -> Markup:
    """Set an answer, its fractions stacked."""
    match answer:
        case Ratio() | Claim():
            return stacked(answer, language)
        case Working(claims):
            return Markup(", ").join(stacked(claim, language) for claim in claims)
        case Comparison():
            return escape(answer.value)
        case Sorting(abouts):
            return escape(", ".join(say(ABOUT[about], language) for about in abouts))
        case Folds(steps):
            return prose(". ".join(_capital(step_sentence(step, language)) for step in steps))
        case Wording(parts):
            return Markup("").join(map(_part, parts))
    assert_never(answer)


def _part(part: Part) -> Markup:
    match part:
        case Ratio():
            return stacked(part)
        case Name(text):
            return Markup("<bdi>{}</bdi>").format(text)
    return escape(part)


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def key_answer(item: Item, language: str) -> Markup:
    """Set the answer of an item as a compact key tells it: ``cssc`` for sorted sentences."""
    match item:
        case StoryItem():
            return answered(story_words(item, language).answer, language)
        case OwnItem() if item.unit.parts:
            return answered(item.answer, language) + NO_BREAK + answered(item.unit, language)
        case ExplainItem():
            reasons = Markup(", ").join(unbroken(claim, language) for claim in item.answer.claims)
            return Markup("{}:{}{}").format(say(WHY, language), NO_BREAK, reasons)
        case Item(answer=Sorting(abouts)):
            return escape("".join(say(ABOUT[about], language)[:1] for about in abouts))
    return answered(item.answer, language)


def accepted(item: Item, language: str) -> tuple[Answer | Wording, ...]:
    """Give the other forms of an answer that are right, that of a story as a part of its whole among them."""
    also = story_words(item, language).also if isinstance(item, StoryItem) else None
    return (*item.accepted, also) if also else item.accepted
