"""A guide sheet tells those who hear it what it shows: which lines, marks and cuts, and where."""

import pytest
from conftest import LESSONS
from lessons_in_words import EIGHTHS, proved
from tag_reading import heard

from foldmath.guides import guide_sheets
from foldmath.making import proved_lesson

CUT = ("slit at height 1/2 from 1/4 to 3/4",)
EXACT = "The sheet at its exact size, with "


def told(lesson, tmp_path):
    """Give what is heard of the sheets at exact scale, each text once, in the order of the pages."""
    path = tmp_path / "templates.pdf"
    path.write_bytes(guide_sheets(lesson, "letter"))
    figures = [figure.alternate for figure in heard(path).all("Figure")]
    return list(dict.fromkeys(text for text in figures if "at its exact size" in text))


def test_fold_lines_are_told_under_the_numbers_of_their_folds_and_marks_by_their_edges(tmp_path):
    assert told(proved_lesson(LESSONS / "tile-panels.toml")[0], tmp_path) == [
        f"{EXACT}its numbered fold lines: fold 1, creases at 1/3 and 2/3 of the width; "
        "fold 2, creases at 1/5, 2/5, 3/5 and 4/5 of the height.",
        f"{EXACT}marks: the bottom edge and the top edge at 1/3 and 2/3 from the left; "
        "the left edge and the right edge at 1/5, 2/5, 3/5 and 4/5 from the bottom; "
        "a cross in the middle of the sheet.",
        "The back of the sheet at its exact size: the same marks, right behind those on the front.",
    ]


def test_a_cut_is_told_from_where_to_where_it_runs(tmp_path):
    assert told(proved(*EIGHTHS, "open", *CUT), tmp_path)[-1] == (
        f"{EXACT}its folds as thin lines and a thick line to cut: "
        "from the point 1/4 across and 1/2 up to the point 3/4 across and 1/2 up."
    )


def test_edges_whose_marks_differ_are_told_apart_and_an_unmarked_middle_is_not_told(tmp_path):
    marks = told(proved("fold (0, 0) to (1/2, 1)"), tmp_path)[1]
    assert "the bottom edge and the top edge" not in marks
    assert " at 1/2 from" not in marks


@pytest.mark.parametrize(("parts", "words"), [(12, "1/12, 1/6, 1/4"), (24, "23 places, from 1/24 to 23/24,")])
def test_up_to_eleven_places_are_told_one_by_one(parts, words, tmp_path):
    fans = {12: ("pleat width into 12",), 24: ("fold left edge to right edge", "pleat width into 12")}
    assert words in told(proved(*fans[parts]), tmp_path)[1]
