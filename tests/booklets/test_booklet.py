"""What stands on a booklet's pages: sentences of the folds, boxes for them, room to write, and notes."""

import re
from collections import Counter
from io import BytesIO
from itertools import pairwise
from pathlib import Path

import pdfplumber
import pytest
from booklet_reading import MM, as_mm, papers_of, planned, read_back, undrawn
from readability import MOST_WORDS, common_words, long_sentences, texts_of, uncommon_words
from told_stories import every_telling

from foldmath.booklets.fitting import SIZES
from foldmath.booklets.imposing import STAR_ROOM_MM, _margin, _margins, sides
from foldmath.booklets.notes import TooSmallForLargePrint, needed_width_mm
from foldmath.booklets.papers import booklet_papers, printed_booklet
from foldmath.drawing.scenes import Area, Figure, Hatching, Meaning, Stroke
from foldmath.errors import LessonRefused
from foldmath.lesson.booklet.forms import all_forms, folded_booklet
from foldmath.lesson.booklet.plan import (
    About,
    CreasesPicture,
    FoldPicture,
    Frame,
    Game,
    GamePage,
    Heading,
    Lines,
    ModelPicture,
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
from foldmath.lesson.proving import prove
from foldmath.lesson.reading import lesson_in
from foldmath.making import proved_lesson
from foldmath.pages.markup.reading import blocks_of
from foldmath.paper.booklet.booklet import Face
from foldmath.paper.state import Sheet
from foldmath.phrases import phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import ZERO, exact
from foldmath.statements.items.story import all_stories
from foldmath.statements.products import parse_product

LESSONS = [
    path
    for path in sorted((Path(__file__).parents[2] / "lessons").glob("*.toml"))
    if "[booklet]" in path.read_text("utf-8")
]
STORIES = {frame.name: frame for frame in all_stories()}
PRODUCT = parse_product("2/3 × 4/5")
SMALLEST_PAGE_NUMBER_PT = 9


def pages_of(*contents) -> tuple[PlannedPage, ...]:
    """Give a cover and one page, which is page 2."""
    return PlannedPage((Title("My booklet"),)), PlannedPage(contents)


def on_page_2(*contents, answers=False, **told):
    return read_back(papers_of(planned(pages_of(*contents), **told)), answers=answers)


def noted(papers) -> tuple[str, ...]:
    return tuple(map(str, papers.notes))


def heights_mm(folded, number=2):
    return sorted(round(box.top - box.bottom, 1) for box in folded.boxes if box.page == number)


# Sentences and boxes.


@pytest.mark.parametrize(
    ("content", "answers"),
    [
        (RecordFold(1), "121214"),
        (RecordFold(1, About.COUNT), "224"),
        (RecordProduct(PRODUCT.text, PRODUCT), "815"),
    ],
)
@pytest.mark.parametrize("paper", ["letter", "tabloid"])
def test_the_key_fills_the_boxes_that_pupils_find_empty(content, answers, paper):
    key, empty = on_page_2(content, answers=True, paper=paper), on_page_2(content, paper=paper)
    assert Counter(key.text(2)) - Counter(empty.text(2)) == Counter(answers)
    assert all(key.text(page) == empty.text(page) for page in (1, *range(3, 9)))
    assert [box.left for box in key.boxes] == [box.left for box in empty.boxes]


def test_boxes_are_big_enough_for_a_childs_figures():
    for paper in ("letter", "tabloid"):
        assert all(height >= 9 for height in heights_mm(on_page_2(RecordFold(1), paper=paper)))


def test_classes_that_do_not_multiply_fractions_name_the_panel_only():
    third, fifth = (on_page_2(RecordFold(1), answers=True, grade=grade) for grade in (3, 5))
    assert sum(box.page == 2 for box in third.boxes) == 2
    assert sum(box.page == 2 for box in fifth.boxes) == 6
    assert sorted(third.text(2)) == sorted("Onepanel:14ofthesheet.2")


def test_every_page_of_the_key_says_that_it_is_one_and_no_page_for_pupils_does():
    key, empty = (on_page_2(Heading("Soil"), answers=answers) for answers in (True, False))
    assert all(key.whole_text(page).endswith(f"key·{page}") for page in range(1, 9))
    assert all("key" not in empty.whole_text(page) for page in range(1, 9))


def test_the_key_writes_on_no_line_that_is_open():
    contents = (Prompt("I saw"), Lines(3), Prompt("I think"), Lines())
    key, empty = on_page_2(*contents, answers=True), on_page_2(*contents)
    assert [key.text(page) for page in range(1, 9)] == [empty.text(page) for page in range(1, 9)]
    assert len(key.lines) == len(empty.lines)


def test_the_key_writes_answers_on_their_lines_and_in_their_cells_and_pupils_find_them_empty():
    table = Table(("I have", "I need"), (("1/4", ""),), (("", "3/4"),))
    contents = (Prompt("One panel is"), Lines(1, "1/8"), Prompt("I think"), Lines(None, "so"), table)
    key, empty = (on_page_2(*contents, answers=answers, paper="tabloid") for answers in (True, False))
    assert Counter(key.text(2)) - Counter(empty.text(2)) == Counter("18so34")
    ruled = [
        [line for line in made.lines if line.page == 2 and line.right - line.left > 50]
        for made in (key, empty)
    ]
    assert ruled[0] == []
    assert len(ruled[1]) > 2


def test_a_story_asks_for_its_sum_and_a_sentence():
    (item,) = (one for one in every_telling(STORIES["garden-beans"]) if str(one.product.asked) == "1/2 × 3/4")
    key, empty = (on_page_2(Story(item), answers=answers) for answers in (True, False))
    assert "Whatfractionofthewholebedhasbeans?" in empty.text(2)
    more = Counter(key.text(2)) - Counter(empty.text(2))
    assert more == Counter("123438" + "Beansgrowin38ofthewholebed.")


def test_the_rules_of_the_game_say_what_the_race_does():
    told = on_page_2(Game(GamePage.RULES, Race(4, 2))).text(2)
    assert "Bothshow1to3fingers." in told
    assert Counter("Ihave28.Ineed68.") - Counter(told) == Counter()


def test_the_cover_shows_the_creases_and_tells_no_number_and_no_shading():
    scene = papers_of(planned(pages_of(CreasesPicture()))).pictures["page-2-0"]
    strokes = {mark.meaning for mark in scene.marks if isinstance(mark, Stroke)}
    assert {Meaning.VALLEY, Meaning.SHEET_EDGE} <= strokes
    assert not any(isinstance(mark, Figure | Hatching) for mark in scene.marks)


def test_a_cover_may_show_the_sheet_before_it_is_folded_without_any_crease():
    scene = papers_of(planned(pages_of(SheetPicture()))).pictures["page-2-0"]
    strokes = {mark.meaning for mark in scene.marks if isinstance(mark, Stroke)}
    assert Meaning.SHEET_EDGE in strokes
    assert not strokes & {Meaning.VALLEY, Meaning.MOUNTAIN}
    assert scene.words == phrase("The open sheet, not folded yet.")


def test_a_board_stands_as_its_page_does():
    """Four columns of two rows lie across the sheet, and stand upright on its narrow pages."""
    scene = papers_of(planned(pages_of(Game(GamePage.BOARD, Race(4, 2))))).pictures["page-2-0"]
    assert scene.height_mm > scene.width_mm
    assert isinstance(scene.marks[0], Area)


def test_the_model_is_hatched_in_the_key_alone():
    papers = papers_of(planned(pages_of(ModelPicture(PRODUCT.text, PRODUCT))))
    blank, shaded = (papers.pictures[name] for name in ("page-2-0", "page-2-0-shaded"))
    assert (blank.width_mm, blank.height_mm) == (shaded.width_mm, shaded.height_mm)
    assert not any(isinstance(mark, Hatching) for mark in blank.marks)
    assert any(isinstance(mark, Hatching) for mark in shaded.marks)


# Room.


def test_lines_are_ruled_at_the_plans_own_distance():
    folded = on_page_2(Lines(), ruling="1/2 in")
    heights = sorted(line.bottom for line in folded.lines if line.page == 2)
    assert len(heights) == 7
    assert [higher - lower for lower, higher in pairwise(heights)] == pytest.approx([12.7] * 6, abs=0.01)


def test_lines_that_are_counted_are_as_many_as_that():
    assert sum(line.page == 2 for line in on_page_2(Heading("Seeds"), Lines(3)).lines) == 3


def test_open_lines_and_frames_share_what_is_left():
    folded = on_page_2(Frame(), Frame())
    one, other = heights_mm(folded)
    assert one == other > 35


def test_words_are_never_smaller_than_twelve_points_but_for_page_numbers():
    crowded = (Prompt("seeds and beans " * 5), RecordFold(2), RecordFold(2, About.COUNT), Lines(4))
    folded = on_page_2(*crowded)
    sizes = {round(letter.size, 1) for letter in folded.letters}
    assert min(sizes - {SMALLEST_PAGE_NUMBER_PT}) >= SIZES["regular"][-1]
    assert sum(round(letter.size, 1) == SMALLEST_PAGE_NUMBER_PT for letter in folded.letters) == 8


def test_large_print_is_set_at_eighteen_points_where_it_fits():
    papers = papers_of(
        planned(pages_of(Heading("Seeds"), Prompt("I saw"), Lines()), paper="tabloid"), "large"
    )
    sizes = {round(letter.size) for letter in read_back(papers).letters}
    assert min(sizes) == 18


def test_a_table_has_a_cell_for_every_word_and_grows_into_the_room():
    table = Table(("Word", "What it means"), (("panel", ""), ("crease", ""), ("", "")), (("", ""),) * 3)
    folded = on_page_2(table, paper="tabloid")
    assert sum(box.page == 2 for box in folded.boxes) == 8
    assert max(heights_mm(folded)) > 15


def test_blank_pages_have_their_number_alone():
    folded = on_page_2(Heading("Seeds"))
    assert [folded.text(number) for number in range(3, 9)] == list("345678")


# Notes.


def test_the_notes_tell_the_writing_room_of_each_page():
    notes = noted(on_page_2(Lines(), grade=5).papers)
    assert "Each page has room for 9 lines or more, 2 1/4 in wide and 3/8 in apart." in notes
    assert "Lines to write on: 9 on page 2." in notes


def test_on_metric_paper_lines_that_are_ruled_by_the_inch_are_told_in_millimetres():
    assert any(
        note.endswith(" mm wide and 9 mm apart.") for note in noted(on_page_2(Lines(), paper="A4").papers)
    )


def test_the_notes_tell_how_much_too_long_the_slit_may_be_on_this_paper():
    """A page of letter paper is 2 3/4 in wide, 69.85 mm: half of the end hinge is 1 3/8 in."""
    told = "The cut may run up to 1 3/8 in past each stop without harm; past that an end leaf may tear"
    assert any(note.startswith(told) for note in noted(on_page_2(Lines()).papers))
    assert not any("cut may run" in note for note in noted(on_page_2(Lines(), form="four-page").papers))


def test_a_page_too_narrow_for_the_grade_names_the_paper_that_would_do():
    assert needed_width_mm(12.7) == pytest.approx(60.96)
    notes = noted(on_page_2(Lines(), grade=3, ruling="1/2 in").papers)
    small = next(number for number, note in enumerate(notes) if "narrow for grade 3" in note)
    assert notes[small].endswith("a line is 2 1/4 in wide, and 2 words need 2 1/2 in.")
    assert notes[small + 1] == "Paper that would do: legal."
    roomy = noted(on_page_2(Lines(), grade=3, ruling="1/2 in", paper="legal").papers)
    assert not any("for grade 3" in note for note in roomy)


def test_lengths_on_a_sheet_in_millimetres_are_told_in_millimetres():
    notes = noted(on_page_2(Lines(), grade=3, ruling="14 mm", paper="A4").papers)
    assert any("a line is 63 mm wide, and 2 words need 68 mm." in note for note in notes)


def test_a_page_too_low_for_the_grade_names_the_paper_that_would_do():
    notes = noted(on_page_2(Lines(), form="eight-page", paper="A5", grade=3, ruling="12 mm").papers)
    assert any("short for grade 3" in note for note in notes)
    assert any(note == "Paper that would do: A4." for note in notes)


def test_what_does_not_fit_is_left_out_and_told_with_its_place():
    page = PlannedPage((Heading("Seeds"), Prompt("beans and peas " * 12), Lines(8)), 12, 3)
    papers = papers_of(planned((page,)))
    told = "seed-trays.toml:12:3: Page 1 has too much on it: at 12 pt, 2 of its 3 parts fit, and the rest"
    assert any(note.startswith(told) for note in noted(papers))
    assert noted(papers)[-1] == "Paper on which every page fits: tabloid."
    assert read_back(papers).text(1).startswith("Seedsbeansandpeas")


def test_large_print_that_does_not_fit_is_refused_with_the_paper_that_would_do():
    contents = (Heading("Seeds"), RecordFold(1), RecordFold(1, About.COUNT), Lines(2))
    with pytest.raises(TooSmallForLargePrint) as caught:
        papers_of(planned(pages_of(*contents)), "large")
    (problem,) = caught.value.problems
    assert str(problem.message) == "page 2 of the booklet does not fit in large print, at 18 points"
    assert problem.hint == 'paper = "tabloid"'
    papers_of(planned(pages_of(*contents), paper="tabloid"), "large")


def test_paper_larger_than_the_printers_is_told():
    notes = noted(on_page_2(Lines(), paper="tabloid").papers)
    assert any("17 × 11 in and does not fit on letter paper at its full size" in note for note in notes)
    assert not any("does not fit on" in note for note in noted(on_page_2(Lines()).papers))


def test_words_that_are_no_letters_are_refused_with_the_place_of_their_page():
    page = PlannedPage((Heading("Folds 🎉"),), 14, 3)
    with pytest.raises(LessonRefused, match=r"seed-trays.toml:14:3: the pages cannot print these words"):
        papers_of(planned((page,)))


# The booklets of our own lessons.


@pytest.fixture(scope="module", params=LESSONS, ids=lambda path: path.stem)
def own(request):
    made, paper = proved_lesson(request.param)
    return made, booklet_papers(made, made.lesson.booklet, paper, "regular")


def test_our_own_booklets_fit_their_paper(own):
    _, papers = own
    assert not any("has too much" in note or "too small" in note for note in noted(papers))


@pytest.mark.parametrize("paper", ["letter", "A4"])
@pytest.mark.parametrize("name", ["seed-trays", "tile-panels"])
@pytest.mark.parametrize("pages", [path.stem for path in LESSONS])
def test_our_own_pages_fit_other_lessons_of_ours(pages, name, paper):
    text = (
        (LESSONS[0].parent / f"{name}.toml")
        .read_text("utf-8")
        .replace('paper = "letter"', f'paper = "{paper}"')
    )
    lesson = lesson_in(f'{text}\n[booklet]\nform = "eight-page"\npages = "{pages}"\n', f"{name}.toml")
    papers = booklet_papers(prove(lesson), lesson.booklet, paper, "regular")
    assert not any("has too much" in note for note in noted(papers))


def test_our_own_booklets_use_common_words_in_short_sentences(own):
    made, papers = own
    lesson = made.lesson
    told = " ".join([lesson.title, *lesson.vocabulary, *lesson.notes]).lower()
    allowed = common_words() | set(re.findall(r"[^\W\d_]+", told))
    texts = [text for html in papers.html for _, text in texts_of(blocks_of(html))]
    assert len(texts) > 10
    assert {text: found for text in texts if (found := uncommon_words(text, allowed))} == {}
    assert [sentence for text in texts for sentence in long_sentences(text, MOST_WORDS)] == []


@pytest.mark.parametrize("answers", [False, True])
def test_our_own_booklets_are_printed_with_their_pictures_and_no_raster(own, picture_process, answers):
    _, papers = own
    recordings = picture_process.recordings(list(papers.pictures.values())).result()
    content = printed_booklet(papers, dict(zip(papers.pictures, recordings, strict=True)), answers)
    with pdfplumber.open(BytesIO(content)) as document:
        (page,) = document.pages
        assert page.images == []
        assert (float(page.width) / MM, float(page.height) / MM) == pytest.approx(
            (as_mm(papers.layout.lies.width), as_mm(papers.layout.lies.height)), abs=0.01
        )
        assert len(page.chars) > 100


def test_pictures_for_low_vision_have_thicker_lines():
    looks = [
        papers_of(planned(pages_of(FoldPicture(1)), paper="tabloid"), look) for look in ("regular", "large")
    ]
    regular, large = (papers.pictures["page-2-0"].weight for papers in looks)
    assert large > regular == 1


def test_every_picture_of_a_fold_has_the_size_that_its_page_gives_it():
    papers = papers_of(planned(pages_of(Heading("Fold 2"), FoldPicture(1), Lines())))
    ((name, height),) = papers.layout.pages[1].fit.drawn_pt[:1]
    assert papers.pictures[name].height_mm <= height / MM + 0.01
    assert undrawn(papers)[name].width <= papers.layout.pages[1].content.room.width_mm * MM


def test_a_heading_too_wide_for_a_narrow_page_is_set_smaller_and_words_too_wide_are_left_out():
    narrow = {"form": "twelve-page", "paper": "letter"}
    wide, small = (
        on_page_2(Heading("Multiplication"), paper="tabloid"),
        on_page_2(Heading("Multiplication"), **narrow),
    )
    largest = [max(letter.size for letter in made.letters if letter.page == 2) for made in (wide, small)]
    assert largest[0] > largest[1] >= SIZES["regular"][-1]
    never = on_page_2(Heading("Fractions"), Prompt("multiplicationmultiplicationmultiplication"), **narrow)
    assert never.text(2) == "Fractions2"
    assert any("Page 2 has too much" in note for note in noted(never.papers))


def test_a_booklet_as_small_as_a_stamp_is_refused():
    with pytest.raises(LessonRefused, match="too small to write on"):
        papers_of(planned(pages_of(Heading("Seeds")), paper="A7"))


def test_room_for_the_star_is_kept_only_at_the_head_of_the_page_where_it_stands_upside_down():
    sheet = Sheet(exact(11), exact(17, 2), "in")
    made = folded_booklet(all_forms()["eight-page"].steps_on(sheet), sheet)
    for page in made.pages:
        head = sides(page, made)["top"]
        starred = page.face is Face.PRINTED and Point(ZERO, ZERO) in head
        assert _margins(page, made, sheet).top == _margin(head, made, sheet) + (
            STAR_ROOM_MM if starred else 0
        )
    upside_down = [page for page in made.pages if Point(ZERO, ZERO) in sides(page, made)["top"]]
    assert [page.face for page in upside_down].count(Face.PRINTED) <= 1
