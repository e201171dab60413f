"""Changes of a lesson: takes its text and one wish of a form, gives the text with that changed."""

from collections.abc import Callable, Mapping
from typing import Any

from werkzeug.datastructures import MultiDict

from foldmath.desk.practice.own_words import lend_names, rewrite_item, take_out_item, write_item
from foldmath.desk.shelf.open_lesson import OpenLesson
from foldmath.errors import Unreadable
from foldmath.lesson.editing import with_list, with_practice, with_value
from foldmath.lesson.files.wanted import LARGEST_SEED
from foldmath.phrases import phrase
from foldmath.words.languages import DEFAULT

Form = MultiDict[str, str]

MULTILINE_FROM = 2
"""Of so many notes each has a line of its own in the file."""


def changed(opened: OpenLesson, form: Form) -> str:
    """Give the text of a lesson after one change.

    Raises:
        Unreadable: there is no such change.
        CannotEdit: the text is no TOML.
    """
    change = CHANGES.get(form.get("change", ""))
    if change is None:
        raise Unreadable(phrase("the desk knows no such change"))
    return change(opened, form)


def _add_product(opened: OpenLesson, form: Form) -> str:
    return _with_products(opened, [*_products(opened), form.get("product", "").strip()])


def _take_out_product(opened: OpenLesson, form: Form) -> str:
    return _with_products(
        opened, [product for product in _products(opened) if product != form.get("product")]
    )


def _keep(opened: OpenLesson, form: Form) -> str:
    """Keep an item on the page of its level, whatever numbers come after."""
    asks = form.get("asks", "")
    others = [other for other in _kept(opened).get(form.get("level", ""), []) if other != asks]
    return _with_kept(opened.text, opened, form, [*others, asks])


def _let_go(opened: OpenLesson, form: Form) -> str:
    """Keep an item no longer; it stays until something else changes the page."""
    kept = _kept(opened).get(form.get("level", ""), [])
    return _with_kept(opened.text, opened, form, [other for other in kept if other != form.get("asks")])


def _another(opened: OpenLesson, form: Form) -> str:
    """Have another item instead of one."""
    without = [*_rules(opened).get("without", []), form.get("asks", "")]
    return with_practice(opened.text, "without", without)


def _other_numbers(opened: OpenLesson, form: Form) -> str:
    """Have other numbers on all pages; what was exchanged before belonged to the numbers before."""
    text = with_practice(opened.text, "seed", (_rules(opened).get("seed", 0) + 1) % LARGEST_SEED)
    return with_practice(text, "without", None)


def _rules_of_choice(opened: OpenLesson, form: Form) -> str:
    text = with_practice(opened.text, "count", form.get("count", None, int))
    text = with_practice(text, "kinds", form.getlist("kinds") or None)
    return with_practice(text, "denominators", form.getlist("denominators", int) or None)


def _words(opened: OpenLesson, form: Form) -> str:
    """Set the words to teach, one a line, each with its word in a home language behind a colon, or none."""
    lines = [line.partition(":") for line in form.get("words", "").splitlines()]
    told = {word.strip(): home.strip() for word, _, home in lines if word.strip()}
    text = with_list(opened.text, ("vocabulary",), list(told))
    homes = {word: home for word, home in told.items() if home}
    text = with_value(text, ("words",), homes or None)
    return with_value(text, ("home_language",), form.get("home_language", "").strip() or None)


def _about(opened: OpenLesson, form: Form) -> str:
    """Set title, grade, paper, how it lies, language, standards and notes; what is usual is left unsaid."""
    asked: dict[str, Any] = {"title": form.get("title", "").strip(), "grade": form.get("grade", 0, int)}
    if form.get("paper"):
        # A paper given by its measures is not among the names, and stays.
        asked |= {"paper": form["paper"], "orientation": form.get("orientation")}
    language = form.get("language")
    asked |= {"language": None if language == DEFAULT else language}
    asked |= {"standards": form.get("standards") or None}
    text, table = opened.text, opened.table
    for key, value in asked.items():
        # What is said already is left as it was written, with its comment.
        if table.get(key) != value and not (key == "language" and table.get(key) == language):
            text = with_value(text, (key,), value)
    return _with_notes(text, [line.strip() for line in form.get("notes", "").splitlines() if line.strip()])


def _with_notes(text: str, notes: list[str]) -> str:
    if len(notes) >= MULTILINE_FROM:
        return with_list(text, ("notes",), notes)
    return with_value(text, ("notes",), notes[0] if notes else None)


CHANGES: Mapping[str, Callable[[OpenLesson, Form], str]] = {
    "add": _add_product,
    "take out": _take_out_product,
    "keep": _keep,
    "let go": _let_go,
    "another": _another,
    "other numbers": _other_numbers,
    "rules": _rules_of_choice,
    "words": _words,
    "names": lend_names,
    "write": write_item,
    "rewrite": rewrite_item,
    "take out own": take_out_item,
    "about": _about,
}
"""By the values of the buttons."""


def _rules(opened: OpenLesson) -> Mapping[str, Any]:
    given = opened.table.get("practice")
    return given if isinstance(given, dict) else {}


def _kept(opened: OpenLesson) -> Mapping[str, list[str]]:
    kept: Mapping[str, list[str]] = _rules(opened).get("keep", {})
    return kept


def _with_kept(text: str, opened: OpenLesson, form: Form, asked: list[str]) -> str:
    kept = {**_kept(opened), form.get("level", ""): asked}
    return with_practice(text, "keep", {level: items for level, items in kept.items() if items} or None)


def _products(opened: OpenLesson) -> list[str]:
    given = opened.table.get("practice", [])
    return list(given.get("products", []) if isinstance(given, dict) else given)


def _with_products(opened: OpenLesson, products: list[str]) -> str:
    key = ("practice", "products") if _rules(opened) else ("practice",)
    return with_list(opened.text, key, products)
