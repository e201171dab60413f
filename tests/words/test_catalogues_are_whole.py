"""Catalogues say what they should: Spanish every text, British what differs, both with the same values."""

import re
from collections import Counter

import pytest
from babel.messages.pofile import read_po
from pseudo_language import texts_found

from foldmath.words.catalogues import DOMAIN
from foldmath.words.languages import folder_of, kin, languages

VALUES = re.compile(r"\{\{|\}\}|\{\w+\}|%\(\w+\)[sr]|%[sr%]")
"""Values by name, as ``str.format`` and templates have them, and what stands for a brace or a per cent."""

OWN = [language for language in languages() if folder_of(language).joinpath("LC_MESSAGES").is_dir()]


def catalogue_of(language):
    with (folder_of(language) / "LC_MESSAGES" / f"{DOMAIN}.po").open("rb") as stream:
        return read_po(stream, locale=language.replace("-", "_"))


@pytest.fixture(scope="module", params=OWN)
def language(request):
    return request.param


@pytest.fixture(scope="module")
def messages(language):
    return [message for message in catalogue_of(language) if message.id]


@pytest.fixture(scope="module")
def texts():
    """Give what people read, as it is extracted; a text that counts by its first form."""
    return {text if isinstance(text, str) else text[0] for text in texts_found()}


def first(message):
    return message.id if isinstance(message.id, str) else message.id[0]


def forms(message):
    return (message.string,) if isinstance(message.id, str) else tuple(message.string)


def values(text):
    return Counter(VALUES.findall(text))


def test_a_language_of_its_own_says_every_text(language, messages, texts):
    said = {first(message) for message in messages if all(forms(message)) and not message.fuzzy}
    if not kin(language):
        assert sorted(texts - said) == []


def test_no_catalogue_says_what_nobody_asks_any_more(messages, texts):
    assert sorted({first(message) for message in messages} - texts) == []


def test_no_text_is_left_half_said(messages):
    assert [first(message) for message in messages if message.fuzzy or not all(forms(message))] == []


def test_a_text_that_counts_has_a_form_for_every_number(language, messages):
    wanted = catalogue_of(language).num_plurals
    counted = [message for message in messages if not isinstance(message.id, str)]
    assert counted
    assert [first(message) for message in counted if len(message.string) != wanted] == []


def test_the_values_of_a_text_stand_in_what_is_said_for_it(messages):
    """A single thing may be told without its number: "the panel" for "1 panel"."""
    for message in messages:
        written = (message.id,) if isinstance(message.id, str) else tuple(message.id)
        for one, said in zip(written, forms(message), strict=True):
            lacking, more = values(one) - values(said), values(said) - values(one)
            allowed = {"%(count)s", "{count}"} if said is forms(message)[0] and len(written) > 1 else set()
            assert set(lacking) | set(more) <= allowed, first(message)
