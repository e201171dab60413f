"""The page that shows how a booklet is folded: every move with a picture of its own, in words for pupils."""

from itertools import pairwise, product
from typing import NamedTuple

import pytest
from creased import A4_UPRIGHT, LETTER, after
from lessons_in_words import written
from page_reading import pages_of, text_of, usable_area, within
from pictured import strokes
from readability import common_words, long_sentences, texts_of, uncommon_words

from foldmath.booklets.folding_page import FoldingPage, booklet_folding
from foldmath.booklets.folding_steps import PUSHED, Shows, folding_picture, folding_steps
from foldmath.drawing.scenes import Figure, Meaning
from foldmath.drawing.sheets.scissors import RING_CORNERS
from foldmath.lesson.booklet.forms import all_forms
from foldmath.lesson.grammar.sentences import parse_step
from foldmath.pages.looks import LARGE, REGULAR
from foldmath.pages.markup.blocks import Paragraph, Picture, Row
from foldmath.pages.markup.reading import blocks_of
from foldmath.pages.printing import printed
from foldmath.paper.booklet.booklet import Form
from foldmath.paper.booklet.gathering import booklet
from foldmath.paper.moments.performing import perform
from foldmath.paper.refusals import SlitTooShort, StepRefused
from foldmath.paper.sizes import paper_named, sheet
from foldmath.paper.state import CUT, FoldedState, Kind, Sheet, open_sheet
from foldmath.paper.steps import Axis, Gather
from foldmath.plane.numbers import ONE, ZERO

TITLE, LANGUAGE = "Seed trays", "en-US"
FORMS = all_forms()
SLIT_BOXES = {"eight-page": 1, "twelve-page": 2}
TRIMMED_SIDES = {"eight-page-signature": 1, "sixteen-page-signature": 2}
SIDES = ("landscape", "portrait")
CASES = (
    *product(FORMS, ("letter", "A4"), SIDES, [REGULAR]),
    *product(FORMS, ["letter"], SIDES, [LARGE]),
    *product(SLIT_BOXES, ["A4"], SIDES, [LARGE]),
)
"""In large print only the fullest pages stand on A4 as well, which has more room than letter."""


def of_cases(*cases):
    """Take a test through some cases."""
    return pytest.mark.parametrize("case", cases, ids="-".join, indirect=True)


ON_LETTER = of_cases(*product(FORMS, ["letter"], SIDES, [REGULAR]))
READ_CLOSELY = of_cases(
    ("twelve-page", "letter", "portrait", REGULAR),
    ("twelve-page", "letter", "landscape", LARGE),
    ("twelve-page", "A4", "portrait", LARGE),
    ("eight-page", "A4", "landscape", REGULAR),
    ("eight-panel", "letter", "landscape", REGULAR),
    ("sixteen-page-signature", "letter", "portrait", LARGE),
)
"""The fullest pages, and one of each other kind: reading every mark of a page takes long."""

MOST_PAGES = {REGULAR: 1, LARGE: 2}
BODY_PT, LEGEND_PT = {REGULAR: 12, LARGE: 18}, {REGULAR: 10, LARGE: 18}

ACROSS = ("pleat width into 4", "open", "fold top edge to bottom edge", "open")
"""Four columns and two rows of panels, on the open sheet."""

GATHER = "gather into booklet"
LEVEL = (*ACROSS, "slit at height 1/2 from 1/4 to 3/4", GATHER)
UPRIGHT = (
    *("pleat height into 6", "open", "fold left edge to right edge", "open"),
    *("slit at width 1/2 from 1/6 to 5/6", GATHER),
)
TURNED = (*LEVEL[:-1], "turn over", "turn right", GATHER)
OFF_THE_MIDDLE = (*ACROSS, "slit at height 1/2 from 1/5 to 3/4", GATHER)
MANY = ("fold top edge to bottom edge", "open last", *ACROSS, "turn over", "turn over", *LEVEL[-2:])
OPEN_SLITS = pytest.mark.parametrize(
    ("paper", "said"),
    [
        (LETTER, LEVEL),
        (A4_UPRIGHT, UPRIGHT),
        (LETTER, (*ACROSS, "turn over", *LEVEL[-2:])),
        (A4_UPRIGHT, (*ACROSS, "turn left", "slit at width 1/2 from 1/4 to 3/4", GATHER)),
        (LETTER, (*ACROSS, "slit at height 1/2 from 1/5 to 4/5", GATHER)),
    ],
    ids=["level", "upright", "turned over", "turned left", "a little long"],
)
CLOSING = [Shows.HALVE, *PUSHED, Shows.LEAVES, Shows.CLOSED]


