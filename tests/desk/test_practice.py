"""What is changed of a lesson's practice stands in its file at once, with all else as it was."""

import re

import pytest
from werkzeug.datastructures import MultiDict

from foldmath.desk.practice.own_words import NOWHERE
from foldmath.desk.practice.refusing import refused
from foldmath.desk.visits.refusals import Refusal
from foldmath.errors import LessonRefused, Problem
from foldmath.lesson.proving import prove
from foldmath.practice.choosing import choose
from foldmath.statements.items import Level

PLACE = "/lesson/seed-trays/practice"


def asks(opened, level=Level.CORE):
    return [item.asks for item in choose(prove(opened().read()), level)]


def test_a_product_of_her_own_is_added_and_taken_out(change, opened):
    before = opened().text
    assert change("add", product="1/2 × 3/5").status_code == 303
    assert 'practice = ["2/3 × 4/5", "3/4 × 1/2", "1/2 × 3/5"]' in opened().text
    assert change("take out", product="1/2 × 3/5").status_code == 303
    assert opened().text == before


def test_another_item_comes_for_one_and_all_others_stay(change, opened):
    before = asks(opened)
    assert change("another", asks=before[3]).status_code == 303
    after = asks(opened)
    assert before[3] not in after
    assert len(after) == len(before)
    assert len(set(after) & set(before)) == len(before) - 1


def test_an_exchanged_item_does_not_come_back_when_its_successor_is_exchanged(change, opened):
    first = asks(opened)
    change("another", asks=first[3])
    second = asks(opened)
    (new,) = set(second) - set(first)
    change("another", asks=new)
    assert {first[3], new}.isdisjoint(asks(opened))


def test_a_level_without_the_exchanged_item_keeps_its_page(change, opened):
    before = asks(opened, Level.GUIDED)
    change("another", asks=asks(opened)[3])
    assert asks(opened, Level.GUIDED) == before


def test_other_numbers_keep_the_products_of_the_lesson(change, opened):
    before = asks(opened)
    change("other numbers")
    after = asks(opened)
    assert after[:2] == before[:2]
    assert after[2:] != before[2:]


def test_how_many_and_which_kinds_are_rules_of_the_lesson(change, opened):
    change("rules", count="4", kinds=["shade", "story"])
    rules = opened().read().rules
    assert (rules.count, [kind.value for kind in rules.kinds]) == (4, ["shade", "story"])
    change("rules", count="")
    assert opened().read().rules.count is None


@pytest.mark.parametrize("level", Level)
def test_a_kept_item_stays_when_all_numbers_are_others_and_is_let_go_again(change, opened, level):
    kept = asks(opened, level)[-1]
    change("keep", asks=kept, level=level.value)
    for _ in range(3):
        change("other numbers")
        assert kept in asks(opened, level)
    change("let go", asks=kept, level=level.value)
    assert opened().read().rules.keep == ()


def test_denominators_are_a_rule_of_the_lesson(change, opened):
    change("rules", denominators=["2", "3", "4"])
    assert opened().read().rules.denominators == (2, 3, 4)


ABOUT = {"title": "Bean rows", "grade": "4", "paper": "A4", "orientation": "portrait", "language": "es"}


def test_title_class_paper_and_language_are_changed_and_the_comments_stay(change, opened):
    comments = [line.partition("#")[2] for line in opened().text.splitlines() if "#" in line]
    assert change("about", **ABOUT, standards="none", notes="One.\nTwo.").status_code == 303
    lesson = opened().read()
    told = (lesson.title, lesson.grade, lesson.paper, lesson.orientation, lesson.language, lesson.notes)
    assert told == ("Bean rows", 4, "A4", "portrait", "es", ("One.", "Two."))
    assert [line.partition("#")[2] for line in opened().text.splitlines() if "#" in line] == comments


def test_what_is_told_of_a_lesson_as_it_is_leaves_the_file_as_it_is(change, opened):
    before, lesson = opened().text, opened().read()
    same = {"title": lesson.title, "grade": "5", "paper": "letter", "orientation": "landscape"}
    change("about", **same, language="en-US", standards="", notes="\n".join(lesson.notes))
    assert opened().text == before


def test_items_stand_there_as_they_print_with_answers_only_when_they_are_asked_for(visitor, opened):
    assert opened()
    pages = [visitor.get(f"{PLACE}{query}").text for query in ("", "?answers=1")]
    assert all("A paper maker paints" in page and '<svg class="picture"' in page for page in pages)
    assert ["<output>4</output><output>18</output>" in page for page in pages] == [False, True]


def test_words_are_taught_with_their_home_words(change, opened):
    change("words", words="panel: Feld\ncrease\n")
    lesson = opened().read()
    assert (lesson.vocabulary, lesson.words) == (("panel", "crease"), {"panel": "Feld"})


def test_the_comments_of_the_file_stay(change, opened):
    comments = [line for line in opened().text.splitlines() if "#" in line]
    change("rules", count="5")
    change("add", product="1/2 × 3/5")
    change("words", words="panel")
    assert [line for line in opened().text.splitlines() if "#" in line] == comments


@pytest.mark.parametrize(
    ("name", "values"),
    [("add", {"product": "apples"}), ("rules", {"count": "99"}), ("rules", {"kinds": "none"}), ("burn", {})],
)
def test_what_no_lesson_can_have_is_refused_and_the_file_stays(change, opened, name, values):
    before = opened().text
    assert change(name, **values).status_code == 422
    assert opened().text == before


