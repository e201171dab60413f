"""Templates: fills them with what a worksheet says, and gives HTML."""

from functools import cache
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from foldmath.documents.mathml import boxed, boxed_fraction, stacked
from foldmath.documents.worksheet import Worksheet
from foldmath.statements.wrong_answers import what_it_tells


@cache
def _environment() -> Environment:
    environment = Environment(
        loader=PackageLoader("foldmath.documents"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.globals.update(boxed_fraction=boxed_fraction)
    environment.filters.update(stacked=stacked, boxed=boxed, sentence=sentence, tells=what_it_tells)
    return environment


def sentence(step: str) -> Markup:
    """Write a step as a sentence: a capital letter, a full stop, fractions stacked."""
    return stacked(step[:1].upper() + step[1:] + ".")


def render(template: str, **context: Any) -> str:
    """Fill a template, by the name of its file."""
    return _environment().get_template(template).render(context)


def html(sheet: Worksheet, *, key: bool) -> str:
    """Give the worksheet, or the same worksheet with the key's own pages after it."""
    sources = {wrong.published.source for item in sheet.items for wrong in item.wrong if wrong.published}
    context: dict[str, Any] = {"sheet": sheet, "key": key, "sources": sorted(sources)}
    return _environment().get_template("worksheet.html").render(context)