class Case(NamedTuple):
    """One form on one sheet in one look: what folds it, and its page."""

    form: str
    look: str
    sheet: Sheet
    said: tuple[str, ...]
    page: FoldingPage


@pytest.fixture(scope="module", params=CASES, ids="-".join)
def case(request):
    """Write the page of one form, in turn."""
    form, paper, orientation, look = request.param
    lying = sheet(paper_named(paper), orientation)
    said = FORMS[form].steps_on(lying)
    return Case(form, look, lying, said, booklet_folding(TITLE, LANGUAGE, lying, said, paper, look))


@pytest.fixture(scope="module")
def pdf(case, picture_process, tmp_path_factory):
    """Print the page of one case."""
    recordings = picture_process.recordings(list(case.page.pictures.values())).result()
    pictures = dict(zip(case.page.pictures, recordings, strict=True))
    file = tmp_path_factory.mktemp("folding") / "folding.pdf"
    file.write_bytes(printed([case.page.document], pictures, TITLE, LANGUAGE, case.look))
    return file


def page_of(said, paper=LETTER, look=REGULAR):
    return booklet_folding(TITLE, LANGUAGE, paper, written(*said), "letter", look)


def steps_by(said, paper=LETTER):
    return folding_steps(paper, written(*said))


def shown_by(said, paper=LETTER):
    return [step.shows for step in steps_by(said, paper)]


def ring_of(k):
    """Give the sentences for 2 rows of 2k panels round a slit."""
    slit = f"slit at height 1/2 from 1/{2 * k} to {2 * k - 1}/{2 * k}"
    return (f"pleat width into {2 * k}", *ACROSS[1:], slit, GATHER)


def cells_of(page):
    """Give the name of the picture and the words of every cell that holds a move, in reading order."""
    rows = [block for block in blocks_of(page.document.html) if isinstance(block, Row)]
    cells = [cell for row in rows if row.style == "folding-row" for cell in row.cells]
    for cell in cells:
        assert [type(block) for block in cell.blocks] == [Picture, Paragraph]
    return [(cell.blocks[0].name, next(texts_of(cell.blocks))[1]) for cell in cells]


def words_of(page):
    return [text for _, text in texts_of(blocks_of(page.document.html))]


def legend_of(page):
    """Give the words of the legend."""
    return [text for style, text in texts_of(blocks_of(page.document.html)) if style == "legend"]


def scissors_in(scene):
    """Count the scissors: each has two rings for the fingers."""
    outlines = strokes(scene, Meaning.OUTLINE)
    return sum(mark.closed and len(mark.spots) == RING_CORNERS for mark in outlines) / 2


def outside(scene):
    """Give the spots of outlines that lie outside their picture."""
    spots = [spot for mark in strokes(scene, Meaning.OUTLINE) for spot in mark.spots]
    return [(x, y) for x, y in spots if not (0 < x < scene.width_mm and 0 < y < scene.height_mm)]


def paper_of(state: FoldedState):
    """Tell what a state is as paper: its panels as they lie, and what joins them, but not how it creased."""
    return {
        (
            panel.corners,
            panel.lying,
            panel.placements,
            panel.area,
            tuple(edge if edge in (None, CUT) else "hinge" for edge in panel.edges),
        )
        for panel in state.panels
    }


def test_every_form_is_told_on_one_page_and_in_large_print_on_two_at_most(case, pdf):
    assert 1 <= len(text_of(pdf)) <= MOST_PAGES[case.look]


def test_in_large_print_a_number_too_small_for_it_is_left_out_of_its_picture():
    said = FORMS["eight-page"].steps_on(LETTER)
    small, large = (
        [
            [mark.size_mm * 72 / 25.4 >= 18 for mark in scene.marks if isinstance(mark, Figure)]
            for scene in booklet_folding(TITLE, LANGUAGE, LETTER, said, "letter", look).pictures.values()
        ]
        for look in (REGULAR, LARGE)
    )
    assert any(False in sizes for sizes in small)
    assert all(all(sizes) for sizes in large)
    assert any(large)


def test_longer_words_of_another_language_leave_an_eight_page_booklet_on_one_page(picture_process, tmp_path):
    page = booklet_folding(TITLE, "es", LETTER, FORMS["eight-page"].steps_on(LETTER), "letter")
    recordings = picture_process.recordings(list(page.pictures.values())).result()
    file = tmp_path / "folding.pdf"
    file.write_bytes(
        printed([page.document], dict(zip(page.pictures, recordings, strict=True)), TITLE, "es", REGULAR)
    )
    assert len(text_of(file)) == MOST_PAGES[REGULAR]


