"""Printed files of every kind against the rules of PDF/UA-1 (ISO 14289-1:2014) that a program can check.

Source: the 104 rules of ``page-validation`` (github.com/josephbarbierdarnal/page), which passes the test
files of the veraPDF corpus.
"""

import ast
import csv
import re
from datetime import date

import pikepdf
import pytest
from conftest import FILES, LESSONS, in_silence
from page import validate_pdf
from tag_reading import heard
from test_house import MODULES, tree
from trial_classes import chooser_of, class_set

from foldmath.guides.parts_page import parts_page
from foldmath.lesson.roster import Pupil
from foldmath.making import Order, Part, make, proved_lesson
from foldmath.making.classes.class_set import BATCH
from foldmath.making.marks import MarkOrder, blank_sheet, history, mark
from foldmath.marking.reading.sheet import written_csv
from foldmath.pages.printing import printed
from foldmath.paper.sizes import paper_named, sheet
from foldmath.paper.steps import Axis
from foldmath.plane.numbers import exact
from foldmath.planning.parts.equal_parts import ways
from foldmath.statements.items import Level

RULES = 104
LESSON = LESSONS / "seed-trays.toml"
BOOKLET = LESSONS / "part-of-a-part.toml"
PUPILS = tuple(
    Pupil(f"Pupil {n}", tuple(Level)[n % 3], language="es" if n == 1 else "") for n in range(BATCH + 1)
)
"""One more than a batch, so that files are joined; one reads another language."""


def failures(path):
    report = validate_pdf(path, profile="ua1")
    assert report.rules.total == RULES
    return {(failure.rule_id, failure.message) for failure in report.failures}


@pytest.mark.parametrize("name", FILES)
def test_no_rule_fails_in_any_file_of_a_lesson(pages, name):
    assert failures(pages.folder / name) == set()


def class_files(crew, picture_process):
    proved, _ = proved_lesson(LESSON)
    made = class_set(chooser_of(proved, picture_process), PUPILS, crew, in_silence)
    return {"class-worksheets.pdf": made.worksheets, "class-key.pdf": made.key}


def mark_files(out, picture_process):
    sheet_written = blank_sheet(LESSON, lambda: PUPILS[:3], own_numbers=False)(".csv").decode("utf-8-sig")
    rows = list(csv.reader(sheet_written.splitlines()))
    heads = next(row for row in rows if "1" in row)
    for row in rows:
        if row[0] == PUPILS[0].label:
            row[heads.index("1")] = "22/15"
    answers = out / "answers.csv"
    answers.write_bytes(written_csv(rows))
    made = mark(
        LESSON, MarkOrder(answers=answers, out=out, day=date(2026, 11, 29)), None, picture_process, in_silence
    )
    return [*made.files, *history(out, "letter", "en-US", picture_process).files]


def parts_file(out, picture_process):
    found = ways(sheet(paper_named("letter"), "landscape"), 5, Axis.WIDTH, exact(1))
    page = parts_page(found, "letter", "letter", "en-US")
    drawn = picture_process.recordings(list(page.pictures.values())).result()
    pictures = dict(zip(page.pictures, drawn, strict=True))
    (out / "parts.pdf").write_bytes(printed([page.document], pictures, page.title, "en-US", page.look))
    return out / "parts.pdf"


@pytest.fixture(scope="module")
def documents(once, crew, picture_process):
    """Give a document of every kind by its name: in Spanish those of a lesson with a booklet."""
    return once("documents", lambda out: documents_in(out, crew, picture_process))


def documents_in(out, crew, picture_process):
    spanish = Order(out=out, paper="A4", languages=("es",))
    files = [*make(BOOKLET, spanish, picture_process, in_silence).files]
    files += [*mark_files(out, picture_process), parts_file(out, picture_process)]
    for name, content in class_files(crew, picture_process).items():
        (out / name).write_bytes(content)
        files.append(out / name)
    large = Order(out=out, look="large", parts=frozenset({Part.WORKSHEET}))
    (page,) = (
        path
        for path in make(LESSON, large, picture_process, in_silence).files
        if path.name == "worksheet-guided.pdf"
    )
    return {path.name: path for path in files if path.suffix == ".pdf"} | {"large print": page}


def names_in_the_program():
    """Give the names of all files of pages that the program's modules hold."""
    texts = (
        node.value
        for name in MODULES
        for node in ast.walk(tree(name))
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
    )
    return {text for text in texts if re.fullmatch(r"[a-z-]+\.pdf", text)}


def test_no_kind_of_document_is_forgotten(documents):
    assert names_in_the_program() <= documents.keys()
    assert {"parts.pdf", "worksheet-guided.pdf"} <= documents.keys()


def test_no_rule_fails_in_a_document_of_any_kind(documents):
    assert {name: found for name, path in documents.items() if (found := failures(path))} == {}


def test_every_document_has_a_heading_before_its_parts_and_a_title_of_its_own(documents):
    titles = set()
    for name, path in documents.items():
        whole = heard(path)
        headings = whole.all("H1", "H2", "H3")
        assert headings[0].kind == "H1", name
        with pikepdf.open(path) as file:
            titles.add(str(file.docinfo["/Title"]))
    assert len(titles) == len(documents)


def test_a_pupil_who_reads_another_language_hears_pages_in_it(documents):
    sections = heard(documents["class-worksheets.pdf"]).all("Sect")
    assert [section.language for section in sections] == ["", "es", *[""] * (len(PUPILS) - 2)]
    spanish, english = sections[1], sections[0]
    assert "espacio en blanco" in spanish.text
    assert "blank" in english.text
    assert not {one.alternate for one in spanish.all("Figure")} & {
        one.alternate for one in english.all("Figure")
    }
