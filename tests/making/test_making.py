"""The one path from a lesson file to its pages."""

from dataclasses import replace
from importlib import import_module
from pathlib import Path
from xml.etree import ElementTree

import pikepdf
import pytest
from conftest import LESSONS, NAMES, in_silence
from lessons_in_words import core_sheet
from page_reading import text_of

from foldmath.errors import BlockTooHigh, LessonRefused, Unreadable
from foldmath.lesson.numbered_pupils import pupils_without_roster
from foldmath.lesson.proving import prove
from foldmath.lesson.reading import lesson_in, read_lesson
from foldmath.making import Access, Order, booklet, draw, lesson_on, make, page_paper, proved_lesson
from foldmath.making.booklet import folding_steps, with_fitting_booklet
from foldmath.making.classes import Classroom, make_class, own_crew
from foldmath.making.papers import Masters, papers, papers_in_turn
from foldmath.making.previews import Preview
from foldmath.making.sets.manifest import MANIFEST
from foldmath.pages.looks import REGULAR
from foldmath.plane.numbers import written
from foldmath.teachers_plan.plan import plan, plan_html

SEED_TRAYS = LESSONS / "seed-trays.toml"
BOOKLET = {"booklet.pdf", "booklet-key.pdf", "booklet-folding.pdf"}


def lesson_of(paper):
    return lesson_in(f'title = "T"\ngrade = 5\npaper = {paper}\nsteps = ["open"]\n', "t.toml")


def sides(lesson):
    return written(lesson.sheet.width), written(lesson.sheet.height), lesson.sheet.unit


def test_the_pages_and_the_diagrams_lie_in_a_folder_named_for_the_lesson(pages):
    worksheets = {f"worksheet{level}.pdf" for level in ("-guided", "", "-stretch")}
    keys = {f"answer-key{level}.pdf" for level in ("-guided", "", "-stretch")}
    others = {
        "exit-ticket.pdf",
        "teacher-plan.pdf",
        "slides.html",
        "slides.pdf",
        "slides-reveals.pdf",
        "templates.pdf",
    }
    papers = [path for path in pages.made.files if path.parent == pages.folder]
    assert {path.name for path in papers} == worksheets | keys | others
    assert {*pages.made.files, pages.folder / MANIFEST} == set(filter(Path.is_file, pages.folder.rglob("*")))
    diagrams = [path for path in pages.made.files if path.parent.name == "diagrams"]
    assert len(diagrams) > 2 * len(pages.made.proved.moments)
    assert all(ElementTree.fromstring(path.read_bytes()).tag.endswith("svg") for path in diagrams)


def test_the_core_worksheet_is_written_first_and_levels_are_told_from_most_support_to_least(pages):
    written_in_turn = [
        name
        for made in papers_in_turn(Masters(*proved_lesson(SEED_TRAYS), REGULAR))
        for name in made.documents
    ]
    assert written_in_turn[0] == "worksheet.pdf"
    assert len(written_in_turn) == len({*written_in_turn})
    told = [path.name for path in pages.made.files if path.name in written_in_turn]
    assert told == [*papers(*proved_lesson(SEED_TRAYS), REGULAR).documents]
    assert told[:3] == ["worksheet-guided.pdf", "answer-key-guided.pdf", "worksheet.pdf"]


def test_the_title_of_a_file_tells_it_from_all_others(pages):
    titles = {}
    for path in pages.folder.glob("*.pdf"):
        with pikepdf.open(path) as document:
            titles[path.name] = str(document.docinfo["/Title"])
    lesson = pages.made.proved.lesson.title
    assert titles["worksheet.pdf"] == f"{lesson}: worksheet, core"
    assert titles["answer-key-guided.pdf"] == f"{lesson}: answer key, guided"
    assert titles["exit-ticket.pdf"] == f"{lesson}: exit ticket"
    kept = [name for name in titles if name.startswith(("worksheet", "answer", "exit", "teacher"))]
    assert len({titles[name] for name in kept}) == len(kept) == 8


@pytest.mark.sweep("seed-trays")
@pytest.mark.parametrize("name", NAMES)
def test_making_again_gives_the_same_bytes(name, all_pages, picture_process, tmp_path):
    made = make(LESSONS / f"{name}.toml", Order(out=tmp_path, paper="letter"), picture_process, in_silence)
    first = all_pages[name, "letter"]
    for path in made.files:
        assert path.read_bytes() == (first.folder / path.relative_to(tmp_path / name)).read_bytes()


@pytest.mark.sweep("A4")
@pytest.mark.parametrize("paper", ["letter", "A4"])
def test_a_lesson_with_a_booklet_comes_with_its_sheet_its_key_and_how_to_fold_it(
    paper, picture_process, tmp_path
):
    made = make(
        LESSONS / "fraction-diary.toml", Order(out=tmp_path, paper=paper), picture_process, in_silence
    )
    assert {path.name for path in made.files} > BOOKLET
    assert any("room for" in str(note) for note in made.notes)
    alone = booklet(
        LESSONS / "fraction-diary.toml", Order(out=tmp_path / "alone", paper=paper), picture_process
    )
    assert {path.name for path in alone.files} == BOOKLET
    for path in alone.files:
        assert path.read_bytes() == (tmp_path / "fraction-diary" / path.name).read_bytes()


