"""The worksheet and its key are one document; what a lesson says is text in it, whatever it looks like."""

import re

import pytest
from lessons_in_words import EIGHTHS, proved

from foldmath.documents.blocks import Box, LineBreak, Paragraph, Row, Stack, Text, Together, WritingLines
from foldmath.documents.markup import blocks_of
from foldmath.documents.templating import html, sentence
from foldmath.documents.worksheet import worksheet

PRODUCTS = ("2/3 × 4/5", "3 × 2/5", "3/4 × 1/2")
LESSONS = {
    "halving": proved(*EIGHTHS, "open", practice=PRODUCTS),
    "grade 4": proved(*EIGHTHS, "open", grade=4, practice=("3 × 2/5",)),
    "unequal": proved("fold at 1/3 moving left", "fold at 1/4 moving bottom", "open", practice=PRODUCTS),
    "shading": proved(
        "pleat width into 3", "open", "pleat height into 5", "open", "shade 4 of 5 up", "shade 2 of 3 across"
    ),
    "old crease": proved("fold left edge to right edge", "open", "fold right edge to left edge, behind"),
    "corner": proved("fold bottom left corner to top right corner", "open last", "turn over"),
    "many": proved("pleat width into 5", "pleat height into 6", "open", practice=("11/12 × 7/12",)),
}
lessons = pytest.mark.parametrize("lesson", LESSONS.values(), ids=LESSONS)


def words_of(runs):
    """Write a paragraph as it is read aloud: a fraction or a box is one word."""
    words = ""
    for run in runs:
        if isinstance(run, Text):
            words += run.text
        else:
            words += "\n" if isinstance(run, LineBreak) else " number "
    return words


def paragraphs(blocks):
    for block in blocks:
        if isinstance(block, Paragraph):
            yield words_of(block.runs)
        elif isinstance(block, WritingLines):
            yield words_of(block.answer)
        elif isinstance(block, Row):
            for cell in block.cells:
                yield from paragraphs(cell.blocks)
        elif isinstance(block, Together):
            yield from paragraphs(block.blocks)


def boxes_in(blocks):
    def of_runs(runs):
        for run in runs:
            if isinstance(run, Box):
                yield run.answer
            elif isinstance(run, Stack):
                yield from of_runs(run.above)
                yield from of_runs(run.below)

    for block in blocks:
        if isinstance(block, Paragraph):
            yield from of_runs(block.runs)
        elif isinstance(block, Row):
            for cell in block.cells:
                yield from boxes_in(cell.blocks)
        elif isinstance(block, Together):
            yield from boxes_in(block.blocks)


@lessons
def test_no_sentence_that_a_pupil_reads_is_longer_than_twelve_words(lesson):
    """At most 12 words a sentence [common practice, no source]."""
    for paragraph in paragraphs(blocks_of(html(worksheet(lesson), key=False))):
        for said in re.split(r"[.?!:…](?:\s|$)|\n", paragraph):
            words = [word for word in said.split() if word.strip("×=+−,;()✓")]
            assert len(words) <= 12, said


@lessons
def test_the_key_begins_with_the_very_blocks_of_the_worksheet(lesson):
    sheet = worksheet(lesson)
    blocks, key = blocks_of(html(sheet, key=False)), blocks_of(html(sheet, key=True))
    assert key[: len(blocks)] == blocks
    assert len(key) > len(blocks)


def numbers_below_bars(blocks):
    for block in blocks:
        if isinstance(block, Paragraph):
            for run in block.runs:
                if isinstance(run, Stack):
                    (below,) = run.below
                    yield int(below.answer if isinstance(below, Box) else below.text)
        elif isinstance(block, Row):
            for cell in block.cells:
                yield from numbers_below_bars(cell.blocks)
        elif isinstance(block, Together):
            yield from numbers_below_bars(block.blocks)


@pytest.mark.parametrize("rows", [4, 6, 12])
def test_no_pupil_works_with_a_denominator_above_24(rows):
    """No pupil sentence has a larger one [common practice, no source]."""
    sheet = worksheet(proved("pleat width into 5", "open", f"pleat height into {rows}", "open"))
    below = set(numbers_below_bars(blocks_of(html(sheet, key=False))))
    assert max(below) == (20 if rows == 4 else 5)


@lessons
def test_no_box_that_is_to_be_written_in_lacks_its_answer(lesson):
    answers = list(boxes_in(blocks_of(html(worksheet(lesson), key=False))))
    # The date, and "true" beside the claim that is false, stay empty.
    assert answers.count("") <= 2
    assert "Answer key" in answers


def test_a_grade_that_multiplies_no_fractions_is_asked_for_none():
    """Fractions times fractions: Common Core State Standards for Mathematics (2010), 5.NF.B.4, grade 5."""
    fourth, fifth = (html(worksheet(LESSONS[name]), key=False) for name in ("grade 4", "halving"))
    assert "One panel is" in fourth
    assert "One panel is" not in fifth


@pytest.mark.parametrize("title", ["</title><script>alert(1)</script>", "{{ 7 * 7 }}", "A & B < C", "<b>x"])
def test_a_title_is_text_whatever_it_looks_like(title):
    document = html(worksheet(proved(*EIGHTHS, title=title)), key=True)
    assert "<script" not in document
    assert title in list(paragraphs(blocks_of(document)))


def test_the_language_of_the_lesson_is_the_language_of_the_document():
    assert '<html lang="en-GB">' in html(worksheet(proved(*EIGHTHS, language="en-GB")), key=False)


def test_a_step_is_written_as_a_sentence():
    assert str(sentence("open")) == "Open."
    assert str(sentence("fold at 1/3 moving left")).startswith("Fold at <math>")
