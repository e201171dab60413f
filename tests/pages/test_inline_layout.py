"""Running text with fractions is set evenly: bars touch nothing, lines and boxes keep their measure."""

import re
from itertools import pairwise

import pytest
from page_reading import MM, grey_page, pages_of, place_of
from tag_reading import heard
from trial_printing import print_body

FRACTION = "<math><mfrac><mn>{}</mn><mn>{}</mn></mfrac></math>"
DPI = 300
DARK = 128


def page_of(tmp_path, body, *, answers=False):
    path = tmp_path / f"trial-{answers}.pdf"
    path.write_bytes(print_body(body, answers=answers))
    return path


def runs_of_ink(rows):
    """Give how many rows of pixels each stretch of ink and each stretch of white between them takes."""
    stretches = re.findall(r"1+|0+", "".join("1" if row else "0" for row in rows).strip("0"))
    return [(stretch[0] == "1", len(stretch)) for stretch in stretches]


@pytest.mark.parametrize("style", ["item", "small", "note", "h1"])
@pytest.mark.parametrize(("above", "below"), [("1", "2"), ("17", "4"), ("8", "15"), ("3", "100")])
def test_a_fraction_never_touches_its_bar(tmp_path, style, above, below):
    path = page_of(tmp_path, f'<p class="{style}">{FRACTION.format(above, below)}</p>')
    page = grey_page(path, 0, DPI)[: page_height(path) * 7 // 8]
    ink = runs_of_ink((page < DARK).any(axis=1))
    assert [is_ink for is_ink, _ in ink] == [True, False, True, False, True]
    figures, over, bar, under, more_figures = (height for _, height in ink)
    assert min(over, under) > bar
    assert bar < figures / 5
    assert abs(over - under) <= 2
    assert abs(figures - more_figures) <= 2


def page_height(path):
    return grey_page(path, 0, DPI).shape[0]


def test_a_bar_is_wider_than_the_figures_above_and_below_it(tmp_path):
    path = page_of(tmp_path, f"<p>{FRACTION.format(3, 100)}</p>")
    (page,) = pages_of(path)
    (bar,) = page["lines"]
    figures = [char for char in page["chars"] if char["size"] > 9.5]
    assert bar["x0"] < min(char["x0"] for char in figures)
    assert bar["x1"] > max(char["x1"] for char in figures)


def baselines(page):
    return sorted({round(word["bottom"], 2) for word in page["words"] if word["text"] == "fold"})


@pytest.mark.parametrize("words", ["fold " * 80, "fold " * 20 + FRACTION.format(1, 2) + " fold" * 60])
def test_lines_are_evenly_spaced_whether_or_not_they_hold_fractions(tmp_path, words):
    (page,) = pages_of(page_of(tmp_path, f"<p>{words}</p>"))
    lines = baselines(page)
    assert len(lines) > 3
    distances = {round(lower - upper, 1) for upper, lower in pairwise(lines)}
    assert len(distances) == 1


def test_fractions_of_one_line_do_not_touch_those_of_the_next(tmp_path):
    path = page_of(tmp_path, f"<p>{(FRACTION.format(15, 24) + ' ') * 80}</p>")
    page = grey_page(path, 0, DPI)[: page_height(path) * 7 // 8]
    # Ink and white of the digits alone: figures, bar, figures, then white before the next line.
    left = round((215.9 - 180) / 2 / 25.4 * DPI)
    column = page[:, left : left + round(12 / 72 * DPI)]
    ink = runs_of_ink((column < DARK).any(axis=1))
    assert len(ink) % 6 == 5
    assert all(height >= 3 for is_ink, height in ink if not is_ink)
    figures, between_lines = ink[0][1], [height for _, height in ink[5::6]]
    assert min(between_lines) > figures / 6


BOXES = (
    '<p class="sum"><output>8</output> × <span class="fraction"><output>1</output><output>8</output></span>'
    ' = <output>1</output> whole sheet</p><p class="centre"><output class="predict">12</output></p>'
)


def test_boxes_keep_their_places_and_sizes_whether_or_not_the_answer_shows(tmp_path):
    hidden, shown = (pages_of(page_of(tmp_path, BOXES, answers=answers))[0] for answers in (False, True))
    assert [place_of(rect) for rect in hidden["rects"]] == [place_of(rect) for rect in shown["rects"]]
    assert len(hidden["rects"]) == 5
    assert len(shown["chars"]) - len(hidden["chars"]) == len("81812") + 1


def test_a_box_is_big_enough_for_a_childs_hand(tmp_path):
    """12 mm wide and 10 mm high, and more to predict in [common practice, no source]."""
    (page,) = pages_of(page_of(tmp_path, BOXES))
    sizes = sorted((round(rect["width"] / MM, 1), round(rect["height"] / MM, 1)) for rect in page["rects"])
    assert sizes == [*[(12, 10.5)] * 4, (14, 14)]


@pytest.mark.parametrize("answer", ["8", "144", "12345678"])
def test_an_answer_stays_inside_its_box_however_long_it_is(tmp_path, answer):
    (page,) = pages_of(page_of(tmp_path, f"<p><output>{answer}</output></p>", answers=True))
    (box,) = page["rects"]
    for char in page["chars"]:
        if char["size"] != 9:
            assert box["x0"] <= char["x0"] <= char["x1"] <= box["x1"]
            assert box["top"] <= char["top"] <= char["bottom"] <= box["bottom"]


def test_a_title_that_looks_like_markup_stands_on_the_page_as_it_is(tmp_path):
    (page,) = pages_of(page_of(tmp_path, "<h1>&lt;/title&gt;&lt;script&gt; &amp;amp;</h1>"))
    assert [word["text"] for word in page["words"]][:2] == ["</title><script>", "&amp;"]


def test_the_same_words_keep_to_the_width_of_each_cell_they_stand_in(tmp_path):
    words = (
        f"<p>one {FRACTION.format(1, 2)} two {FRACTION.format(1, 3)} three {FRACTION.format(1, 4)} four</p>"
    )
    table = "<table><tr class='plan-grid'><td class='plan-slip'>{0}</td>"
    table += "<td class='plan-asks'>{0}</td></tr></table>"
    path = page_of(tmp_path, table.format(words) + words)
    (page,) = pages_of(path)
    narrow, wide = sorted((rect for rect in page["rects"]), key=lambda rect: rect["width"])[:2]
    for cell in (narrow, wide):
        inside = [
            char
            for char in page["chars"]
            if cell["x0"] <= char["x0"] < cell["x1"] and char["top"] < cell["bottom"]
        ]
        assert max(char["x1"] for char in inside if not char["text"].isspace()) <= cell["x1"]


def test_brackets_embrace_the_fraction_between_them_and_are_read_with_it(tmp_path):
    path = page_of(tmp_path, f"<p>({FRACTION.format(1, 4)})² × (1)²</p>")
    (page,) = pages_of(path)
    height_of = [char["bottom"] - char["top"] for char in page["chars"] if char["text"] in "()"]
    tall, low = height_of[:2], height_of[2:]
    assert min(tall) > 1.5 * max(low)
    assert "(1/4)² × (1)²" in heard(path).text
