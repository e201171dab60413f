"""What is looked at is what prints, and what is saved is what ``make`` writes."""

import os
import re
from concurrent.futures.process import BrokenProcessPool
from io import BytesIO
from zipfile import ZipFile

import pytest

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.lesson.files.built_in import built_in_lessons
from foldmath.making import Order, make
from foldmath.making.previews import Preview
from foldmath.pages.page_pictures import page_count, page_picture

BUILT_IN = built_in_lessons()
PNG = b"\x89PNG\r\n\x1a\n"


@pytest.fixture(scope="module")
def written(tmp_path_factory, pictures):
    """Make the pages of a lesson as the command does."""
    out = tmp_path_factory.mktemp("out")
    return make(BUILT_IN["fraction-diary"], Order(out=out), pictures, lambda _: None)


def test_each_document_looked_at_is_the_one_that_make_writes(written, pictures):
    preview = Preview(written.proved, "letter", "regular", pictures)
    pdfs = {path.name: path for path in written.files if path.suffix == ".pdf"}
    assert set(preview.names) == set(pdfs)
    assert [name for name in preview.names if preview.pdf(name) != pdfs[name].read_bytes()] == []


def test_every_page_has_a_picture_and_no_more(written):
    pdf = next(path for path in written.files if path.name == "worksheet.pdf").read_bytes()
    count = page_count(pdf)
    assert all(page_picture(pdf, number, 40).startswith(PNG) for number in range(1, count + 1))
    for number in (0, count + 1):
        with pytest.raises(IndexError):
            page_picture(pdf, number, 40)


def test_the_key_stands_beside_its_worksheet(visitor, seed_trays):
    page = visitor.get("/lesson/seed-trays/print?document=worksheet.pdf").text
    shown = re.findall(r"/picture/([\w-]+\.pdf)/1\.png", page)
    assert shown == ["worksheet.pdf", "answer-key.pdf"]


@pytest.mark.parametrize(
    "address", ["picture/worksheet.pdf/9.png", "picture/other.pdf/1.png", "document/../x"]
)
def test_there_is_no_page_that_the_lesson_has_not(visitor, seed_trays, address):
    assert visitor.get(f"/lesson/seed-trays/{address}").status_code == 404


def test_paper_and_large_print_change_the_pages(visitor, seed_trays):
    def pdf(wishes):
        return visitor.get(f"/lesson/seed-trays/document/worksheet.pdf?{wishes}").data

    pages = [pdf("paper=letter"), pdf("paper=A4"), pdf("paper=letter&large=1")]
    assert len(set(pages)) == 3
    assert pdf("paper=letter") == pages[0]


def test_an_unknown_paper_is_refused_with_those_there_are(visitor, seed_trays):
    answer = visitor.get("/lesson/seed-trays/print?paper=vellum")
    assert answer.status_code == 422
    assert "letter" in answer.text


def test_a_changed_lesson_is_drawn_anew(visitor, seed_trays):
    before = visitor.get("/lesson/seed-trays/document/worksheet.pdf").data
    seed_trays.write_text(seed_trays.read_text().replace("Seed trays", "Boat sheds"))
    assert visitor.get("/lesson/seed-trays/document/worksheet.pdf").data != before


def names_in(answer) -> list[str]:
    return ZipFile(BytesIO(answer.data)).namelist()


def test_some_documents_or_all_are_saved_in_one_file(visitor, seed_trays):
    some = visitor.get("/lesson/seed-trays/documents.zip?checked=worksheet.pdf&checked=exit-ticket.pdf")
    assert names_in(some) == ["seed-trays/worksheet.pdf", "seed-trays/exit-ticket.pdf"]
    every = names_in(visitor.get("/lesson/seed-trays/documents.zip"))
    assert {"seed-trays/answer-key-stretch.pdf", "seed-trays/templates.pdf"} <= set(every)


