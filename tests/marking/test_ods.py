"""Spreadsheets in OpenDocument: cells stay text, and what was written is read."""

import io
import zipfile

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foldmath.lesson.files.spreadsheet import TableRefused
from foldmath.marking.reading.ods import MIME_TYPE, is_ods, ods, read_ods

ROWS = [["empty", "right"], ["pupil", "1", "2"], ["asks", "2/3 × 4/5", 'a "b" < c & d'], ["Zoë", "", "8/15"]]


def fields(content: bytes) -> list[list[str]]:
    return [list(row.fields) for row in read_ods(content, "answers.ods").rows]


def test_what_is_written_is_read():
    content = ods(ROWS, "answers", [40, 20, 20])
    assert is_ods(content)
    assert fields(content) == ROWS


def test_the_same_rows_give_the_same_bytes():
    assert ods(ROWS, "answers", [40, 20, 20]) == ods(ROWS, "answers", [40, 20, 20])


def test_every_cell_is_text_and_so_is_every_cell_below():
    with zipfile.ZipFile(io.BytesIO(ods(ROWS, "answers", [40, 20, 20]))) as parts:
        content = parts.read("content.xml").decode()
        first = parts.infolist()[0]
    # OpenDocument 1.3, part 2, section 3.3: the type stands first and unpacked.
    assert (first.filename, first.compress_type) == ("mimetype", zipfile.ZIP_STORED)
    assert content.count("office:value-type") == content.count('office:value-type="string"') > 0
    assert content.count("default-cell-style-name") == 3


plain_words = st.text(st.characters(codec="utf-8", exclude_categories=["C", "Z"]), max_size=8)


@settings(max_examples=20, deadline=None)
@given(st.lists(st.lists(plain_words, min_size=1, max_size=5), min_size=1, max_size=5))
def test_any_words_come_back(rows):
    def trimmed(row: list[str]) -> list[str]:
        while row and not row[-1]:
            row = row[:-1]
        return row

    kept = [trimmed(row) for row in rows]
    assert fields(ods(rows, "any", [20] * 5)) == [row for row in kept if row]


def test_a_line_is_counted_where_rows_before_it_are_empty():
    rows = read_ods(ods([["a"], [""], [""], ["b"]], "gaps", [20]), "gaps.ods").rows
    assert [row.line for row in rows] == [1, 4]


@pytest.mark.parametrize(
    "content", [b"PK\x03\x04 no more of it", b"", b"pupil,1,2"], ids=["cut off", "empty", "text"]
)
def test_a_damaged_file_is_refused(content):
    with pytest.raises(TableRefused, match="damaged"):
        read_ods(content, "answers.ods")


def test_a_file_that_unpacks_to_a_hundred_times_its_size_is_refused():
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as parts:
        parts.writestr("mimetype", MIME_TYPE)
        parts.writestr("content.xml", b" " * (65 * 1024 * 1024))
    with pytest.raises(TableRefused, match="larger"):
        read_ods(packed.getvalue(), "answers.ods")
