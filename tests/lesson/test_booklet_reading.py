"""A booklet is read as it is written, folded on the lesson's own sheet, and never too full."""

import re
import subprocess
import sys
from datetime import date
from pathlib import Path

import lessons_in_words
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from readability import common_words, long_sentences, uncommon_words

from foldmath.errors import LessonRefused, Problem
from foldmath.lesson.booklet.contents import KEYS as CONTENTS
from foldmath.lesson.booklet.forms import all_forms, folded_booklet, form_of
from foldmath.lesson.booklet.own_words import own_words
from foldmath.lesson.booklet.plan import (
    About,
    BookletPlan,
    CreasesPicture,
    FoldPicture,
    Frame,
    Game,
    GamePage,
    Heading,
    Lines,
    ModelPicture,
    NumberLine,
    PlannedPage,
    Prompt,
    RecordFold,
    RecordProduct,
    SheetPicture,
    Story,
    Table,
    Title,
)
from foldmath.lesson.booklet.race import Race
from foldmath.lesson.booklet.reading import on_sheet
from foldmath.lesson.lesson import Lesson
from foldmath.lesson.proving import prove
from foldmath.lesson.reading import lesson_in, read_lesson
from foldmath.paper.booklet.booklet import Booklet, Face, Form
from foldmath.paper.booklet.gathering import booklet
from foldmath.paper.lengths import Length
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import StepRefused
from foldmath.paper.sizes import all_papers, sheet
from foldmath.paper.state import Sheet, open_sheet
from foldmath.paper.steps import Axis, Gather
from foldmath.phrases import Phrase, Said, phrase
from foldmath.plane.numbers import ONE, exact
from foldmath.words.authored import table
from foldmath.words.page_texts import page_text
from foldmath.words.saying import say

EMPTY = (("", ""),)
LESSONS = Path(__file__).parents[2] / "lessons"
PAGE_SETS = ("fraction-diary", "part-of-a-part", "plank-marks", "tile-race")
EIGHTHS = (
    '["fold left edge to right edge", "fold top edge to bottom edge", "fold left edge to right edge", "open"]'
)


def text_of(booklet: str, steps: str = EIGHTHS, grade: int = 5, paper: str = '"letter"') -> str:
    return f'title = "Seed trays"\ngrade = {grade}\npaper = {paper}\nsteps = {steps}\n[booklet]\n{booklet}\n'


def read(booklet: str, **changed) -> Lesson:
    return lesson_in(text_of(booklet, **changed), "seed-trays.toml")


def planned(booklet: str, **changed) -> BookletPlan:
    plan = read(booklet, **changed).booklet
    assert plan is not None
    return plan


def page(keys: str, **changed) -> PlannedPage:
    (only,) = planned(f'form = "eight-page"\n[[booklet.pages]]\n{keys}', **changed).pages
    return only


def problems(booklet: str, **changed) -> list[Problem]:
    with pytest.raises(LessonRefused) as caught:
        read(booklet, **changed)
    return caught.value.problems


def written(folder: Path, name: str, pages: str) -> Path:
    path = folder / f"{name}.toml"
    path.write_text(text_of(f'form = "eight-page"\n{pages}'), encoding="utf-8")
    return path


# Pages.


def test_a_lesson_without_a_booklet_has_none():
    assert read_lesson(LESSONS / "seed-trays.toml").booklet is None


def test_a_lesson_without_a_booklet_loads_nothing_that_reads_booklets():
    asked = (
        "import sys; from foldmath.lesson.reading import read_lesson; "
        f"read_lesson({str(LESSONS / 'seed-trays.toml')!r}); "
        "print([name for name in sys.modules if name.startswith('foldmath.lesson.booklet')])"
    )
    told = subprocess.run([sys.executable, "-c", asked], capture_output=True, text=True, check=True)
    assert told.stdout == "[]\n"


def test_contents_stand_on_a_page_in_the_order_in_which_their_keys_are_written():
    keys = ['title = "a"', 'frame = ""', "lines = 3", 'heading = "b"', 'prompt = "c"', 'game = "board"']
    kinds = [type(content) for content in page("\n".join(keys)).contents]
    assert kinds == [Title, Frame, Lines, Heading, Prompt, Game]
    assert [type(content) for content in page("\n".join(keys[::-1])).contents] == kinds[::-1]


