"""The plurals of every catalogue are those of the Unicode Common Locale Data Repository.

Source: Unicode CLDR, plural rules for cardinal numbers, as Babel carries them (babel.pocoo.org).
"""

from gettext import c2py
from io import BytesIO
from pathlib import Path

import pytest
from babel import Locale
from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po

from foldmath.words.languages import LOCALE

FRENCH = Path(__file__).parents[1] / "words" / "french"
CATALOGUES = sorted([*LOCALE.glob("*/LC_MESSAGES/*.po"), *FRENCH.glob("*/LC_MESSAGES/*.po")])
COUNTS = range(5_000)
"""More panels, sheets, pupils or slips than any sentence counts."""


def of_file(path: Path) -> Catalog:
    return read_po(BytesIO(path.read_bytes()))


@pytest.mark.parametrize("path", CATALOGUES, ids=lambda path: path.parents[1].name)
def test_each_count_takes_the_form_that_cldr_gives_it(path):
    catalogue = of_file(path)
    rule = Locale.parse(path.parents[1].name).plural_form
    form_of = c2py(catalogue.plural_expr)
    forms = {(rule(count), form_of(count)) for count in COUNTS}
    assert len(forms) == catalogue.num_plurals == len({form for _, form in forms})


def test_spanish_and_french_differ_at_none_at_all():
    """Without this the law above could hold of rules that never look at their number."""
    forms = {path.parents[1].name: c2py(of_file(path).plural_expr) for path in CATALOGUES}
    assert [forms["es"](0), forms["es"](1), forms["fr"](0), forms["fr"](1), forms["fr"](2)] == [1, 0, 0, 0, 1]


@pytest.mark.parametrize("path", CATALOGUES, ids=lambda path: path.parents[1].name)
def test_every_phrase_that_counts_has_all_of_its_forms(path):
    catalogue = of_file(path)
    counted = [message for message in catalogue if isinstance(message.id, tuple)]
    assert [message.id for message in counted if len(message.string) != catalogue.num_plurals] == []
    assert [message.id for message in counted if not all(message.string)] == []
