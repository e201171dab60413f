"""A lesson that cannot be read opens as text, with its slips at their lines; one without a step says so."""

import pytest
from markupsafe import escape

BROKEN = 'title = "Trays"\ngrade = 4\npaper = "letter"\nsteps = ["open"\nvocabulary = []\n'
SOUND = 'title = "Trays"\ngrade = 4\npaper = "letter"\nsteps = ["turn over"]\n'
PLACE = "/lesson/trays/text"


@pytest.fixture
def lay(desk):
    def done(text):
        path = desk.folder / "trays.toml"
        path.write_text(text, encoding="utf-8")
        return path

    return done


def saved(visitor, desk, text, digest=None):
    digest = digest or visitor.get("/lesson/trays/digest").json["digest"]
    return visitor.post(PLACE, data={"token": desk.form, "digest": digest, "text": text})


SLIPS = [
    pytest.param(BROKEN, "Line 5", id="no TOML"),
    pytest.param(SOUND.replace("4", "9"), "Line 2", id="a grade that there is none of"),
    pytest.param(SOUND.replace('"turn over"', '"turn over", 7'), "Line 4", id="a step that is no text"),
    pytest.param(SOUND.replace('["turn over"]', '"turn over"'), "Line 4", id="steps that are no list"),
]


@pytest.mark.parametrize(("text", "line"), SLIPS)
def test_a_lesson_that_cannot_be_read_opens_as_text_with_its_slip_and_is_left_as_it_is(
    visitor, lay, text, line
):
    path = lay(text)
    assert visitor.get("/lesson/trays/fold").headers["Location"] == PLACE
    page = visitor.get(PLACE).text
    assert line in page
    assert "Try:" in page
    assert path.read_text("utf-8") == text


def test_a_mended_text_is_saved_as_typed_and_the_lesson_opens(visitor, desk, lay):
    path = lay(BROKEN)
    answer = saved(visitor, desk, SOUND.replace("\n", "\r\n"))
    assert answer.headers["Location"] == "/lesson/trays/fold"
    assert path.read_text("utf-8") == SOUND


def test_what_still_has_slips_is_saved_too_and_shown_with_them(visitor, desk, lay):
    path = lay(BROKEN)
    answer = saved(visitor, desk, BROKEN.replace("Trays", "Pots"))
    assert "Line 5" in answer.text
    assert "Pots" in path.read_text("utf-8")


@pytest.mark.parametrize("text", ["", " \n", "#" * (256 * 1024 + 1)])
def test_a_text_that_could_not_be_opened_again_is_refused(visitor, desk, lay, text):
    path = lay(BROKEN)
    assert saved(visitor, desk, text).status_code == 422
    assert path.read_text("utf-8") == BROKEN


def test_a_text_changed_since_is_not_written_over(visitor, desk, lay):
    path = lay(BROKEN)
    assert saved(visitor, desk, SOUND, digest="0" * 64).status_code == 409
    assert path.read_text("utf-8") == BROKEN


def test_a_page_of_refusal_shows_what_was_typed_and_leads_back_to_where_it_was(visitor, desk, lay):
    lay(BROKEN)
    form = {"token": desk.form, "digest": "0" * 64, "text": SOUND}
    came = {"Referer": f"http://127.0.0.1:{desk.port}{PLACE}"}
    answer = visitor.post(PLACE, data=form, headers=came)
    assert escape(SOUND.strip()) in answer.text
    assert f'href="{PLACE}"' in answer.text
    elsewhere = visitor.post(PLACE, data=form, headers={"Referer": "http://127.0.0.1.example/x"})
    assert "example" not in elsewhere.text


@pytest.mark.parametrize("place", ["practice", "print", "project", "slides", "document/worksheet.pdf"])
def test_a_lesson_without_a_step_says_so_and_leads_to_the_sheet(visitor, lay, place):
    lay(SOUND.replace('"turn over"', ""))
    answer = visitor.get(f"/lesson/trays/{place}")
    assert answer.status_code == 422
    assert "nothing is folded in this lesson yet" in answer.text
    assert 'href="/lesson/trays/fold"' in answer.text
    assert "nothing folded yet" in visitor.get("/").text


def test_a_change_that_is_refused_asks_nobody_to_mend_the_file(visitor, desk, lay):
    lay(SOUND)
    digest = visitor.get("/lesson/trays/digest").json["digest"]
    form = {"token": desk.form, "digest": digest, "change": "rules", "count": "99"}
    answer = visitor.post("/lesson/trays/practice", data=form)
    assert (answer.status_code, "Mend its text" in answer.text) == (422, False)
