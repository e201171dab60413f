"""Words of templates, filled: takes a catalogue, gives the two functions that ``{% trans %}`` calls.

They do what Jinja's own "newstyle" functions do, with the places of every text found once: a class's pages
say the same texts thousands of times.

Source: the i18n extension in Jinja's documentation (jinja.palletsprojects.com, "Newstyle Gettext").
"""

import re
from collections.abc import Callable
from functools import lru_cache
from gettext import NullTranslations
from typing import Any

from markupsafe import Markup, escape

TEXTS_KEPT = 4096
"""More than all templates have, in every language."""

_PLACE = re.compile(r"%\((\w+)\)s")


def gettext_of(words: NullTranslations) -> Callable[..., Markup]:
    """Give the function that says a text of a template, its values escaped where they are no HTML."""

    def gettext(text: str, /, **values: Any) -> Markup:
        return _filled(words.gettext(text), values)

    return gettext


def ngettext_of(words: NullTranslations) -> Callable[..., Markup]:
    """Give the function that says a text that counts something, in the form for that number."""

    def ngettext(one: str, many: str, number: int, /, **values: Any) -> Markup:
        return _filled(words.ngettext(one, many, number), {"num": number, **values})

    return ngettext


def _filled(text: str, values: dict[str, Any]) -> Markup:
    parts = _parted(text)
    if len(parts) == 1:
        return parts[0]
    said = [escape(values[part]) if place % 2 else part for place, part in enumerate(parts)]
    return Markup("".join(said))


@lru_cache(maxsize=TEXTS_KEPT)
def _parted(text: str) -> tuple[Markup, ...]:
    """Part a text at its places: words and names of values by turns; in words a percent sign is doubled."""
    parts = _PLACE.split(text)
    return tuple(Markup(part.replace("%%", "%")) for part in parts)
