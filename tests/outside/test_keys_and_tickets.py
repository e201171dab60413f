"""The worksheet, its key and the exit ticket as other programs see them: pdfplumber
(github.com/jsvine/pdfplumber) for places, PDFium (pdfium.googlesource.com) for the words that a reader
copies, sympy for the answers.
"""

import re
from math import prod

import pytest
from page_reading import (
    boxes_of,
    foot_words,
    fractions_in,
    models_of,
    pages_of,
    place_of,
    text_of,
    text_within,
    usable_area,
    within,
)
from sympy import Rational

from foldmath.statements.answers import Folds
from foldmath.statements.items import ItemKind, Level, ShadeItem
from foldmath.words.steps import step_sentence


def number(text):
    return Rational(text)


# The worksheet and its key.


def own_pages(leveled):
    """Give the pages of the worksheet, and those of the key that show the same with its answers."""
    sheet = pages_of(leveled.worksheet)
    return zip(sheet, pages_of(leveled.key)[: len(sheet)], strict=True)


def key_notes(leveled):
    """Give the words of the key's own pages, which tell of each item."""
    text = " ".join(text_of(leveled.key)[len(text_of(leveled.worksheet)) :])
    assert "what the answers say" in text
    return text


@pytest.mark.sweep("core-seed-trays-letter")
def test_the_key_begins_with_the_worksheets_own_pages(leveled):
    assert len(pages_of(leveled.key)) > len(pages_of(leveled.worksheet)) >= 2
    for ours, theirs in own_pages(leveled):
        boxes, filled = boxes_of(ours), boxes_of(theirs)
        assert [place_of(box) for box in boxes] == [place_of(box) for box in filled]
        assert [place_of(model) for model in models_of(ours)] == [
            place_of(model) for model in models_of(theirs)
        ]
        words = [(word["text"], place_of(word)) for word in ours["words"] if word not in foot_words(ours)]
        answered = [(word["text"], place_of(word)) for word in theirs["words"]]
        assert set(words) <= set(answered)


def answers_in_boxes(path, numbers):
    """Give what stands in each box of some pages, in the order of the page's own marks."""
    for index in numbers:
        boxes = boxes_of(pages_of(path)[index])
        yield from (text.strip() for text in text_within(path, index, boxes))


def given_away(sheet):
    """Give the numbers that a guided page shows: its first row, its example, and how other rows begin."""
    (row, *others), item = sheet.folding.rows, sheet.example.item
    folded = [str(row.panels)] * 2 + re.findall(r"\d+", " ".join(map(str, [row.count, *row.sizes])))
    for other in others:
        begun = [str(sentence).partition(" ")[0] for sentence in (other.count, *other.sizes)]
        folded += re.findall(r"\d+", " ".join(begun))
    (cells,) = item.sheets.sheets
    shaded = [str(number) for number in (cells.across, cells.up, cells.columns, cells.rows)]
    return folded + shaded + str(item.answer).split("/")


def test_no_box_of_a_worksheet_is_filled_but_those_of_a_guided_pages_examples(leveled):
    numbers = range(len(pages_of(leveled.worksheet)))
    filled = [text for text in answers_in_boxes(leveled.worksheet, numbers) if text]
    assert filled == (given_away(leveled.sheet) if leveled.level is Level.GUIDED else [])


def test_every_box_of_the_key_holds_its_answer(leveled):
    answers = list(answers_in_boxes(leveled.key, range(len(pages_of(leveled.worksheet)))))
    assert all(re.fullmatch(r"\d*|✓|[<>=]", answer) for answer in answers)
    sheet = leveled.sheet
    # One of two ticks stays empty beside each sentence to sort, and "true" beside a claim that is false.
    sorting = [placed.item for placed in sheet.items if placed.item.kind is ItemKind.COUNT_OR_SIZE]
    claims = 1 if sheet.judged else 0
    assert answers.count("") == sum(len(item.sentences) for item in sorting) + claims
    assert len(answers) > (12 if sheet.stretch else 20)


def test_no_page_of_items_gives_an_answer_away(leveled):
    items = " ".join(text_of(leveled.worksheet)).partition("Shade and multiply")[2]
    shaded = [placed.item for placed in leveled.sheet.items if isinstance(placed.item, ShadeItem)]
    assert len(shaded) >= 2
    for item in shaded:
        assert str(item.answer) not in fractions_in(items)


def test_only_the_key_says_that_it_is_one(leveled):
    assert "Answer key" not in " ".join(text_of(leveled.worksheet))
    assert "Answer key" in text_of(leveled.key)[0]


UNEQUAL = "sail-cloth"
"""The lesson whose folds leave panels of several sizes."""


@pytest.mark.sweep("seed-trays-letter")
def test_levels_with_boxes_begin_with_the_same_pages_to_fold_by(pages):
    def folding(level):
        """Give the words, boxes and lines of the first page below the heads of its table.

        How far down each is may differ: a guided page has its bank of words above, and less room left.
        """
        page = pages_of(pages.at(level).worksheet)[0]
        top = next(place_of(word)[1] for word in page["words"] if word["text"] == "Before")

        def below(places):
            return [
                (left, right, round(under - above, 1)) for left, above, right, under in places if above >= top
            ]

        boxes = [place_of(box) for box in boxes_of(page)]
        words = [
            (word["text"], *below([place_of(word)]))
            for word in page["words"]
            if word not in foot_words(page) and not any(within(place_of(word), box) for box in boxes)
        ]
        drawn = [place_of(line) for line in (*page["lines"], *page["curves"], *page["rects"])]
        return sorted(word for word in words if word[1:]), below(boxes), sorted(below(drawn))

    (guided, *drawn), core = folding(Level.GUIDED), folding(Level.CORE)
    if pages.name == UNEQUAL:
        # Sizes that others find are given there, as words in the place of boxes.
        return
    near = [[pytest.approx(place, abs=0.15) for place in places] for places in core[1:]]
    assert drawn == near
    example = [word for word, _ in guided if (word, _) not in core[0]]
    assert sorted(example) == sorted(["This", "one", "is", "an", "example."])


