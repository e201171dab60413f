"""What the slides of every lesson say, in two languages: predict first, an answer to all that is asked."""

import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest
from conftest import LESSONS
from lessons_in_words import core_sheet

from foldmath.making import proved_lesson
from foldmath.slides.page import slides_html
from foldmath.slides.slides import MOTION, QUESTION, StepSlide, slide_show
from foldmath.words.catalogues import catalogue

OWN = sorted(LESSONS.glob("*.toml"))
LANGUAGES = ("en-US", "es")
HOME = {"home_language": "uk", "words": {"crease": "згин", "whole": "ціле"}}


class Page:
    """The slides of a lesson in a language, as values and as elements."""

    def __init__(self, path, language):
        made, _ = proved_lesson(path)
        self.made = replace(made, lesson=replace(made.lesson, language=language, **HOME))
        self.sheet = core_sheet(self.made)
        self.slides = slide_show(self.made, self.sheet).slides
        self.html = slides_html(slide_show(self.made, self.sheet))
        sections = re.findall(r'<section class="scene.*?</section>', self.html, flags=re.DOTALL)
        self.scenes = [ElementTree.fromstring(section) for section in sections]
        self.said = catalogue(language).gettext

    def steps(self):
        for slide, scene in zip(self.slides, self.scenes, strict=True):
            if isinstance(slide, StepSlide):
                yield slide, scene


@pytest.fixture(scope="module", params=[(path, language) for path in OWN for language in LANGUAGES], ids=str)
def page(request):
    return Page(*request.param)


def with_class(element, name):
    return [each for each in element.iter() if name in each.get("class", "").split()]


def words_of(element):
    return " ".join("".join(element.itertext()).split())


def test_whoever_folds_predicts_first_and_counts_after_the_paper_has_moved(page):
    asked = page.said("Predict: how many panels will there be?")
    for slide, scene in page.steps():
        if slide.does == "fold":
            first, *_ = with_class(scene, "question")
            count, *_ = with_class(scene, "answer")
            assert words_of(first) == asked
            assert int(first.get("data-from")) == QUESTION < MOTION < int(count.get("data-from"))


def test_every_question_has_an_answer_that_comes_after_it(page):
    for scene in page.scenes:
        for said in with_class(scene, "said"):
            children = list(said)
            for question in with_class(said, "question"):
                answers = [
                    each for each in children[children.index(question) + 1 :] if each.get("class") == "answer"
                ]
                assert answers, words_of(question)
                assert any(character.isalnum() for character in words_of(answers[0]))
                assert int(answers[0].get("data-from")) > int(question.get("data-from"))


def test_every_reveal_of_a_slide_shows_something(page):
    """At the reveal at which paper moves there is a movement, or at least the paper as it lies then."""
    for slide, scene in zip(page.slides, page.scenes, strict=True):
        shown = {int(each.get("data-from")) for each in scene.iter() if each.get("data-from")}
        if slide.kind == "step":
            shown.add(MOTION)
        assert set(range(1, slide.last + 1)) <= shown, slide.kind


def test_a_fold_has_the_number_that_it_has_on_the_worksheet(page):
    numbers = {row.moment: row.number for row in page.sheet.folding.rows}
    for slide, scene in page.steps():
        shown = [words_of(number) for number in with_class(scene, "number")]
        expected = numbers.get(slide.number - 1)
        assert shown == ([str(expected)] if expected else [])


def test_the_page_says_its_language_and_words_of_the_home_language_say_theirs(page):
    assert f'<html lang="{page.made.lesson.language}">' in page.html
    for word, home in HOME["words"].items():
        assert re.search(rf'{word} \(<span lang="uk"[^>]*>{home}</span>\)', page.html)
        assert page.html.count(home) == 1


@pytest.mark.sweep("seed-trays")
@pytest.mark.parametrize("path", OWN, ids=lambda path: path.stem)
def test_nothing_but_the_lessons_own_words_is_the_same_in_both_languages(path):
    english, spanish = (Page(path, language) for language in LANGUAGES)
    lesson = english.made.lesson
    alike = texts(english) & texts(spanish)
    # Fractions are set apart from the words round them.
    notes = {" ".join(re.sub(r"\d+/\d+", " ", note).split()) for note in lesson.notes}
    named = {lesson.title, f"1 {lesson.title}", *notes}
    assert {text for text in alike if re.search(r"[^\W\d]{2}", text)} <= named


def texts(page):
    """Give every text and label of a page."""
    body = re.sub(r"<(script|style)\b.*?</\1>", "", page.html[page.html.index("<body") :], flags=re.DOTALL)
    labels = re.findall(r'(?:aria-label|title|alt|data-heard-\d)="([^"]+)"', body)
    between = re.sub(r"<math>.*?</math>|</?(?:b|span)\b[^>]*>", " ", body, flags=re.DOTALL)
    return {" ".join(text.split()) for text in [*re.split(r"<[^>]+>", between), *labels]}
