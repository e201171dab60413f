"""Lists of distances and strip rulers, read back from the printed page."""

import re
from fractions import Fraction

import pytest
from guide_reading import (
    MEASURED,
    MM,
    READERS,
    TIGHT,
    document,
    fraction,
    nearest_sixteenth,
    printed_case,
    proved_case,
)

from foldmath.drawing.scenes import Meaning
from foldmath.guides.marks.guide_sheet import guides
from foldmath.guides.reading.distances import edge_lists
from foldmath.guides.reading.strips import longest_piece, strip_pieces
from foldmath.paper.lengths import MILLIMETRES
from foldmath.paper.steps import Edge

measured = pytest.mark.parametrize("case", MEASURED.values(), ids=MEASURED)
read = pytest.mark.parametrize("lines_of", READERS.values(), ids=READERS)


@measured
@read
def test_ticks_on_the_strips_lie_where_the_model_says(case, lines_of):
    shown = guides(proved_case(case))
    pieces = list(strip_pieces(shown, longest_piece(case.page_paper)))
    pdf = printed_case(case)
    pages = [
        number
        for number, page in enumerate(document(pdf), start=1)
        if number > 1 and page["width"] > page["height"]
    ]
    for number in pages:
        lines = lines_of(pdf, number)
        tops = sorted(
            {
                max(line.start[1], line.end[1])
                for line in lines
                if line.drawn_as(Meaning.SHEET_EDGE)
                and line.length == pytest.approx(30, abs=TIGHT)
                and line.start[0] == pytest.approx(8, abs=TIGHT)
            },
            reverse=True,
        )
        for top in tops:
            piece = pieces.pop(0)
            found = sorted(
                line.start[0] - 8
                for line in lines
                if line.length == pytest.approx(8, abs=TIGHT)
                and line.start[1] == pytest.approx(top, abs=TIGHT)
            )
            wanted = [float(fraction(mark.distance - piece.start)) for mark in piece.marks]
            assert found == pytest.approx(wanted, abs=TIGHT)
    assert pieces == []


@measured
def test_the_list_says_share_millimetres_inches_and_the_exact_length_of_every_mark(case):
    paper = proved_case(case).lesson.sheet
    pages = document(printed_case(case))[1:]
    rows = [row for page in pages if page["height"] > page["width"] for row in rows_of(page)]
    wanted = []
    for listed in edge_lists(guides(proved_case(case))):
        side = paper.width if listed.edges[0] in (Edge.BOTTOM, Edge.TOP) else paper.height
        length = fraction(side) * fraction(MILLIMETRES[paper.unit])
        for mark in listed.marks:
            distance = fraction(mark.at) * length
            inches = nearest_sixteenth(distance)
            figures = figures_of(inches)
            exactly = figures_of(distance / fraction(MILLIMETRES[paper.unit]))
            tenths = int(distance * 10 + Fraction(1, 2))
            wanted.append((fraction(mark.at), f"{tenths // 10}.{tenths % 10}", figures, exactly))
    assert rows == wanted


def figures_of(number):
    """Give what is read of a mixed number with a stacked fraction in lowest terms."""
    whole, part = divmod(number, 1)
    return sorted([str(whole)] * bool(whole) + [str(part.numerator), str(part.denominator)] * bool(part))


def rows_of(page):
    """Read the rows of a list: by the millimetres in each, what stands in the columns beside them."""
    for word in page["words"]:
        across = word["x0"] / MM - 18
        if re.fullmatch(r"\d+\.\d", word["text"]) and 30 < across < 50 and "start" not in word["text"]:
            row = [
                other
                for other in page["words"]
                if abs((other["top"] + other["bottom"] - word["top"] - word["bottom"]) / 2) < 4.5 * MM
            ]
            share = sorted((w for w in row if w["x0"] / MM - 18 < 16), key=lambda w: w["top"])
            if len(share) != 2:
                continue
            inches, exactly = (
                sorted(w["text"] for w in row if low < w["x0"] / MM - 18 < high)
                for low, high in ((55, 95), (100, 130))
            )
            yield Fraction(int(share[0]["text"]), int(share[1]["text"])), word["text"], inches, exactly
