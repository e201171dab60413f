"""The few tags of the templates become blocks; a tag without a place in print is refused."""

import pytest

from foldmath.pages.markup.blocks import (
    Box,
    CellRole,
    LineBreak,
    NewPage,
    Paragraph,
    Picture,
    Row,
    RowRole,
    Stack,
    Text,
    Together,
    WritingLines,
)
from foldmath.pages.markup.reading import UnknownTag, blocks_of


def blocks(body):
    return blocks_of(f"<html><head><title>t</title></head><body>{body}</body></html>")


def runs(words):
    (paragraph,) = blocks(f"<p>{words}</p>")
    return paragraph.runs


def test_a_paragraph_is_styled_by_its_class_or_by_its_tag():
    assert blocks("<h1>One</h1><p>Two</p><p class='lead'>Three</p>") == (
        Paragraph("h1", (Text("One"),), level=1),
        Paragraph("p", (Text("Two"),)),
        Paragraph("lead", (Text("Three"),)),
    )


def test_bold_words_and_ends_of_line_stay_in_their_order():
    assert runs("Fold <b>once</b>.<br/>Open.") == (
        Text("Fold "),
        Text("once", bold=True),
        Text("."),
        LineBreak(),
        Text("Open."),
    )


def test_a_fraction_in_mathml_is_stacked_and_a_mixed_number_keeps_its_whole_before_it():
    assert runs("<math><mfrac><mn>2</mn><mn>3</mn></mfrac></math>") == (Stack((Text("2"),), (Text("3"),)),)
    assert runs("<math><mn>1</mn><mfrac><mn>1</mn><mn>5</mn></mfrac></math>") == (
        Text("1"),
        Stack((Text("1"),), (Text("5"),)),
    )


def test_words_in_another_language_keep_its_name_and_those_round_them_have_none():
    assert runs('say <span lang="uk">лист <b>цілий</b></span> now') == (
        Text("say "),
        Text("лист ", language="uk"),
        Text("цілий", bold=True, language="uk"),
        Text(" now"),
    )


def test_an_output_is_a_box_with_its_answer():
    assert runs('<output>8</output> <output class="predict">4</output>') == (
        Box("output", "8"),
        Text(" "),
        Box("predict", "4"),
    )


def test_a_fraction_to_be_written_has_a_box_above_and_a_box_below():
    assert runs('<span class="fraction"><output>8</output><output>15</output></span>') == (
        Stack((Box("part", "8"),), (Box("part", "15"),)),
    )


def test_a_part_of_a_fraction_may_hold_several_boxes_and_a_sign():
    pair = "<span><output>2</output> × <output>4</output></span><output>15</output>"
    assert runs(f'<span class="fraction">{pair}</span>') == (
        Stack((Box("part", "2"), Text(" × "), Box("part", "4")), (Box("part", "15"),)),
    )


def test_blocks_nest_in_pages_rows_and_groups():
    (page, together, row) = blocks(
        '<section><div><h2>A</h2><p>B</p></div><table><tr class="note-row"><td class="model">C</td>'
        '<td class="question"><p>D</p><p>E</p></td></tr></table></section>'
    )
    assert page == NewPage(soft=False)
    assert together == Together("div", (Paragraph("h2", (Text("A"),), level=2), Paragraph("p", (Text("B"),))))
    assert isinstance(row, Row)
    assert row.style == "note-row"
    assert [cell.style for cell in row.cells] == ["model", "question"]
    assert row.cells[0].blocks == (Paragraph("model", (Text("C"),)),)
    assert [block.runs for block in row.cells[1].blocks] == [(Text("D"),), (Text("E"),)]


def roles(table):
    return [(row.role, [cell.role for cell in row.cells]) for row in blocks(table)]


def test_a_table_is_one_to_those_who_hear_it_unless_it_says_what_else_it_is():
    rows = "<tr><td>A</td><td>B</td></tr><tr><td>C</td><td>D</td></tr>"
    cells, none = [CellRole.CELL] * 2, [CellRole.NONE] * 2
    assert roles(f"<table>{rows}</table>") == [(RowRole.FIRST_OF_TABLE, cells), (RowRole.OF_TABLE, cells)]
    assert roles(f'<table role="presentation">{rows}</table>') == [(RowRole.LAYOUT, none)] * 2
    item = [CellRole.LABEL, CellRole.BODY]
    assert roles(f'<table role="list">{rows}</table>') == [(RowRole.OF_LIST, item)] * 2


def test_heads_of_columns_and_rows_say_which_they_head():
    head = '<tr role="presentation"><td>L</td></tr><tr><td></td><th>A</th></tr>'
    assert roles(f'<table><thead>{head}</thead><tr><th scope="row">1</th><td>B</td></tr></table>') == [
        (RowRole.LAYOUT, [CellRole.NONE]),
        (RowRole.FIRST_OF_TABLE, [CellRole.CELL, CellRole.COLUMN_HEADER]),
        (RowRole.OF_TABLE, [CellRole.ROW_HEADER, CellRole.CELL]),
    ]


def test_a_block_may_take_the_place_of_a_cell_and_a_cell_may_be_for_the_eye_alone():
    (row,) = blocks(
        '<table><tr><td role="presentation"><p role="rowheader">A</p>'
        '<div role="cell"></div></td></tr></table>'
    )
    assert [cell.role for cell in row.cells] == [CellRole.NONE]
    assert [block.role for block in row.cells[0].blocks] == [CellRole.ROW_HEADER, CellRole.CELL]


def test_a_soft_page_says_so():
    assert blocks('<section class="soft"></section>') == (NewPage(soft=True),)


def test_a_picture_has_another_one_where_answers_show_or_stays_as_it_is():
    one, other = blocks('<img data-picture="a" data-answer="b" alt="A sheet"/><img data-picture="c" alt=""/>')
    assert one == Picture("img", "a", "b", "A sheet")
    assert (other.name, other.answer_name) == ("c", "c")


def test_lines_to_write_on_keep_the_answer_that_would_do():
    assert blocks('<output class="lines" data-lines="2">the sheet</output>') == (
        WritingLines(2, (Text("the sheet"),)),
    )


def test_signs_that_html_escapes_are_read_as_themselves():
    assert runs("1 &lt; 2 &amp; 3&#160;&gt;&#160;2") == (Text("1 < 2 & 3\u00a0>\u00a02"),)


@pytest.mark.parametrize(
    "body",
    [
        "<ul><li>A</li></ul>",
        "<p>A <i>B</i></p>",
        "<p><script>x</script></p>",
        "<p>A",
        "<p>A</div>",
        "<p><b>A</p></b>",
    ],
)
def test_a_tag_without_a_place_in_print_or_closed_out_of_turn_is_refused(body):
    with pytest.raises(UnknownTag):
        blocks(body)


def test_the_head_of_a_table_goes_with_every_row():
    head, row, last = blocks(
        '<table><thead><tr class="fold-head"><td class="picture">Before</td></tr></thead>'
        '<tr class="fold-row"><td>1</td></tr><tr class="fold-row"><td>2</td></tr></table>'
    )
    assert (head.style, head.heads) == ("fold-head", ())
    assert row.heads == last.heads == (head,)
