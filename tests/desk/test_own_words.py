"""A teacher's own items and names at the desk: written, changed, taken out; refused beside the field."""

import re

import pytest

from foldmath.lesson.proving import prove
from foldmath.practice.choosing import choose
from foldmath.statements.items import ItemKind, Level

PLACE = "/lesson/seed-trays/practice"
ALL = ["guided", "core", "stretch"]
BED = {"text": "A bed is 3/4 planted.  How much is 1/2 of that?", "sum": "1/2 × 3/4", "unit": "of the bed"}


def comments(text):
    return [line.partition("#")[2] for line in text.splitlines() if "#" in line]


def test_an_item_is_written_at_the_end_of_the_file_and_taken_out_again(change, opened):
    before = opened().text
    assert change("write", **BED, levels=ALL).status_code == 303
    written = (
        'text = "A bed is 3/4 planted. How much is 1/2 of that?"\nsum = "1/2 × 3/4"\nunit = "of the bed"\n'
    )
    assert opened().text == f"{before}\n[[items]]\n{written}"
    assert change("write", text="6 trays?", sum="6 × 1/2", unit="", levels=["core"]).status_code == 303
    assert opened().text.endswith('\n[[items]]\ntext = "6 trays?"\nsum = "6 × 1/2"\nlevels = ["core"]\n')
    for _ in range(2):
        assert change("take out own", place="0").status_code == 303
    assert opened().text == before


def test_an_item_is_changed_where_it_stands_and_what_is_usual_is_left_unsaid(change, opened, seed_trays):
    seed_trays.write_text(
        opened().text
        + '[[items]]  # ours\ntext = "½ of 3/4?" # short\nsum = "1/2 × 3/4"\nlevels = ["core"]\n'
    )
    said = comments(opened().text)
    change("rewrite", place="0", text="½ of 3/4?", sum="1/3 × 3/4", unit="m", levels=ALL)
    assert comments(opened().text) == said
    assert opened().text.endswith('text = "½ of 3/4?" # short\nsum = "1/3 × 3/4"\nunit = "m"\n')


def test_items_in_braces_stay_in_braces(change, opened, seed_trays):
    text = opened().text.partition("# The same words")[0]
    seed_trays.write_text(text + 'items = [{ text = "1/2?", sum = "1/2 × 3/4" }] # mine\n')
    change("write", text="1/3?", sum="1/3 × 1/2", unit="", levels=ALL)
    assert [str(one.item.sum) for one in opened().read().items] == ["1/2 × 3/4", "1/3 × 1/2"]
    assert opened().text.endswith('sum = "1/3 × 1/2"}] # mine\n')


def test_what_comes_after_is_written_before_her_items(change, opened):
    change("write", **BED, levels=ALL)
    change("names", names="Ines\nนารี\n\n Olu ")
    change("other numbers")
    lesson = opened().read()
    assert lesson.names == ("Ines", "นารี", "Olu")
    assert lesson.rules.seed == 1
    assert len(lesson.items) == 1
    change("names", names="")
    assert "names" not in opened().table


@pytest.mark.parametrize(
    ("values", "field", "says"),
    [
        ({"text": ""}, "text", "your own words"),
        ({"text": "1/2 " * 101}, "text", "400 characters"),
        ({"text": "1/2 \x07?"}, "text", "cannot be printed"),
        ({"text": "1/2 \ue000?"}, "text", "cannot print these words"),
        ({"sum": "1/2 times 3/4"}, "sum", "not arithmetic"),
        ({"sum": "1/2 × 3/4 = 3/8"}, "sum", "no answer in it"),
        ({"sum": ""}, "sum", "the sum behind the words"),
        ({"unit": "m" * 41}, "unit", "40 characters"),
        ({"levels": []}, "levels", "one level at least"),
        ({"levels": ["hard"]}, "levels", "one level at least"),
    ],
)
@pytest.mark.parametrize("name", ["write", "rewrite"])
def test_what_no_item_can_have_is_refused_beside_its_field_and_what_was_typed_stays(
    change, opened, name, values, field, says
):
    change("write", text="1/3?", sum="1/3 × 1/2", unit="", levels=ALL)
    before = opened().text
    answer = change(
        name, **({**BED, "levels": ALL} | values), **({"place": "0"} if name == "rewrite" else {})
    )
    assert answer.status_code == 422
    assert opened().text == before
    told = re.findall(r'<p class="slip" id="slip-item\d+-(\w+)">([^<]*)', answer.text)
    assert [(where, says in what) for where, what in told] == [(field, True)]
    marked = re.search(r'<(?:textarea|input|fieldset)[^>]*aria-invalid="true"[^>]*>', answer.text)[0]
    assert f"-{field}" in marked
    assert "autofocus" in marked
    if field != "sum":
        assert f'value="{BED["sum"]}"' in answer.text


@pytest.mark.parametrize(
    ("name", "values"),
    [
        ("add", {"product": "apples & <b>"}),
        ("names", {"names": "x" * 41}),
        ("names", {"names": "Ines\n\ue000"}),
    ],
)
def test_products_and_names_are_refused_beside_their_fields_too(change, opened, name, values):
    before = opened().text
    answer = change(name, **values)
    assert answer.status_code == 422
    assert opened().text == before
    assert len(re.findall('<p class="slip"', answer.text)) == 1
    assert "<b>&" not in answer.text
    assert 'apples &amp; &lt;b&gt;"' in answer.text or name == "names"


def test_the_thirteenth_item_is_refused(change, opened):
    for number in range(2, 14):
        assert (
            change("write", text=f"{number} trays?", sum=f"{number} × 1/2", levels=["core"]).status_code
            == 303
        )
    answer = change("write", text="14 trays?", sum="14 × 1/2", levels=["core"])
    assert answer.status_code == 422
    assert "at most 12 items in your own words" in answer.text


@pytest.mark.parametrize("place", ["1", "-1", "-2", "99999999999999999999", "x", ""])
@pytest.mark.parametrize("name", ["rewrite", "take out own"])
def test_what_is_not_there_is_not_changed(change, opened, name, place):
    change("write", **BED, levels=ALL)
    before = opened().text
    assert change(name, **BED, levels=ALL, place=place).status_code == 422
    assert opened().text == before


def test_a_story_becomes_hers_with_its_words_its_sum_and_its_unit(visitor, change, opened):
    items = choose(prove(opened().read()), Level.CORE)
    (story,) = (item for item in items if item.kind is ItemKind.STORY)
    page = visitor.get(PLACE, query_string={"mine": story.asks}).text
    own = page[page.index('<details id="own" open>') :]
    text = re.search(r'<textarea name="text"[^>]*>([^<]*)', own)[1]
    asked = re.search(r'<input name="sum"[^>]* value="([^"]*)"', own)[1]
    unit = re.search(r'<input name="unit"[^>]* value="([^"]*)"', own)[1]
    assert change("write", text=text, sum=asked, unit=unit, levels=ALL).status_code == 303
    (written,) = opened().read().items
    assert written.item.answer == story.answer
    assert not written.item.strange
    assert story not in choose(prove(opened().read()), Level.CORE)


def test_the_page_says_what_may_be_wrong_with_her_items(visitor, change):
    change("write", text="How much?", sum="1/2 × 3/4", levels=ALL)
    assert "no number of 1/2 × 3/4 stands in the words" in visitor.get(PLACE).text