def test_every_key_gives_its_content():
    assert page('heading = " Two  words "').contents == (Heading("Two words"),)
    assert page('lines = "fill"').contents == (Lines(None),)
    assert page('frame = ["", "Draw it."]').contents == (Frame(), Frame("Draw it."))
    assert page('record = ["step 2", "Step 2 count"]').contents == (
        RecordFold(1),
        RecordFold(1, About.COUNT),
    )
    assert page('picture = "step 3"').contents == (FoldPicture(2),)
    assert page('picture = "creases"').contents == (CreasesPicture(),)
    assert page('picture = "Sheet"').contents == (SheetPicture(),)
    assert page('game = "board"').contents == (Game(GamePage.BOARD, Race(4, 2)),)
    (model, product) = page('picture = "1/2 of 1/3"\nrecord = "3 x 2/5"').contents
    assert isinstance(model, ModelPicture)
    assert model.product.value == exact(1, 6)
    assert isinstance(product, RecordProduct)
    assert (product.text, product.product.value) == ("3 × 2/5", exact(6, 5))


def test_an_empty_table_is_a_blank_page_and_knows_where_it_stands():
    plan = planned('form = "eight-page"\n[[booklet.pages]]\n[[booklet.pages]]\ntitle = "a"')
    assert plan.pages == (PlannedPage((), 7, 3), PlannedPage((Title("a"),), 8, 3))
    assert planned('form = "eight-page"\npages = [{}]').pages == (PlannedPage((), 7, 10),)


def test_lines_written_next_after_a_list_of_prompts_stand_below_each():
    two = Lines(2)
    assert page('prompt = ["a", "b"]\nlines = 2').contents == (Prompt("a"), two, Prompt("b"), two)
    assert page('prompt = "a"\nlines = 2').contents == (Prompt("a"), two)
    assert page('lines = 2\nprompt = ["a", "b"]').contents == (two, Prompt("a"), Prompt("b"))
    assert page('prompt = ["a", "b"]\nframe = ""\nlines = 2').contents[2:] == (Frame(), two)


def test_answers_go_on_the_lines_below_their_prompts():
    two = (Prompt("a"), Lines(2, "b"), Prompt("c"), Lines(2))
    assert page('prompt = ["a", "c"]\nlines = 2\nanswers = ["b", ""]').contents == two
    assert page('answers = ["b", ""]\nprompt = ["a", "c"]\nlines = 2').contents == two
    assert page('prompt = "a"\nanswers = "b"\nlines = "fill"').contents == (Prompt("a"), Lines(None, "b"))


def test_what_the_folds_tell_is_filled_into_texts():
    """After the last step there are 8 panels of 1/8; on the page of fold 2, 4 of 1/4."""
    told = 'prompt = "{panels} panels"\nanswers = "{panel}"\nlines = 1'
    assert page(told).contents == (
        Prompt(phrase("{panels} panels", panels="8")),
        Lines(1, phrase("{panel}", panel="1/8")),
    )
    pages = planned(f'form = "eight-page"\n[[booklet.pages]]\neach = "fold"\n{told}').pages
    assert pages[1].contents == (
        Prompt(phrase("{panels} panels", panels="4")),
        Lines(1, phrase("{panel}", panel="1/4")),
    )


# Number lines, stories, the game.


def line_of(value: str, **changed) -> NumberLine:
    (only,) = page(f"number_line = {value!r}", **changed).contents
    assert isinstance(only, NumberLine)
    return only


def test_a_number_line_has_the_creases_that_stand_upright_on_its_edge():
    """Left to right, top to bottom, left to right: three creases on the width, and one on the height."""
    quarters = (exact(1, 4), exact(1, 2), exact(3, 4))
    assert line_of("width") == NumberLine(Axis.WIDTH, quarters)
    assert line_of("height") == NumberLine(Axis.HEIGHT, (exact(1, 2),))
    assert line_of("step 1") == NumberLine(Axis.WIDTH, (exact(1, 2),))
    assert line_of("step 2") == NumberLine(Axis.HEIGHT, (exact(1, 2),))
    assert line_of("step 3") == NumberLine(Axis.WIDTH, quarters)


def test_a_cut_is_no_crease_of_a_number_line():
    steps = (
        '["fold top edge to bottom edge", "fold left edge to right edge", "fold left edge to right edge", '
        '"open", "fold left edge to right edge", "slit at height 1/2 from left edge to 1/2", "open"]'
    )
    assert line_of("height", steps=steps) == NumberLine(Axis.HEIGHT, (exact(1, 2),))