def test_a_booklet_too_small_for_large_print_is_refused_alone_and_left_out_of_a_set(
    picture_process, tmp_path
):
    diary, large = LESSONS / "fraction-diary.toml", Order(out=tmp_path, paper="letter", look="large")
    with pytest.raises(
        LessonRefused, match="page 3 of the booklet does not fit in large print, at 18 points"
    ):
        booklet(diary, large, picture_process)
    assert list(tmp_path.iterdir()) == []
    made = make(diary, large, picture_process, in_silence)
    assert {path.name for path in made.files} & BOOKLET == {"booklet-folding.pdf"}
    assert 'What would do: paper = "tabloid".' in "".join(str(note) for note in made.notes)
    preview = Preview(proved_lesson(diary, "letter")[0], "letter", "large", picture_process)
    assert "booklet.pdf" not in preview.names
    told = " ".join(text_of(tmp_path / "fraction-diary" / "teacher-plan.pdf"))
    assert "larger sheet (tabloid); here students fold a blank one" in told
    assert "print its sheet" not in told


def test_a_lesson_that_folds_no_booklet_itself_tells_of_none_where_large_print_leaves_out_its_pages():
    lesson = read_lesson(LESSONS / "fraction-diary.toml")
    made = prove(replace(lesson, steps=lesson.steps[:4]))
    (bare, notes), (same, none) = (
        with_fitting_booklet(made, "letter", look) for look in ("large", "regular")
    )
    assert (same, none) == (made, ())
    assert str(notes[0]).startswith("No booklet is made")
    assert folding_steps(bare) == ()
    assert "Booklet:" not in plan_html(plan(bare, core_sheet(bare), None))


def test_a_sheet_that_is_gathered_without_planned_pages_comes_with_how_to_fold_it(picture_process, tmp_path):
    lesson = tmp_path / "plain.toml"
    steps = '"fold left edge to right edge", "gather into booklet"'
    lesson.write_text(f'title = "T"\ngrade = 5\npaper = "letter"\nsteps = [{steps}]\n', encoding="utf-8")
    made = booklet(lesson, Order(out=tmp_path), picture_process)
    assert [path.name for path in made.files] == ["booklet-folding.pdf"]


def test_a_lesson_without_a_booklet_is_told_how_to_have_one(picture_process, tmp_path):
    with pytest.raises(LessonRefused, match="no \\[booklet\\]"):
        booklet(SEED_TRAYS, Order(out=tmp_path), picture_process)
    assert list(tmp_path.iterdir()) == []


def test_a_booklet_is_folded_from_the_paper_that_is_asked_for():
    proved, _ = proved_lesson(LESSONS / "fraction-diary.toml", "A4")
    assert written(proved.lesson.booklet.booklet.width) == "297/4"


def test_card_that_hands_cannot_fold_is_told_of(picture_process, tmp_path):
    lesson = tmp_path / "card.toml"
    fold = '"fold left edge to right edge", "fold top edge to bottom edge", '
    text = f'title = "T"\ngrade = 5\npaper = "letter"\nstock = "1 mm"\nsteps = [{fold * 2}"open"]\n'
    lesson.write_text(text, encoding="utf-8")
    assert any(
        "mm thick" in str(note)
        for note in make(lesson, Order(out=tmp_path), picture_process, in_silence).notes
    )


def test_what_paper_cannot_be_folded_into_is_refused_with_its_place_before_anything_is_written(
    picture_process, tmp_path
):
    lesson = tmp_path / "card.toml"
    fold = '"fold left edge to right edge", "fold top edge to bottom edge", '
    text = f'title = "T"\ngrade = 5\npaper = "letter"\nstock = "1 mm"\nsteps = [{fold * 4}"open"]\n'
    lesson.write_text(text, encoding="utf-8")
    with pytest.raises(LessonRefused, match="cannot be folded") as caught:
        make(lesson, Order(out=tmp_path / "out"), picture_process, in_silence)
    (problem,) = caught.value.problems
    assert (problem.line, problem.words in fold) == (5, True)
    assert "only the first" in str(problem.hint)
    assert not (tmp_path / "out").exists()


def test_what_is_being_done_is_told_in_order(picture_process, tmp_path):
    told = []
    make(SEED_TRAYS, Order(out=tmp_path), picture_process, told.append)
    assert [str(one) for one in told] == ["folding", "laying out pages"]


