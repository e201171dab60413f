"""Papers by name, by weight and by thickness."""

import pytest

from foldmath.errors import Unreadable
from foldmath.lesson.reading import lesson_in
from foldmath.plane.numbers import exact
from foldmath.tolerance.assumed.stock import DEFAULT_STOCK, all_stocks, stock_named, usual_stock


def test_names_are_read_whatever_their_spaces_and_capitals():
    assert stock_named("Copy 20 lb") == stock_named("20lb copy") == stock_named("COPY PAPER") == DEFAULT_STOCK
    assert stock_named("index-110 lb") == stock_named("110 lb index")


@pytest.mark.parametrize("text", ["0.1 mm", "0.01 cm", "1/10 mm"])
def test_a_measured_thickness_is_taken_as_it_is(text):
    assert stock_named(text).caliper_mm == exact(1, 10)


def test_mils_are_thousandths_of_an_inch():
    assert stock_named("4 mil").caliper_mm == stock_named("0.004 in").caliper_mm == exact(1016, 10000)


def test_a_grammage_between_two_papers_lies_between_their_thicknesses():
    made = stock_named("120 g/m²")
    assert made.grammage == 120
    assert stock_named("copy 20 lb").caliper_mm < made.caliper_mm < stock_named("90 lb index").caliper_mm
    assert "interpolated" in made.source


def test_heavier_paper_of_one_kind_is_thicker():
    calipers = [stock_named(f"{grams} gsm").caliper_mm for grams in (60, 90, 120, 165, 200, 255, 305, 350)]
    assert calipers == sorted(calipers)


@pytest.mark.parametrize("text", ["110 lb cardstock", "110 lb", "110 lb card"])
def test_pounds_of_card_may_be_index_or_cover_and_the_hint_names_both(text):
    with pytest.raises(Unreadable) as refused:
        stock_named(text)
    assert "'110 lb index' (199 g/m²)" in str(refused.value)
    assert "'110 lb cover' (297 g/m²)" in str(refused.value)


def test_card_without_pounds_is_ambiguous_too():
    with pytest.raises(Unreadable, match="110 lb index"):
        stock_named("cardstock")


def test_a_misspelt_paper_gets_the_nearest_name():
    with pytest.raises(Unreadable, match="construction"):
        stock_named("constructoin")


@pytest.mark.parametrize(
    "text",
    ["", "5 mm", "0 mm", "-1 mm", "900 gsm", "1.2.3 gsm", "1.2.3 mil", "0 lb cover", "vellum", "x" * 999],
)
def test_words_that_are_no_paper_are_refused_in_one_short_line_with_a_remedy(text):
    with pytest.raises(Unreadable) as refused:
        stock_named(text)
    said, remedy = str(refused.value).split("\n")
    assert remedy.startswith("    try:  ")
    assert len(said) < 120


def test_every_paper_has_a_source_and_reads_back_by_its_name():
    for stock in all_stocks():
        assert stock.source
        assert stock_named(stock.name) == stock


def test_a_sheet_in_inches_is_20_lb_paper_and_any_other_80_gsm_if_nothing_is_said():
    units = ("in", "cm", "mm")
    assert [usual_stock("", unit).name for unit in units] == ["copy 20 lb", "80 gsm", "80 gsm"]
    papers = {
        paper: f'title = "T"\ngrade = 5\npaper = "{paper}"\nsteps = ["open"]\n' for paper in ("letter", "A4")
    }
    read = {paper: lesson_in(text, "t.toml").stock.name for paper, text in papers.items()}
    assert read == {"letter": "copy 20 lb", "A4": "80 gsm"}


@pytest.mark.parametrize(
    ("paper", "stock"),
    [
        ("construction 12 x 18", "construction"),
        ("Construction 9x12", "construction"),
        ("chart 24 x 32", "chart paper"),
        ("easel pad", "chart paper"),
        ("flip pad", "chart paper"),
        ("tabloid", "copy 20 lb"),
        ("origami 15 cm", "80 gsm"),
    ],
)
def test_a_sheet_whose_name_tells_what_it_is_made_of_is_that(paper, stock):
    text = f'title = "T"\ngrade = 5\npaper = "{paper}"\nsteps = ["fold left edge to right edge"]\n'
    assert lesson_in(text, "t.toml").stock.name == stock
    told = lesson_in(f'{text}stock = "copy 24 lb"\n', "t.toml")
    assert told.stock.name == "copy 24 lb"