def test_creases_are_named_in_counted_parts_where_all_are_equal_and_in_lowest_terms_else():
    def names(*creases):
        return [str(name) for name in NumberLine(Axis.WIDTH, tuple(exact(*one) for one in creases)).names]

    assert names((1, 4), (1, 2), (3, 4)) == ["1/4", "2/4", "3/4"]
    assert names((1, 4), (1, 2)) == ["1/4", "1/2"]


def test_stories_of_a_lessons_products_differ_and_have_its_numbers():
    practice = 'practice = ["2/3 × 4/5", "1/2 × 3/4"]\n'
    pages = [f'[[booklet.pages]]\nstory = "product {number}"' for number in (1, 2)]
    told = text_of("\n".join(['form = "eight-page"', *pages]))
    plan = lesson_in(practice + told, "seed-trays.toml").booklet
    one, other = (content.item for page in plan.pages for content in page.contents)
    assert (str(one.answer), str(other.answer)) == ("8/15", "3/8")
    assert one.frame != other.frame


def test_a_grade_that_multiplies_by_whole_numbers_has_stories_of_portions():
    (story,) = page('story = "5 × 3/8"', grade=4).contents
    assert isinstance(story, Story)
    assert str(story.item.answer) == "1 7/8"


def test_the_game_is_played_on_every_sheet_of_equal_panels_in_columns_and_rows():
    fan = '["pleat width into 3", "open", "pleat height into 5", "open"]'
    assert page('game = "rules"', steps=fan).contents == (Game(GamePage.RULES, Race(3, 5)),)


def test_a_table_has_given_rows_or_empty_ones():
    assert page('table = { columns = ["a", "b"], rows = 2 }').contents == (
        Table(("a", "b"), EMPTY * 2, EMPTY * 2),
    )
    assert page('table = { columns = ["a", "b"], rows = [["c", ""]] }').contents == (
        Table(("a", "b"), (("c", ""),), EMPTY),
    )
    assert page('table = { columns = ["a", "b"], rows = 1, answers = [["", "{panels}"]] }').contents == (
        Table(("a", "b"), EMPTY, (("", phrase("{panels}", panels="8")),)),
    )


# Pages for each fold.


def fold_heading(number: int) -> Heading:
    return Heading(phrase("Fold {fold}", fold=str(number)))


def test_each_fold_that_makes_new_panels_has_a_page():
    steps = (
        '["fold at 1/2 moving left", "open", "fold at 1/2 moving left", "pleat height into 3", "turn over"]'
    )
    plan = planned(
        'form = "eight-page"\n[[booklet.pages]]\neach = "fold"\nheading = "Fold {fold}"\n'
        'picture = "fold"\nrecord = ["fold", "fold count"]',
        steps=steps,
    )
    assert [one.contents for one in plan.pages] == [
        (fold_heading(1), FoldPicture(0), RecordFold(0), RecordFold(0, About.COUNT)),
        (fold_heading(2), FoldPicture(3), RecordFold(3), RecordFold(3, About.COUNT)),
    ]
    assert {one.line for one in plan.pages} == {7}


def test_a_fold_along_a_crease_may_be_pictured_though_it_has_no_sentence():
    steps = '["fold at 1/2 moving left", "open", "fold at 1/2 moving left"]'
    assert page('picture = "step 3"', steps=steps).contents == (FoldPicture(2),)


def test_only_folds_have_pages_of_their_own():
    (problem,) = problems('form = "eight-page"\n[[booklet.pages]]\neach = "step"')
    assert (problem.line, problem.column, str(problem.hint)) == (8, 8, 'each = "fold"')


def test_a_lesson_that_folds_nothing_new_has_no_page_for_each_fold():
    (problem,) = problems('form = "eight-page"\n[[booklet.pages]]\neach = "fold"', steps='["turn over"]')
    assert (problem.line, problem.column) == (8, 8)
    assert "no fold of this lesson makes new panels" in str(problem.message)


def test_a_slip_on_a_page_for_each_fold_is_told_once():
    (problem,) = problems('form = "eight-page"\n[[booklet.pages]]\neach = "fold"\nlines = 0')
    assert (problem.line, problem.column) == (9, 9)


