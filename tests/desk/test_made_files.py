"""What was made is opened from the page that says so, and nothing else of the folder is."""

import os
import re
from html import unescape

import pytest

MIXED = {"class": "4b", "pupils": "Ada\nInés, guided, Spanish"}
GRID = {"class": "4b", "label": ["Ada", "Inés"], "level": ["core", "guided"], "reads": ["", "es"]}


def links(page):
    """Give what the links to made files say, by their addresses."""
    found = re.findall(r'<a href="(/lesson/[^"]*/made/[^"]*)"[^>]*>([^<]*)</a>', page)
    return {unescape(address): unescape(words) for address, words in found}


@pytest.fixture
def of_class(visitor, desk, seed_trays):
    return visitor.post("/lesson/seed-trays/class", data={"token": desk.form, **MIXED}).text


def test_every_page_that_was_made_for_a_class_is_opened_by_its_name(visitor, of_class):
    found = links(of_class)
    folder = "/lesson/seed-trays/made/class-4b"
    assert next(iter(found.items())) == (f"{folder}/class-worksheets.pdf", "A page for each student")
    assert found[f"{folder}/exit-ticket-es.pdf"] == "Exit ticket · Español"
    for address in found:
        opened = visitor.get(address)
        assert (opened.status_code, opened.mimetype) == (200, "application/pdf")
        assert opened.data.startswith(b"%PDF")


def test_pupils_without_names_have_pages_too_and_are_marked_by_these(visitor, desk, seed_trays):
    form = {"token": desk.form, "count": "3"}
    found = links(visitor.post("/lesson/seed-trays/class", data=form).text)
    assert "/lesson/seed-trays/made/class-pupils-3/class-worksheets.pdf" in found
    grid = visitor.post("/lesson/seed-trays/mark", data={**form, "own": "1"}).text
    seeds = dict(re.findall(r'data-row="(\d)"[^>]*data-seed="(\d+)"', grid))
    assert len(set(seeds.values())) == 3
    assert 'name="label" value="Student 3"' in grid


def test_pages_in_another_language_and_word_copies_are_told_apart(visitor, desk, seed_trays):
    form = {"token": desk.form, "languages": ["en-US", "es"], "editable": "1"}
    found = links(visitor.post("/lesson/seed-trays/make", data=form).text)
    assert found["/lesson/seed-trays/made/es/worksheet.pdf"] == "Worksheet, core · Español"
    assert found["/lesson/seed-trays/made/en-US/worksheet.pdf"] == "Worksheet, core · English (US)"
    (copy,) = (address for address, words in found.items() if words == "Worksheet, core, in Word · Español")
    assert visitor.get(copy).headers["Content-Disposition"].startswith("attachment")


def test_the_report_and_the_notes_are_opened_when_the_class_is_marked(visitor, desk, seed_trays):
    page = visitor.post("/lesson/seed-trays/mark/done", data={"token": desk.form, **GRID}).text
    found = links(page)
    names = ["Report on the class", "Notes to students", "All answers, as a spreadsheet"]
    assert list(found.values()) == names
    saved = {words: visitor.get(address).headers["Content-Disposition"] for address, words in found.items()}
    assert saved["Report on the class"].startswith("inline")
    assert saved["All answers, as a spreadsheet"].startswith("attachment")


@pytest.mark.parametrize(
    "address",
    [
        "../seed-trays.toml",
        "class-4b/../../classes/4b.csv",
        "class-4b/.foldmath.json",
        "class-4b/linked.pdf",
        "linked/secret.pdf",
        "class-4b",
        "%2e%2e/secret.pdf",
    ],
)
def test_nothing_else_is_opened(visitor, desk, of_class, address, tmp_path_factory):
    outside = tmp_path_factory.mktemp("outside") / "secret.pdf"
    outside.write_bytes(b"%PDF")
    (desk.folder / "secret.pdf").write_bytes(b"%PDF")
    os.symlink(outside, desk.folder / "seed-trays" / "class-4b" / "linked.pdf")
    os.symlink(outside.parent, desk.folder / "seed-trays" / "linked")
    assert visitor.get(f"/lesson/seed-trays/made/{address}").status_code == 404


def test_a_stranger_opens_none_of_it(stranger, of_class):
    assert stranger.get("/lesson/seed-trays/made/class-4b/class-worksheets.pdf").status_code == 403


def test_the_next_lesson_is_taken_with_its_class(visitor, desk, seed_trays):
    visitor.post("/lesson/seed-trays/mark", data={"token": desk.form, **MIXED, "keep": "1"})
    answers = {"0-0": "6/8", "0-1": "4/6"}
    visitor.post("/lesson/seed-trays/mark/done", data={"token": desk.form, **GRID, **answers})
    taken = visitor.post("/lesson/seed-trays/mark/next", data={"token": desk.form, "answers": "4b"})
    assert (taken.status_code, taken.location) == (303, "/lesson/seed-trays-next/practice")
    text = (desk.folder / "seed-trays-next.toml").read_text("utf-8")
    assert 'title = "Seed trays: next"' in text
    assert 'earlier = ["seed-trays.toml"]' in text
    kept = desk.folder / "classes" / "4b-seed-trays-next.csv"
    assert kept.read_text("utf-8-sig").splitlines() == ["name,level,language", "Ada,guided,", "Inés,core,es"]
    assert not kept.stat().st_mode & 0o77
    before = (desk.folder / "classes" / "4b.csv").read_text("utf-8")
    assert before.splitlines()[1:] == ["Ada,core,", "Inés,guided,es"]
    page = visitor.get("/lesson/seed-trays-next/print").text
    assert "<option>4b-seed-trays-next</option>" in page


def test_without_answers_no_lesson_follows(visitor, desk, seed_trays):
    taken = visitor.post("/lesson/seed-trays/mark/next", data={"token": desk.form, "answers": "4b"})
    assert taken.status_code == 422
    assert [path.name for path in desk.folder.glob("*.toml")] == ["seed-trays.toml"]