def test_no_sentence_has_more_than_twelve_words_and_all_are_common(case):
    assert [sentence for text in words_of(case.page) for sentence in long_sentences(text)] == []
    assert [word for text in words_of(case.page) for word in uncommon_words(text, common_words())] == []


def test_every_instruction_is_numbered_and_has_a_picture_of_its_own(case, pdf):
    cells = cells_of(case.page)
    assert [text.partition(" ")[0] for _, text in cells] == [f"{n}." for n in range(1, len(cells) + 1)]
    assert all(len(text.split()) > 2 for _, text in cells)
    assert len({case.page.pictures[name] for name, _ in cells}) == len(cells)
    copied = " ".join(text_of(pdf))
    assert sorted(cells, key=lambda cell: copied.index(cell[1])) == cells


@ON_LETTER
def test_every_move_is_said_in_order_and_its_picture_shows_it(case):
    """Only an opening or a turn is said with the move after it, whose picture begins where that one ends."""
    placed = case.page.instructions.placed
    assert [step for one in placed for step in one.steps] == list(folding_steps(case.sheet, case.said))
    assert {step.shows for one in placed for step in one.steps[:-1]} <= {Shows.OPEN, Shows.TURN}
    for one, (name, _) in zip(placed, cells_of(case.page), strict=True):
        scene = case.page.pictures[name]
        drawn = folding_picture(one.steps[-1], scene.width_mm, scene.height_mm)
        lines, expected = ([mark.meaning for mark in strokes(it, *Meaning)] for it in (scene, drawn))
        assert (one.name, scene.words, lines) == (name, drawn.words, expected)


@ON_LETTER
def test_each_move_begins_with_the_paper_that_the_one_before_left(case):
    told = folding_steps(case.sheet, case.said)
    assert told[0].state == open_sheet(case.sheet)
    for one, following in pairwise(told):
        if isinstance(one.step, Gather) or one.shows is Shows.HALVE:
            assert following.state == one.state
        else:
            assert following.state == perform(one.step, one.state)


def test_a_page_that_cuts_carries_the_caution_and_the_cut_in_its_legend_and_no_other_does(case, pdf):
    cuts = case.form in SLIT_BOXES | TRIMMED_SIDES
    copied = text_of(pdf)
    assert ["The rules of your school come first." in text for text in copied] == [cuts] + [False] * (
        len(copied) - 1
    )
    assert ("cut" in legend_of(case.page)) == cuts
    assert any(scissors_in(scene) for scene in case.page.pictures.values()) == cuts


def test_the_legend_names_the_lines_that_are_drawn_and_no_others(case):
    scenes = [case.page.pictures[name] for name, _ in cells_of(case.page)]
    drawn = {mark.meaning for scene in scenes for mark in strokes(scene, *Meaning)}
    samples = {"valley fold: over the top": Meaning.VALLEY, "mountain fold: behind": Meaning.MOUNTAIN}
    samples |= {"old crease": Meaning.CREASE, "cut": Meaning.CUT}
    assert legend_of(case.page) == [name for name, meaning in samples.items() if meaning in drawn]


@READ_CLOSELY
def test_nothing_is_printed_outside_the_usable_area_but_the_foot(case, pdf):
    for page in pages_of(pdf):
        area = usable_area(page)
        above = [
            mark
            for kind in ("chars", "lines", "curves", "rects")
            for mark in page[kind]
            if kind != "chars" or mark["top"] < area[3]
        ]
        assert above
        for mark in above:
            assert within((mark["x0"], mark["top"], mark["x1"], mark["bottom"]), area, by=0.5), mark


@READ_CLOSELY
def test_words_are_large_enough_for_the_look_and_only_the_legend_is_smaller(case, pdf):
    letters = [
        char
        for page in pages_of(pdf)
        for char in page["chars"]
        if char["text"].isalpha() and char["top"] < usable_area(page)[3]
    ]
    small = [char["text"] for char in letters if char["size"] < BODY_PT[case.look] - 0.05]
    legend = [letter for letter in "".join(legend_of(case.page)) if letter.isalpha()]
    assert sorted(small) == (sorted(legend) if LEGEND_PT[case.look] < BODY_PT[case.look] else [])
    assert min(char["size"] for char in letters) >= LEGEND_PT[case.look] - 0.05