def test_make_the_pages_writes_the_set_beside_the_lesson(visitor, desk, seed_trays):
    answer = visitor.post("/lesson/seed-trays/make", data={"token": desk.form, "paper": "A4"})
    assert answer.status_code == 200
    assert (desk.folder / "seed-trays" / "worksheet.pdf").is_file()
    assert (desk.folder / "seed-trays" / "slides.html").is_file()
    assert list(desk.shelf.lessons()) == ["seed-trays"]


@pytest.mark.sweep
def test_the_pages_are_made_in_more_languages_and_to_be_changed_where_that_is_asked(
    visitor, desk, seed_trays
):
    form = {"token": desk.form, "editable": "1", "languages": ["es", "en-US", "tlh"]}
    assert visitor.post("/lesson/seed-trays/make", data=form).status_code == 200
    made = {path.relative_to(desk.folder).as_posix() for path in desk.folder.rglob("worksheet.*")}
    for language in ("es", "en-US"):
        assert f"seed-trays/{language}/worksheet.pdf" in made
        assert f"seed-trays/editable/{language}/worksheet.docx" in made


CLASS = {"class": "4 b", "pupils": "Ada Reed, guided\nBo Marsh\n", "keep": "1"}


def test_a_typed_class_gets_its_pages_and_is_kept_for_her_alone_if_she_wants(visitor, desk, seed_trays):
    answer = visitor.post("/lesson/seed-trays/class", data={"token": desk.form, **CLASS})
    assert answer.status_code == 200
    made = desk.folder / "seed-trays" / "class-4-b" / "class-worksheets.pdf"
    kept = desk.folder / "classes" / "4-b.csv"
    assert page_count(made.read_bytes()) >= 4
    assert kept.read_text() == "name,level\nAda Reed,guided\nBo Marsh,core\n"
    assert (kept.stat().st_mode & 0o77, made.stat().st_mode & 0o77) == (0, 0)
    again = visitor.post("/lesson/seed-trays/class", data={"token": desk.form, "kept": "4-b"})
    assert again.status_code == 200


def test_a_class_that_is_not_kept_leaves_no_list(visitor, desk, seed_trays):
    file = (BytesIO(b"name,level\nAda Reed,core\n"), "list.csv")
    answer = visitor.post("/lesson/seed-trays/class", data={"token": desk.form, "list": file})
    assert answer.status_code == 200
    assert not (desk.folder / "classes").exists()


@pytest.mark.parametrize("pupils", ["", "Ada Reed, gided", "\x1b[31m"])
def test_a_list_that_cannot_be_used_is_refused_and_writes_nothing(visitor, desk, seed_trays, pupils):
    answer = visitor.post("/lesson/seed-trays/class", data={"token": desk.form, **CLASS, "pupils": pupils})
    assert answer.status_code == 422
    assert [path.name for path in desk.folder.iterdir()] == ["seed-trays.toml"]


def test_names_are_not_written_through_a_link_out_of_the_folder(visitor, desk, seed_trays, tmp_path_factory):
    elsewhere = tmp_path_factory.mktemp("elsewhere")
    (desk.folder / "classes").symlink_to(elsewhere)
    answer = visitor.post("/lesson/seed-trays/class", data={"token": desk.form, **CLASS})
    assert answer.status_code == 422
    assert list(elsewhere.iterdir()) == []


def test_names_of_pupils_stand_in_no_address(visitor, desk, seed_trays):
    page = visitor.post("/lesson/seed-trays/class", data={"token": desk.form, **CLASS}).text
    assert not [link for link in re.findall(r'(?:href|src|action)="([^"]*)"', page) if "Ada" in link]


CHOSEN = {
    **CLASS,
    "document": "exit-ticket.pdf",
    "paper": "A4",
    "large": "1",
    "checked": ["worksheet.pdf", "templates.pdf"],
    "languages": ["en-US", "es"],
    "editable": "1",
}
"""All that can be chosen and typed where pages are printed."""


