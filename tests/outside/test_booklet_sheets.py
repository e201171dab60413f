"""Printed sheets against published imposition: page numbers read off the PDF by pdfplumber alone.

Sources:
    One slit, 8 pages, printed on one side: with the sheet on its long side, the top row upside down, there
    are two layouts up to turning the sheet round: 7 6 5 4 over 8 1 2 3, and 5 4 3 2 over 6 7 8 1 (worked
    out from the facing pairs; common practice; slit as in mothwomanpress.blogspot.com/2012/12).
    4 pages: outside 4 | 1, inside 2 | 3 (vesterkopi.dk; docs.hornpenguin.com).
    8 pages: front r5 r4 / 8 1, back r3 r6 / 2 7, r for upside down (metacpan.org,
    PDF::Imposition::Schemaea4x4, sheet 1).
    Flipping a sheet about its long edge turns the printed back upside down if it lies on that edge.
"""

from io import BytesIO

import pdfplumber
import pytest
from booklet_reading import papers_of, planned, undrawn

from foldmath.booklets.papers import printed_booklet

NUMBER_PT = 9


def numbers_on_sides(form: str, paper: str, orientation: str = "landscape") -> list[list[str]]:
    """Give, for each side, the rows of page numbers as they stand on it, an r before those upside down."""
    papers = papers_of(planned((), form, paper, orientation))
    with pdfplumber.open(BytesIO(printed_booklet(papers, undrawn(papers), False))) as document:
        return [rows_of(page) for page in document.pages]


def rows_of(page) -> list[str]:
    rows: dict[bool, list[tuple[float, str]]] = {}
    for char in page.chars:
        assert round(char["size"]) == NUMBER_PT
        sign = "r" if char["matrix"][0] < 0 else ""
        rows.setdefault(char["top"] < float(page.height) / 2, []).append((char["x0"], sign + char["text"]))
    return [" ".join(text for _, text in sorted(rows[top])) for top in sorted(rows, reverse=True)]


def turned_round(rows: list[str]) -> list[str]:
    """Turn a side by half."""
    return [
        " ".join(number[1:] if number.startswith("r") else f"r{number}" for number in reversed(row.split()))
        for row in reversed(rows)
    ]


@pytest.mark.parametrize("paper", ["letter", "A4", "tabloid"])
class TestSheets:
    def test_one_slit_makes_one_of_the_two_layouts(self, paper):
        (side,) = numbers_on_sides("eight-page", paper)
        layouts = [["r7 r6 r5 r4", "8 1 2 3"], ["r5 r4 r3 r2", "6 7 8 1"]]
        assert side in layouts or turned_round(side) in layouts

    def test_one_fold_has_pages_4_and_1_outside_and_2_and_3_inside(self, paper):
        inside, outside = numbers_on_sides("four-page", paper)
        assert inside == ["2 3"]
        assert turned_round(outside) == ["4 1"]

    def test_two_folds_make_the_published_signature(self, paper):
        sides = numbers_on_sides("eight-page-signature", paper, "portrait")
        front, back = ["r5 r4", "8 1"], ["r3 r6", "2 7"]
        tables = [[front, back], [back, front]]
        assert sides in tables or [turned_round(side) for side in sides] in tables
