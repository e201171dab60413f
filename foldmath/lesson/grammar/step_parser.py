"""One sentence in, one step out: each language has a grammar, and ``meaning`` says what its rules mean."""

import re
from collections.abc import Callable
from functools import cache
from typing import cast

from lark import Lark, UnexpectedCharacters, UnexpectedToken

from foldmath.grammars import compiled
from foldmath.lesson.grammar.meaning import FoldInHalf, meaning
from foldmath.lesson.grammar.refusals import HalfWithoutSide, StepUnreadable
from foldmath.paper.steps import (
    Step,
)
from foldmath.phrases import Phrase, phrase
from foldmath.words.authored import authored
from foldmath.words.languages import DEFAULT

LONGEST_SENTENCE = 200
"""No sentence of the step language has more characters than this."""


def sentence_in(text: str, language: str) -> Step | FoldInHalf:
    """Read one sentence of a language.

    Raises:
        StepUnreadable: it is no sentence of the step language, or one of its numbers cannot be used.
    """
    if len(text) > LONGEST_SENTENCE:
        raise StepUnreadable(
            phrase("a step has at most {longest} characters", longest=LONGEST_SENTENCE),
            1,
            text[:40],
            hint=phrase("write one fold in each step"),
        )
    if not text.strip():
        raise StepUnreadable(phrase("this step is empty"), 1, "", hint=phrase("leave this step out"))
    try:
        return cast(Step | FoldInHalf, _parser(language).parse(text))
    except UnexpectedCharacters as error:
        raise _at_word(
            text,
            error.pos_in_stream or 0,
            lambda word: phrase("'{word}' is not a word that steps use", word=word),
        ) from None
    except UnexpectedToken as error:
        if error.token.type == "$END":
            raise _at_word(
                text,
                len(text.rstrip()) - 1,
                lambda word: phrase("the step stops too early, after '{word}'", word=word),
            ) from None
        raise _at_word(
            text, error.token.start_pos or 0, lambda word: phrase("'{word}' does not fit here", word=word)
        ) from None


def step_in(text: str, language: str = DEFAULT) -> Step:
    """Read one sentence whose meaning does not depend on how the paper lies.

    Raises:
        StepUnreadable: it is no sentence of the language, or says of no fold in half which side moves.
    """
    step = sentence_in(text, language)
    if isinstance(step, FoldInHalf):
        raise HalfWithoutSide(text)
    return step


def _at_word(text: str, position: int, message: Callable[[str], Phrase]) -> StepUnreadable:
    """Say what is wrong with the word that stands at or ends at a position."""
    words = [word for word in re.finditer(r"[\w/.\-−]+|\S", text) if word.start() <= position < word.end()]
    start, word = (words[0].start(), words[0].group()) if words else (position, text[position : position + 1])
    return StepUnreadable(message(word), start + 1, word)


@cache
def _parser(language: str) -> Lark:
    grammar = authored(language, "steps.lark")
    return compiled(f"steps-{language}", grammar, lexer="contextual", transformer=meaning(language))