def test_a_lesson_that_cannot_be_used_writes_nothing(picture_process, tmp_path):
    bad = tmp_path / "bad.toml"
    bad.write_text('title = "Bad"\ngrade = 5\npaper = "letter"\nsteps = ["open"]\n', encoding="utf-8")
    with pytest.raises(LessonRefused, match="nothing is folded"):
        make(bad, Order(out=tmp_path / "out"), picture_process, in_silence)
    assert not (tmp_path / "out").exists()


def test_diagrams_are_saved_as_svg_and_as_png_side_by_side(picture_process, tmp_path):
    files = draw(SEED_TRAYS, tmp_path, picture_process).files
    assert {path.suffix for path in files} == {".svg", ".png"}
    assert {path.parent for path in files} == {tmp_path / "seed-trays" / "drawings"}
    names = [path.stem for path in files]
    assert all(names.count(name) == 2 for name in names)
    assert all(path.read_bytes()[:4] == b"\x89PNG" for path in files if path.suffix == ".png")


# Paper.


@pytest.mark.parametrize(
    ("name", "paper"), [("letter", "letter"), ("A4", "A4"), (" a4 ", "A4"), ("LETTER", "letter")]
)
def test_the_paper_to_print_on_is_letter_or_a4(name, paper):
    assert page_paper(name) == paper


@pytest.mark.parametrize("name", ["legal", "", "A3"])
def test_any_other_paper_is_refused_with_both_names(name):
    with pytest.raises(Unreadable, match="letter and A4"):
        page_paper(name)


@pytest.mark.parametrize(
    ("paper", "printed"), [('"letter"', "letter"), ('"A4"', "A4"), ('"A3"', "A4"), ('"tabloid"', "letter")]
)
def test_without_a_choice_inches_are_printed_on_letter_and_millimetres_on_a4(paper, printed):
    lesson = lesson_of(paper)
    assert lesson_on(None, lesson) == (lesson, printed)


def test_a_lesson_on_letter_folds_a4_where_it_is_printed_on_a4_and_the_other_way_round():
    assert sides(lesson_on("A4", lesson_of('"letter"'))[0]) == ("297", "210", "mm")
    assert sides(lesson_on("letter", lesson_of('"a4"'))[0]) == ("11", "17/2", "in")


def test_a_lesson_on_tabloid_folds_a3_where_it_is_printed_on_a4_and_the_other_way_round():
    assert sides(lesson_on("A4", lesson_of('"ledger"'))[0]) == ("420", "297", "mm")
    assert sides(lesson_on("letter", lesson_of('"A3"'))[0]) == ("17", "11", "in")


@pytest.mark.parametrize(
    ("stock", "on_letter", "on_a4"),
    [("", "copy 20 lb", "80 gsm"), ('stock = "construction"\n', "construction", "construction")],
)
def test_the_usual_stock_goes_with_the_paper_and_any_other_stays(stock, on_letter, on_a4):
    lesson = lesson_of(f'"letter"\n{stock}')
    assert [lesson_on(paper, lesson)[0].stock.name for paper in ("letter", "A4")] == [on_letter, on_a4]
    assert lesson_on("letter", lesson_on("A4", lesson)[0])[0].stock.name == on_letter


def test_any_other_sheet_is_folded_as_the_lesson_says_whatever_it_is_printed_on():
    square, large = lesson_of('"origami"'), lesson_of('"construction 12 x 18"')
    assert lesson_on("A4", large) == (large, "A4")
    assert lesson_on("letter", square) == (square, "letter")


def test_any_size_of_paper_gives_the_same_fractions():
    letter, a4 = (proved_lesson(SEED_TRAYS, paper)[0] for paper in ("letter", "A4"))
    assert [moment.sizes for moment in letter.moments] == [moment.sizes for moment in a4.moments]
    assert letter.lesson.sheet != a4.lesson.sheet


def class_made(path, order, *others):
    with own_crew(1) as crew:
        return make_class(path, order, Classroom("c", pupils_without_roster(1), Access.OWNER), crew, *others)


@pytest.mark.parametrize(
    ("module", "finishes", "made"),
    [
        ("making", "finished", lambda path, order, *others: make(path, order, *others)),
        ("booklet", "finished", lambda path, order, pictures, _: booklet(path, order, pictures)),
        ("classes.class_set", "ClassPages", class_made),
    ],
    ids=["make", "booklet", "class"],
)
def test_pages_without_room_for_what_they_say_are_refused_by_the_name_of_the_lesson(
    module, finishes, made, monkeypatch, picture_process, tmp_path
):
    def without_room(*_begun):
        raise BlockTooHigh("one part of its pages is 5.3 times as high as a page", "shorter texts")

    monkeypatch.setattr(import_module(f"foldmath.making.{module}"), finishes, without_room)
    path = LESSONS / "fraction-diary.toml"
    with pytest.raises(LessonRefused) as refused:
        made(path, Order(out=tmp_path, paper="letter"), picture_process, in_silence)
    assert str(refused.value) == (
        f"{path}: one part of its pages is 5.3 times as high as a page\n    try:  shorter texts"
    )
    assert not list(tmp_path.iterdir())