def test_pages_of_steps_that_cannot_be_read_or_done_are_not_blamed():
    keys = 'form = "eight-page"\n[[booklet.pages]]\neach = "fold"\nrecord = "step 9"'
    (problem,) = problems(keys, steps='["fold lef edge to right edge"]')
    assert problem.line == 4
    lesson = read(keys, steps='["fold left edge to 0"]')
    assert lesson.booklet is None
    with pytest.raises(LessonRefused):
        prove(lesson)


# Ruling.


@pytest.mark.parametrize(("grade", "above", "below"), [(3, 1, 2), (4, 3, 8), (5, 3, 8), (6, 3, 8)])
def test_lines_are_as_far_apart_as_the_grade_writes(grade, above, below):
    assert planned('form = "eight-page"\npages = [{}]', grade=grade).ruling == Length(
        exact(above, below), "in"
    )


def test_a_ruling_of_ones_own_keeps_its_unit():
    plan = planned('form = "eight-page"\nruling = "8 mm"\npages = [{}]')
    assert plan.ruling == Length(exact(8), "mm")


# Forms.

papers = st.one_of(
    st.builds(sheet, st.sampled_from(all_papers()), st.sampled_from(["landscape", "portrait"])),
    st.builds(lambda w, h: Sheet(exact(w, 4), exact(h, 7), "cm"), st.integers(40, 400), st.integers(70, 700)),
)
"""Every paper with a name, either way round, and odd ones, squares among them."""


@given(papers, st.sampled_from(sorted(all_forms())))
@settings(max_examples=40, deadline=None)
def test_every_form_folds_from_every_paper_with_its_number_of_equal_pages(paper, name):
    form = all_forms()[name]
    made = folded_booklet(form.steps_on(paper), paper)
    assert (len(made.pages), made.form, form_of(made)) == (form.pages, form.holds, name)
    faces = {(one.panel, one.face) for one in made.pages}
    sides = 2 if len({one.face for one in made.pages}) == 2 else 1
    assert len(faces) == form.pages
    assert made.width * made.height * form.pages == paper.area * sides
    assert made.warnings == ()


@given(st.sampled_from(all_papers()), st.sampled_from(sorted(all_forms())))
@settings(max_examples=20, deadline=None)
def test_a_page_is_the_same_whichever_way_the_paper_lies(size, name):
    steps = all_forms()[name]
    level, upright = (
        folded_booklet(steps.steps_on(paper), paper)
        for paper in (sheet(size, "landscape"), sheet(size, "portrait"))
    )
    assert (level.width, level.height) == (upright.width, upright.height)


@pytest.mark.parametrize("orientation", ["landscape", "portrait"])
@pytest.mark.parametrize("name", [name for name, form in all_forms().items() if form.holds is not Form.RING])
def test_a_folded_booklet_is_closed_with_its_title_page_outside(name, orientation):
    """Seen on the stack itself: the uppermost layer shows one side, the lowest the other.

    A ring round a slit is closed by going round it from its cover.
    """
    paper = sheet(all_papers()[0], orientation)
    state = open_sheet(paper)
    for written in all_forms()[name].steps_on(paper):
        if not isinstance(written.step, Gather):
            state = perform(written.step, state)
    stack = sorted(state.panels, key=lambda panel: panel.placements[-1].place)
    outside = set()
    for panel, above in ((stack[-1], True), (stack[0], False)):
        printed = panel.placements[-1].motion.upright is above
        outside.add((state.panels.index(panel), Face.PRINTED if printed else Face.BACK))
    made = booklet(state)
    cover = made.page(1)
    assert (cover.panel, cover.face) in outside
    assert made.cover_outside


@pytest.mark.parametrize("parts", [3, 4, 5, 6])
@pytest.mark.parametrize("side", ["width", "height"])
def test_a_fan_that_hides_its_cover_is_told_which_steps_bring_it_out(side, parts):
    steps = [f"pleat {side} into {parts}", "gather into booklet"]
    hidden = planned("pages = [{}]", steps=as_toml(steps)).booklet
    if side == "height" and parts % 2:
        assert (hidden.cover_outside, hidden.warnings) == (True, ())
        return
    told = "turn the sheet over" if parts % 2 == 0 else "turn the sheet right, turn the sheet right"
    assert not hidden.cover_outside
    assert [say(warning, "en-US") for warning in hidden.warnings] == [
        f"Closed like this, the title page lies inside. Before step 1: {told}."
    ]
    mended = planned("pages = [{}]", steps=as_toml([*told.split(", "), *steps])).booklet
    assert (mended.cover_outside, mended.warnings) == (True, ())


