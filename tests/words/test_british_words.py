"""British pages say what British schools say, wherever the American texts say otherwise."""

import re

from pseudo_language import texts_found

from foldmath.words.catalogues import catalogue

AMERICAN = re.compile(
    r"\b(students?|gray|center|color|colored|millimeters?|meters?|liters?|grades?|check marks?|check one|math"
    r"|back and forth|cups?)\b",
    re.IGNORECASE,
)
"""Words that a British teacher would not write; grades are years there."""

QUOTED = re.compile(r"\{\w+\}|%\(\w+\)s|--\S+")
"""Values and options are no words of ours."""


def test_no_british_text_has_an_american_word():
    british = catalogue("en-GB")
    found = set()
    for text in texts_found():
        one, *many = (text,) if isinstance(text, str) else text
        said = [british.ngettext(one, many[0], count) for count in (1, 2)] if many else [british.gettext(one)]
        found |= {words for words in said if AMERICAN.search(QUOTED.sub("", words))}
    assert found == set()
