"""What is changed of a lesson's practice stands in its file at once, with all else as it was."""

import pytest

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


def test_a_page_of_a_lesson_changed_since_does_not_write_over_it(change, opened, seed_trays):
    digest = opened().digest
    seed_trays.write_text(opened().text + "# by hand\n")
    answer = change("add", product="1/2 × 3/5", digest=digest)
    assert answer.status_code == 409
    assert seed_trays.read_text().endswith("# by hand\n")
    assert "1/2 × 3/5" not in seed_trays.read_text()