@pytest.mark.parametrize("orientation", ["landscape", "portrait"])
@pytest.mark.parametrize("paper", ['"letter"', '"A4"', '{ width = "10 in", height = "10 in" }'])
@pytest.mark.parametrize("name", all_forms())
def test_a_form_takes_as_many_pages_as_it_has_and_no_more(name, paper, orientation):
    if "{" not in paper:
        paper = f'{paper}\norientation = "{orientation}"'
    room = all_forms()[name].pages
    plan = planned(f'form = "{name}"\npages = [{", ".join(["{}"] * room)}]', paper=paper)
    assert len(plan.pages) == len(plan.booklet.pages) == room
    (problem,) = problems(f'form = "{name}"\npages = [{", ".join(["{}"] * (room + 2))}]', paper=paper)
    assert f"there are {room + 2} pages, and {room} fit" in str(problem.message)
    assert "leave out 2" in str(problem.hint)


def test_the_larger_form_that_is_offered_has_room():
    (problem,) = problems('form = "six-panel"\npages = [{}, {}, {}, {}, {}, {}, {}]')
    offered = re.search('form = "(.*)"', str(problem.hint))[1]
    assert planned(f'form = "{offered}"\npages = [{{}}, {{}}, {{}}, {{}}, {{}}, {{}}, {{}}]').form == offered


def test_steps_that_gather_a_booklet_are_those_of_the_booklet():
    steps = '["fold right edge to left edge", "gather into booklet", "open"]'
    for form in ('form = "four-page"', ""):
        plan = planned(f"{form}\npages = [{{}}]", steps=steps)
        assert plan.form == "four-page"
        assert [one.text for one in plan.steps] == ["fold right edge to left edge", "gather into booklet"]


def test_a_cover_in_another_column_gives_the_booklet_with_that_cover():
    gathered = [
        read_lesson(LESSONS / "fraction-diary.toml"),
        lesson_in(
            (LESSONS / "fraction-diary.toml")
            .read_text(encoding="utf-8")
            .replace("gather into booklet", "gather into booklet with cover at column 3"),
            "x.toml",
        ),
    ]
    assert len({lesson.booklet.booklet.page(1).panel for lesson in gathered}) == 2


def test_a_booklet_without_a_name_among_the_forms_is_named_by_its_pages():
    assert planned("pages = [{}]", steps='["pleat width into 5", "gather into booklet"]').form == "10-page"


def test_a_planned_booklet_can_be_folded_from_another_sheet():
    plan = planned('form = "eight-page"\npages = [{}]')
    moved = on_sheet(plan, Sheet(exact(17), exact(11), "in"))
    assert (moved.booklet.width, moved.booklet.height) == (exact(17, 4), exact(11, 2))
    assert (moved.pages, moved.ruling, moved.form) == (plan.pages, plan.ruling, plan.form)


def test_a_booklet_ends_where_its_steps_cannot_be_done():
    with pytest.raises(StepRefused):
        folded_booklet(
            lessons_in_words.written("fold left edge to 0", "gather into booklet"), Sheet(ONE, ONE, "in")
        )


# Slips.


def test_all_slips_of_a_booklet_are_told_at_once_in_the_order_of_the_file():
    found = problems(
        'form = "eigth-page"\nruling = "8"\n[[booklet.pages]]\nlines = 0\nheading = ""\n'
        '[[booklet.pages]]\nrecord = ["step 4", "step 9"]\n'
        '[booklet.pages.table]\ncolumns = ["a"]\nrows = [[], [1]]',
        grade=9,
    )
    assert [problem.line for problem in found] == [2, 6, 7, 9, 10, 12, 12, 15, 15]


def test_too_many_pages_are_told_of_with_the_other_slips():
    found = problems('form = "four-page"\npages = [{}, {}, {}, { lines = 0 }, {}]')
    assert [problem.column for problem in found] == [32, 37]


WORDS = [
    "",
    "fold",
    "step 1",
    "step 2",
    "1/2 of 1/3",
    "2/3 ×",
    "{fold}",
    "width",
    "product 1",
    "board",
    "eight-page",
    "fill",
    "0 in",
]
KEYS = ["form", "ruling", "pages", "each", "answers", "columns", "rows", *CONTENTS]

