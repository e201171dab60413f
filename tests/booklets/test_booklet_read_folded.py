"""Folded, a printed booklet reads upright and in order: every letter is taken back through the model."""

from collections import Counter

import pytest
from booklet_reading import (
    FORMS,
    PAPERS,
    Folded,
    as_mm,
    booklet_from,
    carried,
    paper_sheet,
    papers_of,
    planned,
    read_back,
    undrawn,
)
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from foldmath.booklets.imposing import EDGE_MM, FOLD_MM
from foldmath.booklets.papers import printed_booklet
from foldmath.booklets.sheet_marks import STAR_INSET_MM
from foldmath.drawing.stars import PICTURE_STAR_MM
from foldmath.lesson.booklet.forms import all_forms
from foldmath.lesson.booklet.plan import (
    CreasesPicture,
    Frame,
    Heading,
    Lines,
    PlannedPage,
    Prompt,
    RecordProduct,
    Title,
)
from foldmath.paper.booklet.booklet import Face, Form, Meeting
from foldmath.paper.booklet.gathering import gather
from foldmath.paper.lengths import MILLIMETRES
from foldmath.paper.moments.performing import perform
from foldmath.paper.state import open_sheet
from foldmath.paper.steps import Gather
from foldmath.plane.motions import Motion
from foldmath.statements.products import parse_product

UPRIGHT = pytest.approx((1, 0, 0, 1), abs=1e-6)
HAIR_MM = 0.05
MIDDLE_MM = 0.5
"""A letter in the very middle lies in one place whichever way its page is turned over."""

DESCENT_MM = 1.2
"""Letters may hang so far below the line they stand on."""

WORDS = ("garden", "boat", "tiles", "seeds", "ropes", "sails", "beans", "clay")


def page_words(number: int) -> str:
    return f"{WORDS[number % len(WORDS)]} {'abcdefghijklmnop'[number - 1]}"


def named_pages(count: int) -> tuple[PlannedPage, ...]:
    return tuple(
        PlannedPage((Heading(page_words(number)), Prompt("I saw"), Lines())) for number in range(1, count + 1)
    )


def folded_booklet_of(form: str, paper: str, orientation: str) -> Folded:
    count = all_forms()[form].pages
    return read_back(papers_of(planned(named_pages(count), form, paper, orientation)))


CASES = [
    *((form, "letter", "landscape") for form in FORMS),
    *((form, "A4", "portrait") for form in FORMS),
    ("eight-page", "tabloid", "landscape"),
    ("twelve-page", "tabloid", "portrait"),
    ("eight-page", "construction 9 x 12", "portrait"),
    ("sixteen-page-signature", "construction 9 x 12", "landscape"),
    ("four-page", "tabloid", "portrait"),
    ("eight-panel", "A4", "landscape"),
]


@pytest.fixture(scope="module", params=CASES, ids="-".join)
def folded(request) -> Folded:
    return folded_booklet_of(*request.param)


def assert_upright_and_inside(folded: Folded):
    """Hold every mark to its page's margins: letters by their own room, lines and boxes by their ends."""
    made, unit = folded.papers.layout.plan.booklet, as_mm(MILLIMETRES[folded.papers.layout.sheet.unit])
    width, height = as_mm(made.width) * unit, as_mm(made.height) * unit
    for letter in folded.letters:
        scale = letter.turned[0]
        assert tuple(part / scale for part in letter.turned) == UPRIGHT
        assert scale > 0
    for mark in (*folded.letters, *folded.boxes, *folded.lines):
        assert mark.left >= FOLD_MM - HAIR_MM, mark
        assert mark.right <= width - FOLD_MM + HAIR_MM, mark
        assert mark.bottom >= FOLD_MM - HAIR_MM - (DESCENT_MM if mark.text else 0), mark
        assert mark.top <= height - FOLD_MM + HAIR_MM + (DESCENT_MM if mark.text else 0), mark


def test_every_page_reads_upright_inside_its_margins(folded):
    assert len(folded.letters) > 20
    assert_upright_and_inside(folded)


def test_every_page_has_its_own_words_and_its_number_at_its_foot(folded):
    count = len(folded.papers.layout.plan.booklet.pages)
    for number in range(1, count + 1):
        assert folded.text(number).startswith(page_words(number).replace(" ", ""))
        assert folded.text(number).endswith(f"Isaw{number}")