def held(page):
    """Give what the form of a page holds: the fields that stand there filled, and what is checked."""
    inputs = re.findall(r"<input ([^>]*)/>", page)
    checked = [re.search(r'value="([^"]*)"', field)[1] for field in inputs if field.endswith(" checked")]
    typed = re.search(r'<input name="class"[^>]*value="([^"]*)"', page)[1]
    pupils = re.search(r'<textarea name="pupils"[^>]*>\s*([^<]*)</textarea>', page)[1]
    document = re.search(r'<input type="hidden" name="document" value="([^"]*)"', page)[1]
    return document, checked, typed, pupils


@pytest.mark.parametrize("pressed", ["print", "make", "class"])
def test_whatever_button_is_pressed_all_that_was_chosen_and_typed_stands_there_again(
    visitor, desk, seed_trays, pressed
):
    answer = visitor.post(f"/lesson/seed-trays/{pressed}", data={"token": desk.form, **CHOSEN})
    assert answer.status_code == 200
    assert held(answer.text) == (
        "exit-ticket.pdf",
        ["A4", "1", "worksheet.pdf", "templates.pdf", "en-US", "es", "1", "1"],
        CLASS["class"],
        CLASS["pupils"],
    )
    assert "/picture/exit-ticket.pdf/1.png?paper=A4&amp;large=1" in answer.text


def test_the_checked_documents_are_saved_as_they_are_shown(visitor, desk, seed_trays):
    saved = visitor.post("/lesson/seed-trays/documents.zip", data={"token": desk.form, **CHOSEN})
    assert names_in(saved) == ["seed-trays/worksheet.pdf", "seed-trays/templates.pdf"]
    shown = visitor.get("/lesson/seed-trays/document/worksheet.pdf?paper=A4&large=1").data
    assert ZipFile(BytesIO(saved.data)).read("seed-trays/worksheet.pdf") == shown


@pytest.mark.parametrize("pressed", ["print", "make", "class"])
def test_a_list_that_a_browser_cannot_hold_is_named_to_be_chosen_again(visitor, desk, seed_trays, pressed):
    file = (BytesIO(b"name,level\nAda Reed,gided\n"), "4b & co.csv")
    answer = visitor.post(f"/lesson/seed-trays/{pressed}", data={"token": desk.form, "list": file})
    assert "To use 4b &amp; co.csv again, choose it again." in answer.text
    assert "choose it again" not in visitor.get("/lesson/seed-trays/print").text


@pytest.mark.parametrize(("pressed", "beside"), [("make", "Make the pages"), ("class", "Name of the class")])
def test_pages_that_cannot_be_written_are_refused_beside_their_button_and_nothing_chosen_is_lost(
    visitor, desk, seed_trays, pressed, beside
):
    (desk.folder / "seed-trays").write_text("a file where the pages should lie")
    answer = visitor.post(f"/lesson/seed-trays/{pressed}", data={"token": desk.form, **CHOSEN})
    assert answer.status_code == 422
    assert held(answer.text)[:2] == (
        "exit-ticket.pdf",
        ["A4", "1", "worksheet.pdf", "templates.pdf", "en-US", "es", "1", "1"],
    )
    slips = answer.text.index('id="slips"')
    assert 0 < abs(answer.text.index(beside) - slips) < 600
    assert answer.text.count('id="slips"') == 1


@pytest.mark.usefixtures("seed_trays")
class TestTheProcessThatDraws:
    @pytest.fixture
    def pictures(self):
        """Give one that ends with the test: what is begun anew holds all that is open then, browsers too."""
        with PictureProcess() as process:
            yield process

    def test_after_it_was_ended_from_outside_another_draws(self, visitor, desk):
        desk.pictures.submit(os._exit, 9).exception()
        assert visitor.get("/lesson/seed-trays/print").status_code == 200

    def test_a_page_whose_drawing_was_ended_from_outside_says_so_and_what_to_do(
        self, visitor, desk, monkeypatch
    ):
        def ended(*_):
            raise BrokenProcessPool

        monkeypatch.setattr(type(desk.pictures), "recordings", ended)
        answer = visitor.get("/lesson/seed-trays/print")
        assert answer.status_code == 500
        assert "was ended from outside" in answer.text
