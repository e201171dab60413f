"""The languages that are spoken here, each with a folder of its own, and which one a terminal wants."""

from collections.abc import Mapping
from functools import cache
from pathlib import Path

LOCALE = Path(__file__).parent / "locale"
"""A language is one folder in here, named as gettext names it: ``es``, ``en_GB``."""

DEFAULT = "en-US"

ON_A4 = ("en-GB",)
"""Where these are spoken, schools have A4; Spanish is that of the Americas here, where they have letter."""

TERMINAL_VARIABLES = ("FOLDMATH_LANGUAGE", "LC_ALL", "LC_MESSAGES", "LANG")
"""The first that is set decides (POSIX.1-2017, 8.2); ours stands before the system's."""


def languages() -> tuple[str, ...]:
    """Give the languages that have a folder, as a lesson names them (BCP 47, RFC 5646), the default first."""
    return _languages_in(LOCALE)


@cache
def _languages_in(locale: Path) -> tuple[str, ...]:
    found = {folder.name.replace("_", "-") for folder in locale.iterdir() if folder.is_dir()}
    return (DEFAULT, *sorted(found - {DEFAULT}))


def folder_of(language: str) -> Path:
    """Give the folder of a language."""
    return LOCALE / language.replace("-", "_")


def of_one_tongue(one: str, other: str) -> bool:
    """Tell whether two languages are one, however it is spoken: American and British English."""
    return tongue(one) == tongue(other)


def tongue(language: str) -> str:
    """Give a language without where it is spoken: ``en`` of ``en-GB``."""
    return language.partition("-")[0]


def kin(language: str) -> bool:
    """Tell whether a language is the default one as it is spoken elsewhere: its folder has what differs."""
    return language != DEFAULT and of_one_tongue(language, DEFAULT)


def spoken(wanted: str) -> str | None:
    """Give the language here that is meant by a name such as ``es_MX.UTF-8``; None if there is none."""
    name = wanted.partition(".")[0].partition("@")[0].replace("_", "-").casefold()
    known = languages()
    for language in known:
        if name == language.casefold():
            return language
    first = name.partition("-")[0]
    return next((language for language in known if language.partition("-")[0] == first), None)


def named(wanted: str) -> str | None:
    """Give the language that a person names; None if there is none, or if it is not clear which is meant.

    ``es-MX`` is Spanish, of which there is one; ``en-UK`` may be any English.
    """
    name = wanted.replace("_", "-").casefold()
    first = name.partition("-")[0]
    alike = [language for language in languages() if language.partition("-")[0] == first]
    exact = [language for language in alike if language.casefold() == name]
    return next(iter(exact or (alike if len(alike) == 1 else ())), None)


def read_beside(wanted: str, own: str) -> str:
    """Give the language that a pupil reads where the pages of others are in ``own``.

    Nothing said is ``own``, and a tongue alone is ``own`` too if that is of it: ``en`` beside ``en-GB``.
    """
    if not wanted or (wanted == tongue(wanted) and of_one_tongue(wanted, own)):
        return own
    return spoken(wanted) or own


def usual_paper(language: str) -> str:
    """Give the paper that is at hand where a language is spoken."""
    return "A4" if language in ON_A4 else "letter"


def terminal_language(environment: Mapping[str, str]) -> str:
    """Give the language in which messages on a terminal are said."""
    wanted = next((environment[name] for name in TERMINAL_VARIABLES if environment.get(name)), DEFAULT)
    return spoken(wanted) or DEFAULT
