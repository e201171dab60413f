"""The languages that are spoken here, and which one a terminal wants."""

from collections.abc import Mapping

LANGUAGES = ("en-US", "en-GB", "es")
"""Those with a catalogue, as a lesson names them (BCP 47, RFC 5646)."""

DEFAULT = "en-US"

TERMINAL_VARIABLES = ("FOLDMATH_LANGUAGE", "LC_ALL", "LC_MESSAGES", "LANG")
"""The first that is set decides (POSIX.1-2017, 8.2); ours stands before the system's."""


def spoken(wanted: str) -> str | None:
    """Give the language here that is meant by a name such as ``es_MX.UTF-8``; None if there is none."""
    name = wanted.partition(".")[0].partition("@")[0].replace("_", "-").casefold()
    for language in LANGUAGES:
        if name == language.casefold():
            return language
    first = name.partition("-")[0]
    return next((language for language in LANGUAGES if language.partition("-")[0] == first), None)


def named(wanted: str) -> str | None:
    """Give the language that a person names; None if there is none, or if it is not clear which is meant.

    ``es-MX`` is Spanish, of which there is one; ``en-UK`` may be any English.
    """
    name = wanted.replace("_", "-").casefold()
    first = name.partition("-")[0]
    kin = [language for language in LANGUAGES if language.partition("-")[0] == first]
    exact = [language for language in kin if language.casefold() == name]
    return next(iter(exact or (kin if len(kin) == 1 else ())), None)


def terminal_language(environment: Mapping[str, str]) -> str:
    """Give the language in which messages on a terminal are said."""
    wanted = next((environment[name] for name in TERMINAL_VARIABLES if environment.get(name)), DEFAULT)
    return spoken(wanted) or DEFAULT
