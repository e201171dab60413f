"""What stands on a page of a booklet: takes a page's table, gives its contents, or every slip in them."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from difflib import get_close_matches
from itertools import pairwise
from typing import Any, TypeAlias

from foldmath.lesson.booklet.plan import (
    AboutTheWriter,
    Content,
    Frame,
    Heading,
    Lines,
    NumberForm,
    NumberForms,
    Prompt,
    Title,
)
from foldmath.lesson.booklet.records import Folds, picture, record
from foldmath.lesson.booklet.tables import table_in
from foldmath.lesson.booklet.texts import one_line, whole_number
from foldmath.lesson.files.shape import Slip
from foldmath.phrases import phrase

MOST_LINES = 40
MOST_IN_LIST = 12
LONGEST_NAME, LONGEST_PROMPT = 80, 200
LARGEST_NUMBER = 999_999
LARGEST_IN_BLOCKS = 9_999
"""The largest block that is drawn is the cube of a thousand (common practice, no source)."""

Found: TypeAlias = Iterator[Content | Slip]


@dataclass(frozen=True)
class Around:
    """What a page is read in.

    Args:
        page: the whole table of the page.
        folds: of the lesson; None if its steps cannot be done.
        fold: the step that the page is of, and its number among those with pages; None for other pages.
    """

    page: dict[str, Any]
    folds: Folds | None
    fold: tuple[int, int] | None = None


def contents(around: Around) -> Iterator[Content | Slip]:
    """Give what stands on a page, in the order in which its keys are written, and its slips.

    Paths of slips begin at the page.
    """
    skipped = {"each", "forms"}
    keys = list(around.page)
    for key, following in pairwise([*keys, ""]):
        if key in skipped:
            continue
        if key not in KEYS:
            yield _no_such_key(key)
        elif key == "prompt" and isinstance(around.page[key], list) and following == "lines":
            skipped.add("lines")
            yield from _prompts_with_lines(around)
        else:
            yield from KEYS[key](around.page[key], around)
    if "forms" in around.page and "number" not in [*keys, *map(_nearest_key, keys)]:
        yield Slip(
            ("forms",), phrase("forms are those of a number, and this page has none"), "number = 348", True
        )


def _no_such_key(key: str) -> Slip:
    hint = _nearest_key(key) or phrase("the keys are {list}", list=", ".join([*KEYS, "forms", "each"]))
    return Slip((key,), phrase("a page has no key of this name"), hint, True)


def _nearest_key(key: str) -> str:
    near = get_close_matches(key.casefold(), [*KEYS, "forms", "each"], n=1, cutoff=0.6)
    return NEAR_KEYS.get(key.casefold()) or (near[0] if near else "")


def _prompts_with_lines(around: Around) -> Found:
    """Give lines below each prompt of a list, where the lines are written next."""
    below = list(_lines(around.page["lines"], around))
    for found in _prompt(around.page["prompt"], around):
        yield found
        yield from below if isinstance(found, Prompt) else ()
    yield from (slip for slip in below if isinstance(slip, Slip))


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
    text = one_line(value, ("title",), "title", LONGEST_NAME, around.fold)
    yield text if isinstance(text, Slip) else Title(text)


def _heading(value: Any, around: Around) -> Found:
    text = one_line(value, ("heading",), "heading", LONGEST_NAME, around.fold)
    yield text if isinstance(text, Slip) else Heading(text)


def _prompt(value: Any, around: Around) -> Found:
    def one(item: Any, path: tuple[str | int, ...]) -> Content | Slip:
        text = one_line(item, path, "prompt", LONGEST_PROMPT, around.fold)
        return text if isinstance(text, Slip) else Prompt(text)

    yield from _listed("prompt", value, one)


def _frame(value: Any, around: Around) -> Found:
    def one(item: Any, path: tuple[str | int, ...]) -> Content | Slip:
        text = "" if item == "" else one_line(item, path, "frame", LONGEST_NAME, around.fold)
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
    yield from _listed("record", value, lambda item, path: record(item, path, around.folds, around.fold))


def _picture(value: Any, around: Around) -> Found:
    yield from _listed("picture", value, lambda item, path: picture(item, path, around.folds, around.fold))


def _number(value: Any, around: Around) -> Found:
    if not whole_number(value, 0, LARGEST_NUMBER):
        message = phrase(
            "the number must be a whole number from 0 to {largest}",
            largest=f"{LARGEST_NUMBER:,}",
        )
        yield Slip(("number",), message, "number = 348")
        return
    given = around.page.get("forms")
    drawn = value <= LARGEST_IN_BLOCKS
    if given is None:
        yield NumberForms(value, tuple(form for form in NumberForm if drawn or form is not NumberForm.BLOCKS))
        return
    named = given if isinstance(given, list) else []
    found = dict.fromkeys(_form(name, ("forms", index), drawn) for index, name in enumerate(named))
    forms = [form for form in found if isinstance(form, NumberForm)]
    yield from (slip for slip in found if isinstance(slip, Slip))
    if len(forms) == len(found) < 2:
        message = phrase(
            "the forms must be a list of two or more; the first is given, students fill in the others"
        )
        yield Slip(("forms",), message, 'forms = ["numeral", "words"]')
    elif len(forms) == len(found):
        yield NumberForms(value, tuple(forms))


def _form(name: Any, path: tuple[str | int, ...], drawn: bool) -> NumberForm | Slip:
    names = [form.value for form in NumberForm]
    plain = name.strip().casefold() if isinstance(name, str) else ""
    if plain not in names:
        near = get_close_matches(plain, names, n=1, cutoff=0.5)
        hint = f'"{near[0]}"' if near else phrase("the forms are {names}", names=", ".join(names))
        return Slip(path, phrase("a number has no form of this name"), hint)
    form = NumberForm(plain)
    if form is NumberForm.BLOCKS and not drawn:
        return Slip(
            path,
            phrase(
                "a number over {largest} has too many blocks to draw",
                largest=f"{LARGEST_IN_BLOCKS:,}",
            ),
            phrase("leave this form out"),
        )
    return form


def _about_the_writer(value: Any, around: Around) -> Found:
    if value is True:
        yield AboutTheWriter()
    elif value is not False:
        yield Slip(
            ("about_the_writer",), phrase("about_the_writer is true or false"), "about_the_writer = true"
        )


KEYS: dict[str, Callable[[Any, Around], Found]] = {
    "title": _title,
    "heading": _heading,
    "prompt": _prompt,
    "lines": _lines,
    "frame": _frame,
    "record": _record,
    "picture": _picture,
    "number": _number,
    "table": table_in,
    "about_the_writer": _about_the_writer,
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
}
"""Keys that people might choose, and that are spelt unlike the right ones."""