@ON_LETTER
def test_a_form_is_held_together_as_its_last_pictures_show(case):
    told = [step.shows for step in folding_steps(case.sheet, case.said)]
    page = case.page.instructions
    assert (page.boxes, page.trims) == (SLIT_BOXES.get(case.form, 0), TRIMMED_SIDES.get(case.form, 0))
    match FORMS[case.form].holds:
        case Form.RING:
            after_cut = [shows for shows in told[told.index(Shows.CUT) :] if shows is not Shows.REFOLD]
            assert [shows for shows in after_cut[2:] if shows is not Shows.TURN] == CLOSING
        case Form.PLEAT:
            assert told[-1] is Shows.FAN
        case Form.SIGNATURE:
            assert (
                told[told.index(Shows.BACK_LEFT) :] == [Shows.BACK_LEFT, Shows.TRIM][: 1 + bool(page.trims)]
            )


@pytest.mark.parametrize("form", FORMS)
def test_a_signature_is_trimmed_with_scissors_on_every_side_that_is_still_folded(form):
    page = page_of(FORMS[form].landscape)
    trims = [one for one in page.instructions.placed if one.steps[-1].shows is Shows.TRIM]
    assert len(trims) == (form in TRIMMED_SIDES)
    for one in trims:
        assert len(strokes(page.pictures[one.name], Meaning.CUT)) == TRIMMED_SIDES[form]
        assert scissors_in(page.pictures[one.name]) == 1
        assert outside(page.pictures[one.name]) == []
        line = "lines" if TRIMMED_SIDES[form] > 1 else "line"
        assert cells_of(page)[-1][1] == f"{one.number}. Cut a thin strip off along the thick {line}."


@OPEN_SLITS
def test_a_slit_of_the_open_sheet_is_told_as_fold_cut_and_open(paper, said):
    told = steps_by(said, paper)
    cut = next(index for index, step in enumerate(told) if step.shows is Shows.CUT)
    assert [step.shows for step in told[cut - 1 : cut + 2]] == [Shows.FOLD, Shows.CUT, Shows.OPEN]
    assert [step.state.folds for step in told[cut - 1 : cut + 2]] == [0, 1, 1]
    assert Shows.CUT_INSIDE not in [step.shows for step in told]
    words = " ".join(words_of(page_of(said, paper)))
    assert "Open the sheet." in words[words.index("Cut from the folded edge") :]


@OPEN_SLITS
def test_a_slit_from_the_folded_edge_leaves_the_paper_that_the_lesson_slits(paper, said):
    """How the sheet creased may differ along the fold that is made again; what paper there is may not."""
    told = steps_by(said, paper)
    cut = next(index for index, step in enumerate(told) if step.shows is Shows.CUT)
    opened = perform(told[cut + 1].step, told[cut + 1].state)
    slit = after(open_sheet(paper), *map(parse_step, said[:-1]))
    assert paper_of(opened) == paper_of(slit)
    assert [line[:2] for line in opened.creases] == [line[:2] for line in slit.creases]
    assert booklet(opened) == booklet(slit)


@OPEN_SLITS
def test_the_cut_begins_at_an_edge_where_all_paper_is_folded(paper, said):
    cut = next(step for step in steps_by(said, paper) if step.shows is Shows.CUT)
    begins = ZERO if cut.step.start == ZERO else ONE
    assert begins in (cut.step.start, cut.step.end)
    side = cut.state.table.box.at(begins, begins)
    across = 0 if cut.step.axis is Axis.HEIGHT else 1
    edges = [
        edge
        for panel in cut.state.panels
        for edge, ends in zip(panel.edges, pairwise((*panel.lying, panel.lying[0])), strict=True)
        if all(end[across] == side[across] for end in ends)
    ]
    assert edges
    assert all(edge and edge.fold == 1 for edge in edges)
    picture = folding_picture(cut, 57, 38)
    assert scissors_in(picture) == 1
    assert outside(picture) == []


@OPEN_SLITS
def test_the_sheet_is_folded_behind_along_the_slit_with_its_printed_side_up(paper, said):
    halve = next(step for step in steps_by(said, paper) if step.shows is Shows.HALVE)
    assert halve.state.panels[0].placements[-1].printed_side_up
    carry = halve.state.panels[0].placements[-1].motion.carry
    cuts = [line for line in halve.state.creases if line.kind is Kind.CUT]
    assert cuts
    assert len({carry(end).y for line in cuts for end in line[:2]}) == 1
    scene = folding_picture(halve, 57, 38)
    levels = {spot.y for mark in strokes(scene, Meaning.CUT, Meaning.MOUNTAIN) for spot in mark.spots}
    assert max(levels) - min(levels) == pytest.approx(0, abs=0.01)
    assert strokes(scene, Meaning.CUT)
    assert strokes(scene, Meaning.MOUNTAIN)
    assert not strokes(scene, Meaning.VALLEY)


