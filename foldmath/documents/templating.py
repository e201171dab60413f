"""Templates: fills them with what a worksheet says, and gives HTML."""

from functools import cache
from typing import Any

from jinja2 import Environment, FileSystemBytecodeCache, PackageLoader, StrictUndefined
from markupsafe import Markup

from foldmath.documents.exit_ticket import ExitTicket
from foldmath.documents.mathml import (
    GIVEN,
    boxed,
    boxed_fraction,
    stacked,
    worked,
    worked_fraction,
)
from foldmath.documents.word_bank import bank
from foldmath.documents.worksheet import Worksheet
from foldmath.statements.items import CountOrSizeItem, Item
from foldmath.statements.stories import StoryItem
from foldmath.statements.story_slips import slip_tells, slip_to_try


def _compiled_templates() -> FileSystemBytecodeCache | None:
    """Keep compiled templates between runs, in this user's own folder for passing files, where there is one.

    Compiling them anew takes a third of the time of making one lesson.
    """
    try:
        return FileSystemBytecodeCache()
    except (OSError, RuntimeError):
        return None


@cache
def _environment() -> Environment:
    environment = Environment(
        loader=PackageLoader("foldmath.documents"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        bytecode_cache=_compiled_templates(),
    )
    environment.globals.update(
        bank=bank,
        boxed=boxed,
        boxed_fraction=boxed_fraction,
        given_mark=Markup(GIVEN),
        worked=worked,
        worked_fraction=worked_fraction,
    )
    environment.filters.update(
        boxed=boxed,
        sentence=sentence,
        told=told,
        stacked=stacked,
        tells=slip_tells,
        tries=slip_to_try,
        key_answer=key_answer,
    )
    return environment


def key_answer(item: Item) -> str:
    """Give the answer of an item as a compact key tells it."""
    if isinstance(item, CountOrSizeItem):
        return "".join(sentence.about.value[0] for sentence in item.sentences)
    return item.answer_sentence if isinstance(item, StoryItem) else item.answer


def sentence(step: str) -> Markup:
    """Write a step as a sentence: a capital letter, a full stop, fractions stacked."""
    return stacked(step[:1].upper() + step[1:] + ".")


def told(step: str) -> Markup:
    """Write a step as a pupil is told it: points by numbers are shown in the picture beside it."""
    return sentence("fold along the line in the picture" if "(" in step else step)


def render(template: str, **context: Any) -> str:
    """Fill a template, by the name of its file."""
    return _environment().get_template(template).render(context)


def html(sheet: Worksheet, look: str, *, key: bool, ticket: ExitTicket | None = None) -> str:
    """Give the worksheet, or the same worksheet with the key's own pages after it.

    Args:
        sheet: what it says.
        look: the name of its style sheet, which has its own way to set the rows of folds.
        key: whether the key's own pages follow.
        ticket: the exit ticket, whose answers the key's pages tell; None if there is none.
    """
    wrong = [wrong for placed in sheet.items for wrong in placed.item.wrong]
    sources = sorted({answer.published.source for answer in wrong if answer.published})
    return render("worksheet.html", sheet=sheet, look=look, key=key, sources=sources, ticket=ticket)
