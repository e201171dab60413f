"""``project`` writes the slides of a lesson as one page, and opens it unless told not to."""

import webbrowser

import pytest
from conftest import LESSONS

from foldmath.cli import main

SEED_TRAYS = str(LESSONS / "seed-trays.toml")


@pytest.fixture
def opened(monkeypatch):
    """Give the addresses that a browser was asked to open."""
    asked: list[str] = []
    monkeypatch.setattr(webbrowser, "open", lambda address: not asked.append(address))
    return asked


def test_the_page_is_written_and_opened(tmp_path, capsys, opened):
    assert main(["project", SEED_TRAYS, "--out", str(tmp_path)]) == 0
    page = tmp_path / "seed-trays" / "slides" / "slides.html"
    assert page.read_text(encoding="utf-8").startswith("<!DOCTYPE html>")
    assert opened == [page.resolve().as_uri()]
    assert f"wrote {page}" in capsys.readouterr().out


def test_no_browser_opens_where_none_is_wanted(tmp_path, opened):
    assert main(["project", SEED_TRAYS, "--out", str(tmp_path), "--no-open"]) == 0
    assert opened == []


def test_a_lesson_that_cannot_be_used_is_refused_in_words(tmp_path, capsys, opened):
    lesson = tmp_path / "wrong.toml"
    lesson.write_text('title = "Wrong"\n', encoding="utf-8")
    assert main(["project", str(lesson), "--out", str(tmp_path)]) == 1
    assert "wrong.toml" in capsys.readouterr().err
    assert opened == []
