"""The editable copy: worksheets and keys as Word files, read back."""

import re
from io import BytesIO
from pathlib import Path
from zipfile import ZipFile

import docx
import pytest
from docx.oxml.ns import qn
from pages.worded import BLANK, fractions_of, words_of

from foldmath.cli import main
from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.making.editable import EDITABLE, word_files
from foldmath.making.order import proved_lesson
from foldmath.making.papers import papers
from foldmath.pages.editable.inline import Setting, write_runs
from foldmath.pages.looks import REGULAR
from foldmath.pages.markup.blocks import Stack, Text, pictures_in
from foldmath.pages.markup.reading import blocks_of
from foldmath.pages.pdf.styles import style_sheet

LESSON = Path("lessons/seed-trays.toml")
MATH = "{http://schemas.openxmlformats.org/officeDocument/2006/math}"
TALL = {f"{MATH}{name}" for name in ("f", "d", "sSup")}


@pytest.fixture(scope="module")
def documents():
    proved, pages = proved_lesson(LESSON)
    return papers(proved, pages, REGULAR, EDITABLE).documents


@pytest.fixture(scope="module")
def files():
    proved, pages = proved_lesson(LESSON)
    with PictureProcess() as pictures:
        return word_files(proved, pages, REGULAR, pictures)


def opened(content: bytes):
    return docx.Document(BytesIO(content))


def read_out(node) -> str:
    """Read a part of a Word file out: its words, and each fraction as one word."""
    if node.tag == f"{MATH}f":
        above, below = (
            "".join("".join(node.find(f"{MATH}{part}").itertext()).split()) for part in ("num", "den")
        )
        return f" {above}/{below} "
    if node.tag in (qn("w:t"), f"{MATH}t"):
        return node.text or ""
    inside = "".join(read_out(child) for child in node)
    return f"{inside} " if node.tag in (qn("w:p"), qn("w:br")) else inside


def words_in(content: bytes) -> list[str]:
    return read_out(opened(content).element.body).replace("\u00a0", " ").split()


def test_there_is_one_file_for_each_worksheet_and_each_key(files, documents):
    assert set(files) == {name.replace(".pdf", ".docx") for name in documents}
    assert len(files) == 6


def test_every_word_and_fraction_of_the_page_stands_in_it_in_the_same_order(files, documents):
    for name, document in documents.items():
        expected = words_of(blocks_of(document.html), answers=document.answers)
        written = words_in(files[name.replace(".pdf", ".docx")])
        assert "".join(written) == "".join(expected), name


def test_fractions_are_equations_that_can_be_changed(files, documents):
    for name, document in documents.items():
        body = opened(files[name.replace(".pdf", ".docx")]).element.body
        fractions = [read_out(node).strip() for node in body.iter(f"{MATH}f")]
        assert fractions == fractions_of(blocks_of(document.html), answers=document.answers), name


def test_what_pupils_write_is_blank_in_a_worksheet_and_filled_in_its_key(files):
    assert f"{BLANK}/{BLANK}" in words_in(files["worksheet.docx"])
    assert BLANK not in "".join(words_in(files["answer-key.docx"]))


def test_every_picture_has_both_its_forms_and_says_what_it_shows(files, documents):
    for name, document in documents.items():
        content = files[name.replace(".pdf", ".docx")]
        pictures = list(opened(content).element.body.iter(qn("wp:docPr")))
        assert len(pictures) == len(list(pictures_in(blocks_of(document.html)))) > 0
        assert all(picture.get("descr") for picture in pictures)
        with ZipFile(BytesIO(content)) as parts:
            body = parts.read("word/document.xml").decode()
            related = parts.read("word/_rels/document.xml.rels").decode()
        svgs = re.findall(r'svgBlip[^>]* r:embed="(\w+)"', body)
        targets = dict(re.findall(r'Id="(\w+)"[^>]*Target="([^"]+)"', related)) | {
            key: value for value, key in re.findall(r'Target="([^"]+)"[^>]*Id="(\w+)"', related)
        }
        assert len(svgs) == len(pictures)
        assert all(targets[svg].endswith(".svg") for svg in svgs)


def test_pictures_are_fine_enough_for_print(files):
    from PIL import Image

    with ZipFile(BytesIO(files["worksheet.docx"])) as parts:
        names = [name for name in parts.namelist() if name.endswith(".png")]
        assert names
        for name in names:
            across, up = Image.open(BytesIO(parts.read(name))).info["dpi"]
            assert round(across) == round(up) == 300


def test_the_title_and_the_language_are_known_to_programs_that_read_it_aloud(files):
    word = opened(files["worksheet.docx"])
    assert word.core_properties.title == "Seed trays"
    assert word.core_properties.language == "en-US"
    assert word.styles.element.find(f".//{qn('w:rPrDefault')}//{qn('w:lang')}").get(qn("w:val")) == "en-US"
    assert [p.text for p in word.paragraphs if p.style.name == "Heading 1"] == ["Seed trays"]


def test_rows_of_a_tables_head_stand_again_on_the_next_page(files):
    folds = opened(files["worksheet.docx"]).tables[2]
    repeated = [row._tr.find(f".//{qn('w:tblHeader')}") is not None for row in folds.rows]
    assert repeated == [True, *[False] * (len(repeated) - 1)]


def test_the_same_lesson_gives_the_same_bytes(files):
    proved, pages = proved_lesson(LESSON)
    with PictureProcess() as pictures:
        assert word_files(proved, pages, REGULAR, pictures) == files


def test_make_puts_the_copy_into_a_folder_of_its_own_beside_the_pages(tmp_path, capsys):
    assert main(["make", str(LESSON), "--editable", "--out", str(tmp_path)]) == 0
    made = tmp_path / "seed-trays"
    assert (made / "worksheet.pdf").is_file()
    assert sorted(path.name for path in (made / "editable").glob("*.docx")) == [
        "answer-key-guided.docx",
        "answer-key-stretch.docx",
        "answer-key.docx",
        "worksheet-guided.docx",
        "worksheet-stretch.docx",
        "worksheet.docx",
    ]


@pytest.mark.parametrize("other", [["--only", "worksheet"], ["--pupils", "3"]])
def test_the_copy_is_of_the_whole_lesson_and_not_asked_for_with_a_part_or_a_class(other, capsys):
    with pytest.raises(SystemExit) as stopped:
        main(["make", str(LESSON), "--editable", *other])
    assert stopped.value.code == 2


def test_brackets_that_touch_a_fraction_are_as_high_as_it_and_others_are_letters():
    paragraph = docx.Document().add_paragraph()
    half = Stack((Text("1"),), (Text("2"),))
    runs = (Text("Find ("), half, Text(")³ and ("), half, Text(") and (not "), half, Text(")."))
    write_runs(paragraph, runs, Setting(13.0, answers=False, sheet=style_sheet(REGULAR)))
    equations = [
        [node.tag.removeprefix(MATH) for node in equation.iter() if node.tag in TALL]
        for equation in paragraph._p.iter(f"{MATH}oMath")
    ]
    assert equations == [["sSup", "d", "f"], ["d", "f"], ["f"]]
    assert "".join(paragraph._p.find(f".//{MATH}sup").itertext()) == "3"
    assert [run.text for run in paragraph.runs] == ["Find ", " and ", " and (not ", ")."]