values = st.recursive(
    st.one_of(
        st.sampled_from(WORDS),
        st.integers(-2, 1_000_001),
        st.booleans(),
        st.floats(allow_nan=False, allow_infinity=False),
        st.dates(),
        st.text(max_size=5),
    ),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.sampled_from(KEYS), inner, max_size=4),
    max_leaves=12,
)
pages = st.lists(st.dictionaries(st.sampled_from(KEYS), values, max_size=4), max_size=5)
"""Anything that TOML can say, put together from what booklets are made of."""


def as_toml(value) -> str:
    if isinstance(value, dict):
        return f"{{ {', '.join(f'{key} = {as_toml(inner)}' for key, inner in value.items())} }}"
    if isinstance(value, list):
        return f"[{', '.join(map(as_toml, value))}]"
    if isinstance(value, str):
        return '"' + "".join(f"\\U{ord(sign):08x}" for sign in value) + '"'
    return value.isoformat() if isinstance(value, date) else str(value).lower()


@given(values, values, st.one_of(pages, values))
@settings(max_examples=60, deadline=None)
def test_whatever_a_booklet_says_it_is_planned_or_every_slip_in_it_has_a_place_and_a_remedy(
    form, ruling, pages
):
    told = {"form": form, "ruling": ruling, "pages": pages}
    text = text_of("\n".join(f"{key} = {as_toml(value)}" for key, value in told.items()))
    planned, refused = answered(text)
    assert (planned is None) == bool(refused)
    assert [problem for problem in refused if problem.line <= 5 or not problem.hint] == []


def answered(text: str) -> tuple[BookletPlan | None, list[Problem]]:
    """Give the booklet that a text plans, or what is said against it."""
    try:
        return lesson_in(text, "seed-trays.toml").booklet, []
    except LessonRefused as refused:
        return None, refused.problems


# Pages of another lesson.


def test_pages_may_be_taken_from_a_lesson_beside_this_one_or_through_it(tmp_path):
    written(tmp_path, "diary", '[[booklet.pages]]\neach = "fold"\nheading = "Fold {fold}"')
    written(tmp_path, "through", 'pages = "diary"')
    for name in ("diary", "diary.toml", "through"):
        plan = read_lesson(written(tmp_path, "taker", f'pages = "{name}"')).booklet
        assert [one.contents for one in plan.pages] == [(fold_heading(number),) for number in (1, 2, 3)]
        assert {(one.line, one.column) for one in plan.pages} == {(0, 0)}


def test_pages_of_the_lessons_that_come_with_the_program_are_found_from_any_folder(tmp_path):
    """A lesson beside this one comes before one of that name that comes with the program."""
    plan = read_lesson(written(tmp_path, "taker", 'pages = "tile-race"')).booklet
    assert plan.pages[0].contents == read_lesson(LESSONS / "tile-race.toml").booklet.pages[0].contents
    written(tmp_path, "tile-race", '[[booklet.pages]]\nheading = "Mine"')
    plan = read_lesson(written(tmp_path, "taker", 'pages = "tile-race"')).booklet
    assert plan.pages[0].contents == (Heading("Mine"),)


def test_a_slip_in_pages_of_another_lesson_is_told_where_they_stand(tmp_path):
    other = written(tmp_path, "diary", "[[booklet.pages]]\nlines = 0")
    with pytest.raises(LessonRefused) as caught:
        read_lesson(written(tmp_path, "taker", 'pages = "diary"'))
    (problem,) = caught.value.problems
    assert (problem.file, problem.line, problem.column) == (str(other), 8, 9)


def test_a_misspelt_lesson_to_take_pages_from_is_answered_with_the_nearest(tmp_path):
    written(tmp_path, "diary", "[[booklet.pages]]")
    with pytest.raises(LessonRefused) as caught:
        read_lesson(written(tmp_path, "taker", 'pages = "dairy"'))
    (problem,) = caught.value.problems
    assert (problem.line, problem.column, str(problem.hint)) == (7, 9, 'pages = "diary"')


@pytest.mark.parametrize("name", ["", " ", "a/b", "a\\\\b", "..", ".toml", "x" * 300, "c:d"])
def test_pages_are_taken_only_from_a_plain_name_of_a_file(tmp_path, name):
    with pytest.raises(LessonRefused) as caught:
        read_lesson(written(tmp_path, "taker", f'pages = "{name}"'))
    assert "name of a lesson file beside this one" in str(caught.value.problems[0].message)