# What the key says.

NUMBER = r"(?:\d+/\d+|\d+)"
WORKING = re.compile(
    # The number of an item, and not the end of what stands before it: 8 × 1/8 = 1.
    rf"(?<!= )(?P<count>\d)\. (?P<answer>{NUMBER})\. +(?P<factors>{NUMBER}(?: × {NUMBER})+)"
    rf"(?P<forms>(?: = {NUMBER})+)\."
    r"(?: Accept also (?P<more>[\d/ ,]+)\.)?"
)
PRODUCTS = (ItemKind.SHADE, ItemKind.STORY, ItemKind.REPEATED_HALVING, ItemKind.OWN)
"""Kinds of item that ask for a product, so that the last number of the working is the answer."""


def in_key(answer) -> str:
    """Write an answer as a key sets it: steps as sentences of their own, all else in figures."""
    if not isinstance(answer, Folds):
        return str(answer)
    said = map(step_sentence, answer.steps)
    return ". ".join(one[0].upper() + one[1:] for one in said)


def numbered(sheet):
    """Give the items of a page with their numbers; the example that is solved has none."""
    return list(enumerate((placed.item for placed in sheet.items), start=1))


def test_the_keys_own_words_take_one_page(leveled):
    assert len(pages_of(leveled.key)) == len(pages_of(leveled.worksheet)) + 1


def test_the_key_tells_the_answer_of_every_item(leveled):
    notes = key_notes(leveled)
    for count, item in numbered(leveled.sheet):
        once = {
            ItemKind.EXPLAIN: "statement",
            ItemKind.BIGGER_OR_SMALLER: "statement",
            ItemKind.MEND: "working",
        }
        answer = getattr(item, once.get(item.kind, "answer"))
        assert f"{count}. {in_key(answer)}." in notes, notes
        assert f"{item.working}." in notes


def test_every_product_of_the_key_is_true_as_sympy_multiplies(leveled):
    seen = 0
    kinds = {count: placed.item.kind for count, placed in enumerate(leveled.sheet.items, start=1)}
    for working in WORKING.finditer(key_notes(leveled)):
        if kinds.get(int(working["count"])) in PRODUCTS:
            product = prod(number(factor) for factor in working["factors"].split(" × "))
            forms = [working["answer"], *working["forms"].split(" = ")[1:]]
            forms += (working["more"] or "").replace(",", " ").split()
            assert {number(form) for form in forms} == {product}
            assert str(product) in forms
            seen += 1
    assert seen >= (1 if leveled.sheet.guided else 2)


def test_the_key_names_likely_wrong_answers_and_three_of_them_to_each_product(leveled):
    notes = key_notes(leveled)
    for _, item in numbered(leveled.sheet):
        assert len(item.wrong) == 3 or not isinstance(item, ShadeItem)
        for wrong in item.wrong:
            assert in_key(wrong.answer) in notes


# The exit ticket and the teacher's plan.


def test_two_tickets_alike_stand_on_one_page_that_is_cut_in_half(pages):
    (page,) = pages_of(pages.ticket)
    area = usable_area(page)
    words = [word for word in page["words"] if word not in foot_words(page) and word["text"] != "✂"]
    half = (area[1] + area[3]) / 2
    upper = [word for word in words if word["bottom"] < half]
    lower = [word for word in words if word["top"] > half]
    assert len(upper) + len(lower) == len(words)
    down = min(word["top"] for word in lower) - min(word["top"] for word in upper)
    above, below = (
        sorted((word["text"], round(word["x0"]), round(word["top"] + moved)) for word in ticket)
        for ticket, moved in ((upper, down), (lower, 0))
    )
    assert above == below


def test_the_ticket_is_empty_and_the_key_of_every_level_has_its_answers(pages):
    assert set(answers_in_boxes(pages.ticket, [0])) == {""}
    (text,) = text_of(pages.ticket)
    first, second = re.search(
        r"Put your sheet away\. Write the product\. (\d+/\d+) × (\d+/\d+) =", text
    ).groups()
    product = number(first) * number(second)
    for level in Level:
        told = re.search(r"Exit ticket\. (?:1: .*? )?2: (\d+/\d+), or any equal", key_notes(pages.at(level)))
        assert number(told[1]) == product


def test_the_second_question_of_the_ticket_stands_on_no_worksheet(pages):
    (text,) = text_of(pages.ticket)
    first, second = re.search(r"Write the product\. (\d+/\d+) × (\d+/\d+) =", text).groups()
    for level in Level:
        worksheet = " ".join(text_of(pages.at(level).worksheet))
        for one, other in ((first, second), (second, first)):
            assert not re.search(rf"(?<![\d/]){one} (×|of) {other}(?![\d/])", worksheet)


@pytest.mark.parametrize("paper", ["letter", "A4"])
def test_a_slanted_fold_is_told_in_one_wording_by_all_papers(all_pages, paper):
    folder = all_pages["sail-cloth", paper].folder
    for name in ("worksheet", "worksheet-stretch", "teacher-plan", "slides", "templates"):
        text = " ".join(" ".join(text_of(folder / f"{name}.pdf")).split()).lower()
        assert "fold from the bottom left corner through the crossing" in text, name
        assert "1/3 across" not in text, name


@pytest.mark.sweep("seed-trays-letter")
def test_the_plan_has_at_most_three_pages(pages):
    assert 1 <= len(pages_of(pages.plan)) <= 3
