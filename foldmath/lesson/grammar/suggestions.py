"""The nearest sentence that can be read, for words that cannot."""

import re
from collections.abc import Iterator
from difflib import SequenceMatcher, get_close_matches

from foldmath.lesson.grammar.refusals import StepUnreadable
from foldmath.lesson.grammar.step_parser import LONGEST_SENTENCE, step_in
from foldmath.words.authored import table
from foldmath.words.languages import DEFAULT
from foldmath.words.steps import STEPS

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
    "slit at height 1/2 from 1/4 to 3/4",
    "slit at height 1/2 from left edge to 1/2",
    "slit at width 1/2 from bottom edge to 1/2",
    "gather into booklet",
    "gather into booklet with cover at column 1",
)
"""One sentence of every kind."""

WORDS = tuple(
    dict.fromkeys(
        [
            *re.findall(r"[a-z]+", " ".join(PATTERNS)),
            "center",
            "halfway",
            "parts",
            "sheet",
            *table(DEFAULT, STEPS)["count_words"],
        ]
    )
)

NEAR_WORDS = {
    "half": "middle",
    "mid": "middle",
    "upper": "top",
    "lower": "bottom",
    "bend": "fold",
    "crease": "fold",
    "bring": "fold",
    "flip": "turn",
    "rotate": "turn",
    "colour": "shade",
    "color": "shade",
    "accordion": "pleat",
    "underneath": "behind",
    "under": "behind",
    "columns": "across",
    "rows": "up",
    "horizontally": "across",
    "vertically": "up",
    "third": "1/3",
    "quarter": "1/4",
    "fourth": "1/4",
    "close": "fold",
    "snip": "slit",
    "collect": "gather",
    "book": "booklet",
    "zine": "booklet",
    "until": "to",
    "towards": "to",
}
"""Words that people use for those of the step language, and that are spelt quite unlike them."""

IDIOMS = {
    "fold in half lengthwise": "fold top edge to bottom edge",
    "fold in half the other way": "fold top edge to bottom edge",
    "fold again": "fold left edge to right edge",
    "fold in quarters": "fold into quarters across",
    "fold in thirds": "fold into thirds across",
    "fold diagonally": "fold along (0, 0) (1, 1) moving (0, 1)",
    "fold the corner": "fold bottom left corner to top right corner",
    "fold the top down": "fold top edge to bottom edge",
    "fold the bottom up": "fold bottom edge to top edge",
    "fold the left side over": "fold left edge to right edge",
    "fold the right side over": "fold right edge to left edge",
    "open everything": "open",
    "make a booklet": "gather into booklet",
    "gather": "gather into booklet",
    "cut the middle": "slit at height 1/2 from 1/4 to 3/4",
    "cut along the fold": "slit at height 1/2 from left edge to 1/2",
}

_WORD = re.compile(r"[^\W\d_]+|[-−]?[\d./]+|\S")


def nearest_sentence(text: str, refusal: StepUnreadable) -> str:
    """Give the nearest sentence that can be read.

    Args:
        text: the sentence that cannot.
        refusal: what ``step_in`` said of it.
    """
    text = " ".join(text[:LONGEST_SENTENCE].split())
    idiom = get_close_matches(text.casefold().rstrip("."), IDIOMS, n=1, cutoff=0.85)
    if idiom:
        return IDIOMS[idiom[0]]
    spelt = _with_known_words(text)
    trial = refusal
    if spelt != text:
        try:
            step_in(spelt)
        except StepUnreadable as error:
            trial = error
            if trial.instead:
                spelt = (
                    spelt[: trial.column - 1] + trial.instead + spelt[trial.column - 1 + len(trial.words) :]
                )
                if _is_readable(spelt):
                    return spelt
        else:
            return spelt
    mended = {sentence for sentence in _one_word_away(spelt, trial.column - 1) if _is_readable(sentence)}
    return max(
        [*sorted(mended), *PATTERNS], key=lambda sentence: _likeness(text, sentence, sentence in mended)
    )


def _is_readable(text: str) -> bool:
    try:
        step_in(text)
    except StepUnreadable:
        return False
    return True


def _with_known_words(text: str) -> str:
    """Put the nearest known word in the place of every unknown one."""

    def known(found: re.Match[str]) -> str:
        word = found.group().casefold()
        if word in WORDS or word in ("the", "edges", "onto", "side", "centre"):
            return found.group()
        near = get_close_matches(word, WORDS, n=1, cutoff=0.6)
        return NEAR_WORDS.get(word) or (near[0] if near else found.group())

    return re.sub(r"[^\W\d_]+", known, text)


def _one_word_away(text: str, position: int) -> Iterator[str]:
    """Give sentences with one word more, fewer or other, near a position."""
    words = list(_WORD.finditer(text))
    there = next((index for index, word in enumerate(words) if word.end() > position), len(words))
    for index in range(max(there - 1, 0), min(there + 2, len(words) + 1)):
        start = words[index].start() if index < len(words) else len(text)
        end = words[index].end() if index < len(words) else len(text)
        before, after = re.sub(r"(\s|\bthe)*$", "", text[:start]), text[end:].strip()
        for ending in ("", after):
            yield _spaced(before, ending)
        for word in (*WORDS, "1/2", "(", ")", ","):
            for ending in ("", after, text[start:]):
                yield _spaced(before, word, ending)


def _spaced(*words: str) -> str:
    """Put words together with the spaces of a sentence."""
    return re.sub(r"(?<=\() | (?=[,)])", "", " ".join(words).strip())


def _likeness(text: str, sentence: str, mended: bool) -> tuple[bool, bool, float, float]:
    """Tell how near a sentence is: first by what it does and how it was found, then by its words."""
    asked, offered = text.casefold(), sentence.casefold()
    asked_words, offered_words = _WORD.findall(asked), _WORD.findall(offered)
    return (
        asked_words[:1] == offered_words[:1],
        mended,
        SequenceMatcher(None, asked_words, offered_words).ratio(),
        SequenceMatcher(None, asked, offered).ratio(),
    )
