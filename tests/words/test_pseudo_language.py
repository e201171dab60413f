"""Nothing that people read is said outside the catalogues: every page and message in a made-up language."""

import re
import tomllib
from collections import defaultdict
from importlib.resources import files

import jinja2
import pytest
from conftest import in_silence
from pseudo_language import lesson_in_pseudo, plain_english, pseudo, texts_of_page, write_language

from foldmath.lesson.reading import read_lesson
from foldmath.making import Order, make
from foldmath.words import languages

TAUGHT = ("seed-trays", "tile-panels", "sail-cloth", "tile-race")
"""Halvings, a product of fans, a slanted fold, and a booklet."""

SOURCES = [
    source["short"]
    for source in tomllib.loads(
        files("foldmath.statements.rules").joinpath("published_answers.toml").read_text(encoding="utf-8")
    )["sources"].values()
]
"""Names of people and journals, which are written as they are."""


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Fold {edge} to %(place)s.", "⟦Ƒöļð {edge} ţö %(place)s.⟧"),
        ("{answer:cup|cups} of <b>{amount}</b>", "{answer:ĉûþ|ĉûþš}⟦ öƒ <b>{amount}</b>⟧"),
        ("{width} × {height}", "⟦{width} × {height}⟧"),
    ],
)
def test_values_and_tags_are_kept_in_the_made_up_language(text, said):
    assert pseudo(text) == said


def test_plain_english_is_found_beside_words_that_were_said():
    texts = ["⟦Ƒöļð⟧ 2/3 in", "⟦Ƒöļð⟧ it", "fold it over", "LDDTV5", "worksheet.pdf", "A sheet"]
    assert plain_english(texts, ["fold it over"]) == ["⟦Ƒöļð⟧ it", "A sheet"]


def test_what_a_page_says_to_eyes_and_ears_is_read_and_its_formulas_are_not():
    html = "<p>One<math><mi>two</mi></math></p><style>x {}</style><img alt='three'><b aria-label='four'></b>"
    assert texts_of_page(html) == ["One", "three", "four"]


@pytest.fixture(scope="module")
def spoken(tmp_path_factory):
    """Add the made-up language to the others."""
    locale = tmp_path_factory.mktemp("locale")
    write_language(locale)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(languages, "LOCALE", locale)
        yield locale


def pieces(step):
    """Give what stands round the fractions of a sentence, which a page sets as formulas; longest first."""
    found = {step, *(piece.strip() for piece in re.split(r"\d+/\d+", step))}
    return sorted(found - {""}, key=len, reverse=True)


@pytest.fixture(scope="module")
def filled(spoken, tmp_path_factory, picture_process):
    """Make the pages of a few lessons; give what every template was filled to, and the lessons' steps."""
    folder = tmp_path_factory.mktemp("pseudo")
    pages, sentences, fill = defaultdict(set), set(), jinja2.Template.render

    def filling(template, *args, **told):
        html = fill(template, *args, **told)
        pages[template.name].add(html)
        return html

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(jinja2.Template, "render", filling)
        for name in TAUGHT:
            file, steps = lesson_in_pseudo(name, folder)
            own = [str(words) for one in read_lesson(file).items for words in (one.item.text, one.item.unit)]
            sentences |= {piece for said in (*steps, *own) for piece in pieces(said)}
            make(file, Order(out=folder / "out", paper="letter"), picture_process, in_silence)
    return pages, sentences


def test_no_page_says_plain_english(filled):
    pages, sentences = filled
    rooms = {name.partition("/")[0] for name in pages}
    assert rooms >= {"worksheets", "teachers_plan", "guides", "booklets", "slides"}
    quoted = sorted({*sentences, *SOURCES}, key=len, reverse=True)
    said = {name: [text for html in found for text in texts_of_page(html)] for name, found in pages.items()}
    slipped = {name: plain_english(texts, quoted) for name, texts in said.items()}
    assert {name: texts for name, texts in slipped.items() if texts} == {}