def test_lessons_that_take_their_pages_from_one_another_are_refused(tmp_path):
    written(tmp_path, "one", 'pages = "two"')
    written(tmp_path, "two", 'pages = "three"')
    written(tmp_path, "three", 'pages = "two"')
    with pytest.raises(LessonRefused) as caught:
        read_lesson(tmp_path / "one.toml")
    (problem,) = caught.value.problems
    assert "in a circle: one, two, three, two" in str(problem.message)
    assert (problem.file, problem.line) == (str(tmp_path / "one.toml"), 7)


@pytest.mark.parametrize("other", ["", "title = \n", 'title = "x"\n', "[booklet]\npages = 3\n"])
def test_a_lesson_without_pages_lends_none(tmp_path, other):
    (tmp_path / "diary.toml").write_text(other, encoding="utf-8")
    with pytest.raises(LessonRefused) as caught:
        read_lesson(written(tmp_path, "taker", 'pages = "diary"'))
    assert len(caught.value.problems) == 1


# The page sets.


def words_of(plan: BookletPlan) -> list[Said]:
    texts: list[Said] = []
    for content in (content for one in plan.pages for content in one.contents):
        if isinstance(content, Title | Heading | Prompt):
            texts.append(content.text)
        elif isinstance(content, Frame):
            texts.append(content.caption)
        elif isinstance(content, Table):
            texts += [*content.columns, *(cell for row in (*content.rows, *content.answers) for cell in row)]
        elif isinstance(content, Lines):
            texts.append(content.answer)
    return [text for text in texts if text]


@pytest.mark.parametrize("name", PAGE_SETS)
def test_a_page_set_fills_the_booklet_that_its_lesson_folds(name):
    lesson = read_lesson(LESSONS / f"{name}.toml")
    proved = prove(lesson)
    plan = lesson.booklet
    assert isinstance(plan.booklet, Booklet)
    assert proved.states[-1].gathered
    assert plan.steps == lesson.steps
    assert len(plan.pages) == len(plan.booklet.pages) == 8
    assert isinstance(plan.pages[0].contents[0], Title)
    assert {CreasesPicture(), SheetPicture()} & set(plan.pages[0].contents)


@pytest.mark.parametrize("name", PAGE_SETS)
def test_no_cover_shows_the_panels_that_a_page_asks_to_predict(name):
    pages = read_lesson(LESSONS / f"{name}.toml").booklet.pages
    told = " ".join(str(words) for page in pages for words in own_words(page))
    assert (SheetPicture() in pages[0].contents) == ("After the last fold" in told)
    assert (CreasesPicture() in pages[0].contents) != ("After the last fold" in told)


@pytest.mark.parametrize("name", PAGE_SETS)
def test_a_page_set_is_written_in_short_sentences_of_common_words(name):
    lesson = read_lesson(LESSONS / f"{name}.toml")
    own = set(re.findall(r"[^\W\d_]+", " ".join([lesson.title, *lesson.vocabulary]).lower()))
    texts = [str(text) for text in words_of(lesson.booklet)]
    assert len(texts) >= 8
    assert [sentence for text in texts for sentence in long_sentences(text)] == []
    assert {text: found for text in texts if (found := uncommon_words(text, common_words() | own))} == {}


def test_every_text_of_our_page_sets_is_said_in_spanish_and_no_other_is():
    ours = {
        text.text if isinstance(text, Phrase) else text
        for name in PAGE_SETS
        for text in words_of(read_lesson(LESSONS / f"{name}.toml").booklet)
    }
    assert ours - set(table("es", "page_texts.toml")) == {"1/2", "1/4", "1/6", "3/4"}
    assert set(table("es", "page_texts.toml")) - ours == set()
    assert page_text(phrase("Fold {fold}", fold="2"), "es", {}) == "Doblez 2"
    assert page_text("Mi rana", "es", {}) == "Mi rana"
    assert page_text("My frog", "es", {"My frog": "Mi rana"}) == "Mi rana"
    assert page_text("My plank", "en-GB", {}) == "My plank"


def test_the_fraction_diary_keeps_every_fold_of_a_lesson_that_takes_it(tmp_path):
    text = (LESSONS / "fraction-diary.toml").read_text(encoding="utf-8")
    (tmp_path / "fraction-diary.toml").write_text(text, encoding="utf-8")
    plan = read_lesson(written(tmp_path, "seed-trays", 'pages = "fraction-diary"')).booklet
    recorded = {
        content.step for one in plan.pages for content in one.contents if isinstance(content, RecordFold)
    }
    assert recorded == {0, 1, 2}
