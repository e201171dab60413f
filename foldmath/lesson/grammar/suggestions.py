"""The nearest sentence that can be read, for words that cannot."""

import re
from collections.abc import Iterator, Mapping
from difflib import SequenceMatcher, get_close_matches
from functools import cache

from foldmath.lesson.grammar.refusals import StepUnreadable
from foldmath.lesson.grammar.step_parser import LONGEST_SENTENCE, step_in
from foldmath.values import frozen
from foldmath.words.authored import table
from foldmath.words.languages import DEFAULT
from foldmath.words.steps import STEPS, step_sentence

PATTERNS = (
    "fold left edge to right edge",
    "fold top edge to bottom edge",
    "fold left edge to middle",
    "fold top edge to 1/3",
    "fold both edges to middle",
    "fold top and bottom edges to middle",
    "fold at 1/3 moving left",
    "fold at 1/3 moving top",
    "fold bottom left corner to top right corner",
    "fold (0, 0) to (1/2, 1)",
    "fold along (0, 0) (1, 1) moving (0, 1)",
    "fold left edge to right edge, behind",
    "pleat width into 5",
    "pleat height into 3",
    "open last",
    "open",
    "turn over",
    "turn left",
    "turn right",
    "shade 2 of 3 across",
    "shade 4 of 5 up",
    "cut at height 1/2 from 1/4 to 3/4",
    "cut at height 1/2 from left edge to 1/2",
    "cut at width 1/2 from bottom edge to 1/2",
    "gather into booklet",
    "gather into booklet with cover at column 1",
)
"""One sentence of every kind."""

NEAR = "near_steps.toml"
"""What people write for the words of a language's steps, and are spelt quite unlike them; idioms."""


_WORD = re.compile(r"[^\W\d_]+|[-−]?[\d./]+|\S")
_WHOLE_WORD = re.compile(r"\w+")
"""With the figures in it: "o0en" is a slip in "open", and has no Spanish "en"."""


@frozen(kw_only=True)
class _Language:
    """The words of a language's steps.

    Args:
        name: of the language.
        patterns: one sentence of every kind.
        words: those that stand in sentences.
        passed: words that are read too, and left as they are.
        articles: that may stand before a word.
        near: words that people use for those of the steps.
        idioms: sentences that people use, and those that can be read.
    """

    name: str
    patterns: tuple[str, ...]
    words: tuple[str, ...]
    passed: frozenset[str]
    articles: str
    near: Mapping[str, str]
    idioms: Mapping[str, str]


@cache
def _spoken(language: str) -> _Language:
    """Give the words of a language; one that has no file of its own has those of its usual sentences."""
    try:
        told = table(language, NEAR)
    except FileNotFoundError:
        told = {}
    patterns = (
        PATTERNS
        if language == DEFAULT
        else tuple(step_sentence(step_in(pattern), language) for pattern in PATTERNS)
    )
    found = re.findall(r"[^\W\d_]+", " ".join(patterns))
    words = [*found, *told.get("also", ()), *table(language, STEPS)["count_words"]]
    return _Language(
        name=language,
        patterns=patterns,
        words=tuple(dict.fromkeys(words)),
        passed=frozenset(told.get("passed", ())),
        articles="|".join(told.get("articles", ())),
        near=told.get("words", {}),
        idioms=told.get("idioms", {}),
    )


def words_known(text: str, language: str) -> int:
    """Count the words of a sentence that stand in steps of a language."""
    spoken = _spoken(language)
    return sum(word in spoken.words or word in spoken.passed for word in _WHOLE_WORD.findall(text.casefold()))


def nearest_sentence(text: str, refusal: StepUnreadable, language: str = DEFAULT) -> str:
    """Give the nearest sentence that can be read.

    Args:
        text: the sentence that cannot.
        refusal: what ``step_in`` said of it.
        language: that the text is in, and the sentence.
    """
    spoken = _spoken(language)
    text = " ".join(text[:LONGEST_SENTENCE].split())
    idiom = get_close_matches(text.casefold().rstrip("."), spoken.idioms, n=1, cutoff=0.85)
    if idiom:
        return spoken.idioms[idiom[0]]
    spelt = _with_known_words(text, spoken)
    does = spelt.casefold().split()[:1]
    trial = refusal
    if spelt != text:
        try:
            step_in(spelt, language)
        except StepUnreadable as error:
            trial = error
            if trial.instead:
                spelt = (
                    spelt[: trial.column - 1] + trial.instead + spelt[trial.column - 1 + len(trial.words) :]
                )
                if _is_readable(spelt, language):
                    return spelt
        else:
            return spelt
    mended = {
        sentence
        for sentence in _one_word_away(spelt, trial.column - 1, spoken)
        if _is_readable(sentence, language)
    }
    return max(
        [*sorted(mended), *spoken.patterns],
        key=lambda sentence: (sentence.split()[:1] == does, *_likeness(text, sentence, sentence in mended)),
    )


def _is_readable(text: str, language: str) -> bool:
    try:
        step_in(text, language)
    except StepUnreadable:
        return False
    return True


def _with_known_words(text: str, spoken: _Language) -> str:
    """Put the nearest known word in the place of every unknown one."""

    def known(found: re.Match[str]) -> str:
        word = found.group().casefold()
        if word in spoken.words or word in spoken.passed:
            return found.group()
        near = get_close_matches(word, spoken.words, n=1, cutoff=0.6)
        return spoken.near.get(word) or (near[0] if near else found.group())

    return re.sub(r"[^\W\d_]+", known, text)


def _one_word_away(text: str, position: int, spoken: _Language) -> Iterator[str]:
    """Give sentences with one word more, fewer or other, near a position."""
    words = list(_WORD.finditer(text))
    there = next((index for index, word in enumerate(words) if word.end() > position), len(words))
    for index in range(max(there - 1, 0), min(there + 2, len(words) + 1)):
        start = words[index].start() if index < len(words) else len(text)
        end = words[index].end() if index < len(words) else len(text)
        before, after = re.sub(rf"(\s|\b(?:{spoken.articles}))*$", "", text[:start]), text[end:].strip()
        for ending in ("", after):
            yield _spaced(before, ending)
        for word in (*spoken.words, "1/2", "(", ")", ","):
            for ending in ("", after, text[start:]):
                yield _spaced(before, word, ending)


def _spaced(*words: str) -> str:
    """Put words together with the spaces of a sentence."""
    return re.sub(r"(?<=\() | (?=[,)])", "", " ".join(words).strip())


def _likeness(text: str, sentence: str, mended: bool) -> tuple[bool, float, float]:
    """Tell how near a sentence is that does the same: first by how it was found, then by its words."""
    asked, offered = text.casefold(), sentence.casefold()
    asked_words, offered_words = _WORD.findall(asked), _WORD.findall(offered)
    return (
        mended,
        SequenceMatcher(None, asked_words, offered_words).ratio(),
        SequenceMatcher(None, asked, offered).ratio(),
    )
