"""The tag tree of printed files, read as one hears it who cannot see the page."""

from io import BytesIO

import pikepdf
import pytest
from conftest import SUFFIXES
from tag_reading import TaggedFile, heard, leaves, rows_of
from trial_printing import print_body

from foldmath.statements.items import Level

LEVELS = tuple(SUFFIXES)


@pytest.fixture(scope="module")
def core(all_pages):
    return all_pages["seed-trays", "letter"].at(Level.CORE)


@pytest.fixture(scope="module")
def worksheet(core):
    return heard(core.worksheet)


@pytest.fixture(scope="module")
def key(core):
    return heard(core.key)


def body(html):
    return TaggedFile(BytesIO(print_body(html))).whole


def test_the_file_tells_its_language_and_shows_its_title_which_tells_key_from_worksheet(core):
    for path, title in (
        (core.worksheet, "Seed trays: worksheet, core"),
        (core.key, "Seed trays: answer key, core"),
    ):
        with pikepdf.open(path) as file:
            assert str(file.Root.Lang) == "en-US"
            assert file.Root.ViewerPreferences.DisplayDocTitle
            assert file.Root.MarkInfo.Marked
            metadata = file.open_metadata()
            assert metadata["dc:title"] == title == str(file.docinfo["/Title"])
            assert (metadata["xmp:CreatorTool"], str(file.docinfo["/Creator"])) == ("foldmath", "foldmath")


def test_headings_tell_the_title_and_then_the_parts(worksheet):
    headings = worksheet.all("H1", "H2")
    assert [(one.kind, one.text) for one in headings] == [
        ("H1", "Seed trays"),
        ("H2", "Shade and multiply"),
    ]


def test_the_folds_are_a_table_whose_columns_and_rows_have_heads(worksheet):
    table = worksheet.all("Table")[0]
    head, *folds = rows_of(table)
    assert [cell.text for cell in head] == [
        "",
        "Before the fold",
        "Panels: I predict",
        "I count",
        "What the fold shows",
    ]
    assert [cell.scope for cell in head] == ["", "Column", "Column", "Column", "Column"]
    assert [[cell.text for cell in row[:2]] for row in folds] == [
        ["1", "Fold the left edge to the right edge."],
        ["2", "Fold the top edge to the bottom edge."],
        ["3", "Fold the left edge to the right edge."],
    ]
    for row in folds:
        assert [cell.scope for cell in row[:2]] == ["Row", "Row"]
        assert [cell.text for cell in row[3:5]] == ["blank", "blank"]
        assert sum(cell.columns for cell in row) == sum(cell.columns for cell in head)


def test_the_picture_beside_a_fold_tells_how_the_sheet_lies_and_where_it_is_folded(worksheet):
    pictures = [figure.alternate for figure in worksheet.all("Table")[0].all("Figure")]
    assert pictures[:2] == [
        "The sheet lies open inside its outline. "
        "A line to fold on runs from top to bottom, at 1/2 of the width.",
        "The sheet is folded, up to 2 layers thick, inside the dotted outline of the whole sheet. "
        "A line to fold on runs from side to side, at 1/2 of the height.",
    ]


def test_items_are_a_list_numbered_as_they_are_printed(worksheet, core):
    items = [item for part in worksheet.all("L") for item in part.children]
    # The sentence that is true or false closes the list.
    assert [item.kind for item in items] == ["LI"] * (len(core.sheet.items) + 1)
    assert [item.children[0].text for item in items] == [str(n) for n in range(1, len(items) + 1)]
    assert all([part.kind for part in item.children] == ["Lbl", "LBody"] for item in items)


def test_a_model_to_shade_tells_how_it_is_divided_and_that_nothing_is_shaded(worksheet, key):
    shade = worksheet.all("LI")[0]
    assert [figure.alternate for figure in shade.all("Figure")] == [
        "1 sheet, marks at its edges for 3 columns by 5 rows, nothing shaded."
    ]
    assert "8 of 15 parts" in key.all("LI")[0].all("Figure")[0].alternate


@pytest.mark.parametrize("level", LEVELS, ids=lambda level: level.value)
def test_no_picture_of_a_worksheet_is_silent_or_tells_what_is_to_be_found(all_pages, level):
    pages = all_pages["seed-trays", "letter"].at(level)
    worked = 1 if level is Level.GUIDED else 0
    items = [item for part in heard(pages.worksheet).all("L") for item in part.children]
    for item in items[worked:]:
        for figure in item.all("Figure"):
            assert figure.alternate
            assert "shaded twice" not in figure.alternate