TELLS = {
    "about": {**ABOUT, "notes": "One.\nTwo.", "standards": "england"},
    "rules": {"count": "5", "kinds": ["shade", "story"], "denominators": ["3", "4"]},
    "words": {"words": "panel: Feld\ncrease", "home_language": "de"},
}
"""What each form says, all of it other than it was."""


def form_of(page, change):
    """Give what the form of a change holds, and which of its fields says what is wrong."""
    (form,) = (
        part.partition("</form>")[0]
        for part in page.split("<form ")[1:]
        if f'name="change" value="{change}"' in part.partition("</form>")[0]
    )
    chosen = re.findall(r'<option value="([^"]*)"[^>]* selected', form)
    checked = re.findall(r'value="([^"]*)" checked', form)
    areas = [area.strip() for area in re.findall(r"<textarea[^>]*>([^<]*)<", form)]
    typed = re.findall(r'<input name="\w+"[^>]* value="([^"]*)"', form)
    slips = re.findall(r'<p class="slip" id="slip-\w+-(\w+)">([^<]*)', form)
    return typed + chosen + checked + areas, slips


@pytest.mark.parametrize(
    ("name", "wrong", "field", "says"),
    [
        ("about", {"title": ""}, "title", "at most 80 characters"),
        ("about", {"title": "x" * 81}, "title", "at most 80 characters"),
        ("about", {"title": "\ue000"}, "title", "the pages cannot print these words"),
        ("about", {"notes": "a\n" * 41}, "notes", "at most 40 notes, each of at most 600 characters"),
        ("about", {"notes": "a\n" + "b" * 601}, "notes", "at most 40 notes, each of at most 600"),
        ("about", {"paper": "vellum"}, "paper", "there is no paper called"),
        ("rules", {"count": "99"}, "count", "a whole number from 1 to 24"),
        ("rules", {"denominators": ["3", "99"]}, "denominators", "a denominator here must be"),
        ("words", {"words": "a\n" * 2 + "w" * 81}, "words", "at most 40 words, each of at most 80"),
        ("words", {"words": "panel: " + "F" * 81}, "words", "at most 40 words, each of at most 80"),
        ("words", {"home_language": "two words"}, "home_language", "the short name of one language"),
    ],
)
def test_what_a_form_says_stands_there_again_where_a_field_of_it_is_refused(
    change, opened, name, wrong, field, says
):
    """It is refused beside that field, in words that know of no quotes, no key and no list."""
    before, told = opened().text, TELLS[name] | wrong
    answer = change(name, **told)
    assert (answer.status_code, opened().text) == (422, before)
    held, slips = form_of(answer.text, name)
    assert [(where, says in what) for where, what in slips] == [(field, True)]
    wanted = [one for value in told.values() for one in ([value] if isinstance(value, str) else value)]
    # There is no such choice in a page to stand there again.
    assert set(map(str.strip, wanted)) - set(held) <= {"vellum", "99", ""}
    assert "quotes" not in slips[0][1]


def test_steps_that_another_paper_does_not_allow_are_told_beside_the_paper(opened):
    line = next(n for n, told in enumerate(opened().text.splitlines(), 1) if told.startswith("steps"))
    here = Problem(file="trays.toml", message="no paper moves", hint="fold it back", line=line, column=10)
    form = MultiDict({"change": "about", **ABOUT})
    told = refused(form, opened().text, NOWHERE, LessonRefused([here]))
    assert told.slips == {"paper": Refusal("no paper moves", "fold it back")}


@pytest.mark.parametrize("name", TELLS)
def test_what_a_form_says_stands_there_again_where_the_file_was_changed_and_is_saved_the_second_time(
    change, opened, seed_trays, name
):
    seen = opened().digest
    seed_trays.write_text(opened().text + "# by hand\n")
    answer = change(name, **TELLS[name], digest=seen)
    assert answer.status_code == 409
    held, slips = form_of(answer.text, name)
    assert "changed in another window" in slips[0][1]
    assert f'value="{opened().digest}"' in answer.text
    wanted = [one for value in TELLS[name].values() for one in ([value] if isinstance(value, str) else value)]
    assert set(wanted) <= set(held)
    assert change(name, **TELLS[name]).status_code == 303
    assert "# by hand" in opened().text


def test_an_item_that_may_have_another_place_by_now_is_not_rewritten_but_shown(change, opened, seed_trays):
    hers = {"text": "1/3?", "sum": "1/3 × 1/2", "unit": "m", "levels": ["core"]}
    change("write", **hers)
    seen = opened().digest
    seed_trays.write_text(opened().text + "# by hand\n")
    answer = change("rewrite", **{**hers, "text": "2/3?", "unit": "of it"}, place="0", digest=seen)
    assert answer.status_code == 409
    assert all(f">\n{words}</textarea>" in answer.text for words in ("2/3?", "1/3 × 1/2", "of it"))


def test_a_page_of_a_lesson_changed_since_does_not_write_over_it(change, opened, seed_trays):
    digest = opened().digest
    seed_trays.write_text(opened().text + "# by hand\n")
    answer = change("add", product="1/2 × 3/5", digest=digest)
    assert answer.status_code == 409
    assert seed_trays.read_text().endswith("# by hand\n")
    assert "1/2 × 3/5" not in seed_trays.read_text()