def test_the_pages_of_an_opening_face_each_other(folded):
    """A hinged page's words lie at the right of, or below, those of the page that it faces, upright."""
    made = folded.papers.layout.plan.booklet
    unit = as_mm(MILLIMETRES[folded.papers.layout.sheet.unit])
    width, height = as_mm(made.width) * unit, as_mm(made.height) * unit
    hinged = [opening for opening in made.openings if opening.meeting is Meeting.HINGED]
    assert hinged
    for opening in hinged:
        left, right = made.page(opening.left), made.page(opening.right)
        assert left.face is right.face
        for letter in (letter for letter in folded.letters if letter.page == right.number):
            x, y = carried(left.motion, *letter.on_sheet, unit)
            beside = width < x < 2 * width and 0 < y < height
            below = 0 < x < width and -height < y < 0
            assert below if made.form is Form.PLEAT and not beside else beside


def test_facing_pages_follow_each_other_with_even_numbers_at_the_left(folded):
    made = folded.papers.layout.plan.booklet
    count = len(made.pages)
    if made.form is Form.PLEAT:
        assert [(opening.left, opening.right) for opening in made.openings if opening.right <= count // 2]
        assert all(opening.right == opening.left + 1 for opening in made.openings)
    else:
        pairs = [(number, number + 1) for number in range(2, count, 2)]
        assert [(opening.left, opening.right) for opening in made.openings] == pairs


def test_in_the_closed_booklet_front_pages_read_upright_from_above_and_back_pages_from_beneath(folded):
    made, sheet = folded.papers.layout.plan.booklet, folded.papers.layout.sheet
    unit = as_mm(MILLIMETRES[sheet.unit])
    width, height = as_mm(made.width) * unit, as_mm(made.height) * unit
    closed = closed_paper(folded)
    cover = made.page(1)
    home = Undoing(closed.panels[cover.panel].placements[-1].motion, cover.motion)
    for letter in folded.letters:
        page = made.page(letter.page)
        if abs(carried(page.motion, *letter.on_sheet, unit)[0] - width / 2) < MIDDLE_MM:
            continue
        laid = closed.panels[page.panel].placements[-1].motion
        x, y = home.carry(laid, *letter.on_sheet, unit)
        assert -HAIR_MM < x < width + HAIR_MM
        assert -HAIR_MM < y < height + HAIR_MM
        seen = carried(page.motion, *letter.on_sheet, unit)
        faces_up = (x, y) == pytest.approx(seen, abs=HAIR_MM)
        turned_over = [(width - seen[0], seen[1]), (seen[0], height - seen[1])]
        if made.form is not Form.PLEAT:
            assert faces_up is (page.number % 2 == 1)
            turned_over = turned_over[:1]
        assert faces_up or any((x, y) == pytest.approx(place, abs=HAIR_MM) for place in turned_over)


def closed_paper(folded: Folded):
    plan, state = folded.papers.layout.plan, open_sheet(folded.papers.layout.sheet)
    for step in (written.step for written in plan.steps):
        if isinstance(step, Gather):
            return gather(state, step.column)
        state = perform(step, state)
    raise AssertionError("a booklet's steps end with gathering")


class Undoing:
    """From paper on the table to the cover as it is read: undoes how the cover lies, and turns it upright."""

    def __init__(self, laid: Motion, upright: Motion) -> None:
        self.laid, self.upright = laid, upright

    def carry(self, motion: Motion, x: float, y: float, unit: float) -> tuple[float, float]:
        """Carry a point of the sheet by its own motion, then home."""
        x, y = carried(motion, x, y, unit)
        x, y = x - as_mm(self.laid.x) * unit, y - as_mm(self.laid.y) * unit
        c, s = as_mm(self.laid.c), as_mm(self.laid.s)
        back = (c * x + s * y, c * y - s * x) if self.laid.upright else (c * x + s * y, s * x - c * y)
        return carried(self.upright, *back, unit)


# The sheet.


@pytest.mark.parametrize("orientation", ["landscape", "portrait"])
@pytest.mark.parametrize("paper", PAPERS)
def test_the_pdfs_page_is_the_sheet_at_its_own_size(paper, orientation):
    sheet = paper_sheet(paper, orientation)
    unit = as_mm(MILLIMETRES[sheet.unit])
    made = read_back(papers_of(planned(named_pages(8), "eight-page", paper, orientation)))
    assert made.sides == (
        (
            pytest.approx(as_mm(sheet.width) * unit, abs=1e-3),
            pytest.approx(as_mm(sheet.height) * unit, abs=1e-3),
        ),
    )


@pytest.mark.parametrize(
    ("paper", "orientation", "page"),
    [
        ("A5", "landscape", (210, 297)),
        ("A5", "portrait", (297, 210)),
        ("half-letter", "landscape", (215.9, 279.4)),
        ("half-letter", "portrait", (279.4, 215.9)),
        ("B5", "landscape", (297, 210)),
        ("origami 15 cm", "portrait", (210, 297)),
    ],
)
def test_a_smaller_sheet_lies_on_the_printers_page_so_that_the_fewest_edges_are_cut(paper, orientation, page):
    made = read_back(papers_of(planned(named_pages(4), "four-page", paper, orientation)))
    assert made.sides == (pytest.approx(page, abs=0.01),) * 2
    assert any("cut along its frame" in str(note) for note in made.papers.notes)
    assert_upright_and_inside(made)


def test_forms_with_pages_on_the_back_have_two_sides_and_others_one():
    for form in FORMS:
        made = booklet_from(form, "letter", "landscape")
        backs = Counter(page.face for page in made.pages)[Face.BACK]
        folded = folded_booklet_of(form, "letter", "landscape")
        assert len(folded.sides) == (2 if backs else 1)
        assert any("flip on the long edge" in str(note) for note in folded.papers.notes) is bool(backs)


def test_the_same_booklet_gives_the_same_bytes():
    papers = papers_of(planned(named_pages(8)))
    assert printed_booklet(papers, undrawn(papers), False) == printed_booklet(papers, undrawn(papers), False)


# Any pages.

contents = st.one_of(
    st.sampled_from(WORDS).map(Heading),
    st.lists(st.sampled_from(WORDS), min_size=1, max_size=6).map(lambda words: Prompt(" ".join(words))),
    st.sampled_from([Lines(), Lines(2), Frame(), Frame("Draw it."), CreasesPicture(), Title("My booklet")]),
    st.sampled_from(["2/3 × 4/5", "1/2 of 1/4", "3 × 2/5"]).map(
        lambda text: RecordProduct(text, parse_product(text))
    ),
)
page_sets = st.lists(
    st.lists(contents, max_size=4).map(lambda contents: PlannedPage(tuple(contents))), min_size=1, max_size=8
).map(tuple)


@settings(max_examples=12, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    page_sets,
    st.sampled_from(["eight-page", "eight-panel", "eight-page-signature", "twelve-page"]),
    st.sampled_from(PAPERS),
    st.sampled_from(["landscape", "portrait"]),
    st.booleans(),
)
def test_any_pages_lie_upright_inside_their_margins_with_nothing_past_them(
    pages, form, paper, orientation, answers
):
    papers = papers_of(planned(pages, form, paper, orientation))
    folded = read_back(papers, answers=answers)
    assert_upright_and_inside(folded)
    for number, laid in enumerate(papers.layout.pages, start=1):
        assert folded.text(number).endswith(str(number))
        room = laid.content.room
        top = laid.imposed.foot_mm + room.height_mm
        assert all(mark.top <= top + DESCENT_MM for mark in folded.letters if mark.page == number)
        assert laid.fit.kept == len(laid.planned.contents) or any(
            str(note).find(f"Page {number} has too much") >= 0 for note in papers.notes
        )


def test_margins_are_wider_at_the_sheets_own_edges():
    assert EDGE_MM > FOLD_MM >= 5
    papers = papers_of(planned(named_pages(8)))
    edges = {
        side: [getattr(page.imposed.margins, side) for page in papers.layout.pages]
        for side in ("left", "right", "top", "bottom")
    }
    assert edges["bottom"] == [EDGE_MM] * 8
    assert edges["top"] == [FOLD_MM] * 8
    assert sorted(edges["left"] + edges["right"]) == [FOLD_MM] * 12 + [EDGE_MM] * 4


def test_nothing_is_printed_on_the_star_in_the_sheets_corner(folded):
    made = folded.papers.layout.plan.booklet
    corner = range(int(STAR_INSET_MM - PICTURE_STAR_MM), int(STAR_INSET_MM + PICTURE_STAR_MM) + 1)
    for mark in (*folded.letters, *folded.lines):
        if made.page(mark.page).face is Face.PRINTED:
            assert not all(int(place) in corner for place in mark.on_sheet), mark