def test_a_blank_sheet_of_the_hardest_level_does_not_tell_how_to_divide_it(all_pages):
    stretch = heard(all_pages["seed-trays", "letter"].at(Level.STRETCH).worksheet)
    models = [figure.alternate for item in stretch.all("LI") for figure in item.all("Figure")]
    assert models
    assert all("columns" not in words for words in models)


def test_fractions_are_one_phrase_and_boxes_to_fill_are_blank(worksheet, key):
    product = worksheet.all("LI")[0].all("P")[-1]
    assert product.text == "2/3 × 4/5 = blank × blank over blank × blank = blank over blank"
    assert key.all("LI")[0].all("P")[-1].text == "2/3 × 4/5 = 2 × 4/3 × 5 = 8/15"


def test_a_mixed_number_keeps_its_whole_apart():
    mixed = "<math><mn>4</mn><mfrac><mn>1</mn><mn>6</mn></mfrac></math>"
    assert body(f'<p class="item">{mixed} m</p>').text == "4 1/6 m"


def test_words_stay_apart_where_a_line_ends_and_beside_a_box():
    long = " ".join(["panel"] * 60)
    assert body(f'<p class="item">{long}</p>').text == long
    html = '<p class="item"><output>8</output> of <output>4</output> <output>2</output> panels</p>'
    paragraph = body(html).all("P")[0]
    assert " ".join(paragraph.words.split()) == "blank of blank blank panels"


def test_the_order_is_that_of_the_page(worksheet):
    texts = [leaf.text for leaf in leaves(worksheet)]
    order = [
        "Name blank Date blank",
        "Seed trays",
        "Before the fold",
        "At the end, open the sheet.",
        "Shade and multiply",
    ]
    assert [texts.index(text) for text in order] == sorted(texts.index(text) for text in order)


def test_feet_are_no_part_of_what_is_heard(core):
    file = TaggedFile(core.worksheet)
    assert all("page " in artifacts for artifacts in file.artifacts)
    assert "page 1 of 2" not in file.whole.text


def test_a_head_that_stands_again_on_the_next_page_is_heard_once():
    rows = "".join(f'<tr class="note-row"><td class="mark-words"><p>{n}</p></td></tr>' for n in range(60))
    head = '<thead><tr class="note-head-row"><th class="mark-words"><p>Number</p></th></tr></thead>'
    file = TaggedFile(BytesIO(print_body(f"<table>{head}{rows}</table>")))
    assert len(file.pdf.pages) > 1
    assert "Number" in file.artifacts[1]
    (table,) = file.whole.all("Table")
    assert [row[0].text for row in rows_of(table)] == ["Number", *map(str, range(60))]


def test_tables_that_follow_each_other_stay_two():
    table = '<table><tr class="note-row"><td class="mark-words"><p>{}</p></td></tr></table>'
    tables = body(table.format("one") + table.format("two")).all("Table")
    assert [one.text for one in tables] == ["one", "two"]


def test_every_mark_of_a_page_is_found_from_the_page_and_from_the_tree(core):
    """ISO 32000-1:2008, 14.7.4.4: the parent tree has the element of each mark of a page."""
    with pikepdf.open(core.key) as file:
        parents = file.Root.StructTreeRoot.ParentTree.Nums
        for number, page in enumerate(file.pages):
            assert (int(page.StructParents), str(page.Tabs)) == (number, "/S")
            elements = parents[2 * number + 1]
            for mark, element in enumerate(elements):
                kids = element.K if isinstance(element.K, pikepdf.Array) else [element.K]
                assert mark in map(int, kids)
            assert {element.Pg.objgen for element in elements} == {page.objgen}


def test_no_mark_of_a_page_stands_inside_another(core):
    """Some readers lose what comes after an inner one."""
    with pikepdf.open(core.key) as file:
        for page in file.pages:
            depth = 0
            for _, operator in pikepdf.parse_content_stream(page):
                depth += {"BDC": 1, "BMC": 1, "EMC": -1}.get(str(operator), 0)
                assert depth in (0, 1)