def test_a_turned_sheet_is_turned_back_before_it_is_closed():
    told = steps_by(TURNED)
    assert [step.written.text for step in told if step.shows is Shows.TURN][2:] == [
        "turn the sheet over",
        "turn the sheet right",
    ]
    assert shown_by(LEVEL)[-len(CLOSING) :] == CLOSING
    assert Shows.TURN not in shown_by(LEVEL)


def test_a_slit_that_is_not_in_the_middle_is_cut_as_it_was_said():
    told = steps_by(OFF_THE_MIDDLE)
    assert [step.shows for step in told[4:]] == [Shows.CUT_INSIDE, *CLOSING]
    page = page_of(OFF_THE_MIDDLE)
    assert [one.steps for one in page.instructions.placed] == [(step,) for step in told]
    assert page.instructions.cuts
    assert "Cut along the thick line, and no more." in " ".join(words_of(page))
    assert "Scissors:" in " ".join(words_of(page))


@pytest.mark.parametrize("k", [2, 3, 4, 5])
def test_six_columns_or_more_are_folded_as_a_fan_before_they_are_pushed(k):
    told = shown_by(ring_of(k))
    fan = [Shows.REFOLD] if k >= 3 else []
    assert told[-len(CLOSING) - len(fan) :] == [Shows.HALVE, *fan, *CLOSING[1:]]
    page = page_of(ring_of(k))
    words = " ".join(words_of(page))
    assert ("Fold the columns back and forth, like a fan." in words) == (k >= 3)
    assert ("The cut opens into a box." if k == 2 else f"The cut opens into {k - 1} boxes.") in words
    assert [sentence for text in words_of(page) for sentence in long_sentences(text)] == []


@pytest.mark.parametrize("form", FORMS)
def test_what_comes_after_the_sheet_is_gathered_is_passed_over(form):
    said = FORMS[form].landscape
    assert steps_by((*said, "open", "fold at 9/8 moving left")) == steps_by(said)
    assert page_of((*said, "open")).document == page_of(said).document


def test_shading_changes_no_paper_and_is_not_told():
    shaded = (*ACROSS, "shade 1 of 4 across", *LEVEL[-2:])
    assert shown_by(shaded) == shown_by(LEVEL)


@pytest.mark.parametrize("said", [(), ACROSS, LEVEL[:-1]])
def test_a_sheet_that_no_step_gathers_has_no_booklet_to_show(said):
    with pytest.raises(ValueError, match="no step gathers"):
        page_of(said)


@pytest.mark.parametrize(
    ("said", "refusal"),
    [
        ((*ACROSS, "slit at height 1/2 from 3/8 to 5/8", GATHER), SlitTooShort),
        ((*ACROSS, "slit at height 1/3 from 1/4 to 3/4", GATHER), StepRefused),
        (("fold left edge to 1/3", GATHER), StepRefused),
    ],
)
def test_a_sheet_that_cannot_be_folded_so_is_refused(said, refusal):
    with pytest.raises(refusal):
        page_of(said)


@pytest.mark.parametrize("look", [REGULAR, LARGE])
def test_openings_and_turns_are_said_with_the_move_after_them_where_pictures_would_be_too_many(look):
    page = page_of(MANY, look=look)
    assert len(steps_by(MANY)) > 12 >= len(page.instructions.placed)
    joined = [one.steps for one in page.instructions.placed if len(one.steps) > 1]
    said_with_another = {step.shows for steps in joined for step in steps[:-1]}
    assert said_with_another <= {Shows.OPEN, Shows.OPEN_LAST, Shows.TURN}
    assert [text.partition(" ")[0] for _, text in cells_of(page)][-1] == f"{len(cells_of(page))}."


@pytest.mark.parametrize("said", [MANY, OFF_THE_MIDDLE, TURNED], ids=["many", "off the middle", "turned"])
def test_moves_that_no_form_has_are_told_in_short_sentences_of_common_words_too(said):
    for text in words_of(page_of(said)):
        assert long_sentences(text) == ()
        assert uncommon_words(text, common_words()) == ()
