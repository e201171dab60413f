"""What stands on a page of a booklet: takes a page's table, gives its contents, or every slip in them."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from difflib import get_close_matches
from itertools import pairwise
from typing import Any, TypeAlias

from foldmath.lesson.booklet.creases import game, number_line
from foldmath.lesson.booklet.matter import Matter
from foldmath.lesson.booklet.plan import Content, Frame, Heading, Lines, Prompt, Title
from foldmath.lesson.booklet.records import Fold, picture, record
from foldmath.lesson.booklet.stories import story
from foldmath.lesson.booklet.tables import table_in
from foldmath.lesson.booklet.texts import Fills, one_line, whole_number
from foldmath.lesson.files.slips import Slip
from foldmath.phrases import Said, counted, phrase
from foldmath.values import frozen

MOST_LINES = 40
MOST_IN_LIST = 12
LONGEST_NAME, LONGEST_PROMPT = 80, 200

Found: TypeAlias = Iterator[Content | Slip]


@frozen
class Around:
    """What a page is read in.

    Args:
        page: the whole table of the page.
        matter: what the lesson gives to its booklet.
        fills: what names in braces stand for in its texts.
        fold: the step that the page is of, and its number among those with pages; None for other pages.
    """

    page: dict[str, Any]
    matter: Matter
    fills: Fills
    fold: Fold = None


def contents(around: Around) -> Found:
    """Give what stands on a page, in the order in which its keys are written, and its slips.

    Paths of slips begin at the page.
    """
    keys = [key for key in around.page if key not in ("each", "answers")]
    below = False
    for key, following in pairwise([*keys, ""]):
        if key == "lines" and below:
            below = False
        elif key not in KEYS:
            yield _no_such_key(key)
        elif key == "prompt" and following == "lines":
            below = True
            yield from _prompts_with_lines(around)
        else:
            yield from KEYS[key](around.page[key], around)
    if "answers" in around.page and ("prompt", "lines") not in pairwise(keys):
        message = phrase("answers are written on the lines below a prompt, and this page has none there")
        yield Slip(("answers",), message, phrase("write lines = 2 right after the prompt"), at_key=True)


def _no_such_key(key: str) -> Slip:
    hint = INSTEAD.get(_nearest_key(key), _nearest_key(key)) or phrase(
        "the keys are {list}", list=", ".join([*KEYS, "answers", "each"])
    )
    return Slip((key,), phrase("a page has no key of this name"), hint, at_key=True)


def _nearest_key(key: str) -> str:
    near = get_close_matches(key.casefold(), [*KEYS, "answers", "each", *INSTEAD], n=1, cutoff=0.6)
    return NEAR_KEYS.get(key.casefold()) or (near[0] if near else "")


def _prompts_with_lines(around: Around) -> Found:
    """Give prompts with lines below each, where the lines are written next, and what is right there."""
    below = list(_lines(around.page["lines"], around))
    prompts = list(_prompt(around.page["prompt"], around))
    listed = isinstance(around.page["prompt"], list)
    answers = list(_answers(around, len(prompts) if listed else 1))
    yield from (answer for answer in answers if isinstance(answer, Slip))
    for found, answer in zip(prompts, answers, strict=False):
        yield found
        if isinstance(found, Prompt) and not isinstance(answer, Slip):
            yield from (replace(one, answer=answer) for one in below if isinstance(one, Lines))
    yield from (slip for slip in below if isinstance(slip, Slip))


def _answers(around: Around, prompts: int) -> "Iterator[Said | Slip]":
    """Read what would be right below each prompt; nothing where the lesson does not say."""
    given = around.page.get("answers", [""] * prompts)
    listed = given if isinstance(given, list) else [given]
    if len(listed) != prompts:
        message = phrase(
            "there are {answers} for {prompts}",
            answers=counted("{count} answer", "{count} answers", len(listed)),
            prompts=counted("{count} prompt", "{count} prompts", prompts),
        )
        yield Slip(("answers",), message, phrase('give an answer for each prompt, "" where any would do'))
        listed = [""] * prompts
    for index, value in enumerate(listed):
        path = ("answers", index) if isinstance(given, list) else ("answers",)
        yield "" if value == "" else one_line(value, path, "answer", LONGEST_PROMPT, around.fills)


def _listed(
    key: str, value: Any, one: Callable[[Any, tuple[str | int, ...]], Content | Slip]
) -> Iterator[Content | Slip]:
    """Read a value that may be a list, each of its items alike."""
    if not isinstance(value, list):
        yield one(value, (key,))
    elif not 1 <= len(value) <= MOST_IN_LIST:
        yield Slip(
            (key,),
            phrase("a list here has 1 to {most} things", most=MOST_IN_LIST),
            phrase("leave some out, or take a new page"),
        )
    else:
        for index, item in enumerate(value):
            yield one(item, (key, index))


def _title(value: Any, around: Around) -> Found:
    text = one_line(value, ("title",), "title", LONGEST_NAME, around.fills)
    yield text if isinstance(text, Slip) else Title(text)


def _heading(value: Any, around: Around) -> Found:
    text = one_line(value, ("heading",), "heading", LONGEST_NAME, around.fills)
    yield text if isinstance(text, Slip) else Heading(text)


def _prompt(value: Any, around: Around) -> Found:
    def one(item: Any, path: tuple[str | int, ...]) -> Content | Slip:
        text = one_line(item, path, "prompt", LONGEST_PROMPT, around.fills)
        return text if isinstance(text, Slip) else Prompt(text)

    yield from _listed("prompt", value, one)


def _frame(value: Any, around: Around) -> Found:
    def one(item: Any, path: tuple[str | int, ...]) -> Content | Slip:
        text = "" if item == "" else one_line(item, path, "frame", LONGEST_NAME, around.fills)
        return text if isinstance(text, Slip) else Frame(text)

    yield from _listed("frame", value, one)


def _lines(value: Any, around: Around) -> Found:
    if value == "fill":
        yield Lines()
    elif whole_number(value, 1, MOST_LINES):
        yield Lines(value)
    else:
        yield Slip(
            ("lines",),
            phrase('the lines must be a whole number from 1 to {most}, or "fill"', most=MOST_LINES),
            "lines = 4",
        )


def _record(value: Any, around: Around) -> Found:
    yield from _listed("record", value, lambda item, path: record(item, path, around.matter, around.fold))


def _picture(value: Any, around: Around) -> Found:
    yield from _listed("picture", value, lambda item, path: picture(item, path, around.matter, around.fold))


def _number_line(value: Any, around: Around) -> Found:
    yield number_line(value, ("number_line",), around.matter, around.fold)


def _story(value: Any, around: Around) -> Found:
    yield story(value, ("story",), around.matter)


def _game(value: Any, around: Around) -> Found:
    yield game(value, ("game",), around.matter)


def _table(value: Any, around: Around) -> Found:
    yield from table_in(value, around.fills)


KEYS: dict[str, Callable[[Any, Around], Found]] = {
    "title": _title,
    "heading": _heading,
    "prompt": _prompt,
    "lines": _lines,
    "frame": _frame,
    "record": _record,
    "picture": _picture,
    "number_line": _number_line,
    "story": _story,
    "game": _game,
    "table": _table,
}
"""The keys of a page and how each is read; they may be written in any order."""

NEAR_KEYS = {
    "name": "title",
    "head": "heading",
    "question": "prompt",
    "text": "prompt",
    "prompts": "prompt",
    "rules": "lines",
    "ruled": "lines",
    "draw": "frame",
    "drawing": "frame",
    "box": "frame",
    "fraction": "record",
    "sentence": "record",
    "product": "record",
    "image": "picture",
    "model": "picture",
    "grid": "table",
    "author": "about_the_writer",
    "about": "about_the_writer",
    "repeat": "each",
    "answer": "answers",
    "line": "number_line",
    "play": "game",
}
"""Keys that people might choose, and that are spelt unlike the right ones."""

INSTEAD: dict[str, Said] = {
    "about_the_writer": phrase('heading = "About the writer", then prompt = ["My name is"] and lines = 1'),
    "number": phrase('heading = "348", then prompt = ["In words", "As a sum"] and lines = 1'),
    "forms": phrase('prompt = ["In words", "As a sum"] and lines = 1'),
}
"""What to write in place of keys that pages no longer have."""
