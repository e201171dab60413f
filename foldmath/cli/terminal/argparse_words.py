"""The words that argparse itself says, for the catalogues: it asks gettext's global domain for them."""

import gettext
import os

from foldmath.phrases import Phrase, phrase
from foldmath.words.catalogues import DOMAIN, catalogue
from foldmath.words.languages import DEFAULT, LOCALE

SAID_BY_ARGPARSE: tuple[Phrase, ...] = (
    phrase("usage: "),
    phrase("positional arguments"),
    phrase("options"),
    phrase("show this help message and exit"),
    phrase("show program's version number and exit"),
    phrase("the following arguments are required: %s"),
    phrase("unrecognized arguments: %s"),
    phrase("argument %(argument_name)s: %(message)s"),
    phrase("invalid choice: %(value)r (choose from %(choices)s)"),
    phrase("not allowed with argument %s"),
    phrase("expected one argument"),
    phrase("expected at least one argument"),
    phrase("ambiguous option: %(option)s could match %(matches)s"),
    phrase("ignored explicit argument %r"),
)
"""Those of Python 3.11 to 3.14 that our commands can make it say, as they stand in its source."""

OWN_WORDS = "messages"
"""The domain in which argparse finds its own words, since nothing is there (documentation of ``gettext``)."""


def speak_in(language: str) -> None:
    """Let argparse say its words in a language.

    Source:
        The Python documentation of ``gettext``: ``bindtextdomain`` and ``textdomain``; the GNU gettext
        manual: LANGUAGE stands before the other variables.
    """
    if language == DEFAULT:
        gettext.textdomain(OWN_WORDS)
        return
    # Compiled anew first, where that is due: gettext reads only what is compiled.
    catalogue(language)
    os.environ["LANGUAGE"] = language.replace("-", "_")
    gettext.bindtextdomain(DOMAIN, str(LOCALE))
    gettext.textdomain(DOMAIN)
