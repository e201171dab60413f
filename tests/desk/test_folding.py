"""Folding at the desk, asked as the page's scripts ask: every act is a step in the file, saved at once."""

import json
import shutil
import stat
import tomllib
from dataclasses import replace

import pytest

from foldmath.desk.folding.history import MOST_ACTS, History, StepList
from foldmath.lesson.files.built_in import built_in_lessons
from foldmath.lesson.grammar.sentences import parse_step

LESSON = """# Notes of mine stay.
title = "Trays"
grade = 4
paper = "letter"
orientation = "landscape"
steps = [
  "fold left edge to right edge",  # first
  "open",
]
"""


@pytest.fixture(autouse=True)
def own_state(monkeypatch, tmp_path_factory):
    """Keep what can be undone in a folder of the test's own."""
    folder = tmp_path_factory.mktemp("state")
    monkeypatch.setenv("XDG_STATE_HOME", str(folder))
    return folder


@pytest.fixture
def trays(desk):
    path = desk.folder / "trays.toml"
    path.write_text(LESSON, encoding="utf-8")
    return path


def written_steps(path) -> list[str]:
    return tomllib.loads(path.read_text("utf-8"))["steps"]


@pytest.fixture
def ask(visitor, trays, desk):
    """Give a function that does one act, as the page that shows the lesson as it is."""

    def done(digest=None, **act):
        now = visitor.get("/lesson/trays/fold/digest").json["digest"]
        return visitor.post(
            "/lesson/trays/fold/act",
            json={**act, "digest": digest or now},
            headers={"X-Foldmath-Token": desk.form, "Accept": "application/json"},
        )

    return done


class TestActs:
    def test_a_fold_is_a_sentence_in_the_file_and_comments_stay(self, ask, trays):
        assert ask(do="add", text="fold top edge to bottom edge").status_code == 200
        assert written_steps(trays) == [
            "fold left edge to right edge",
            "open",
            "fold top edge to bottom edge",
        ]
        assert "# Notes of mine stay." in trays.read_text("utf-8")
        assert "# first" in trays.read_text("utf-8")

    def test_steps_are_changed_moved_and_taken_out(self, ask, trays):
        ask(do="change", at=0, text="fold right edge to left edge")
        assert written_steps(trays)[0] == "fold right edge to left edge"
        ask(do="remove", at=1)
        ask(do="add", text="turn over")
        ask(do="move", at=1, to=0)
        assert written_steps(trays) == ["turn over", "fold right edge to left edge"]

    def test_the_answer_shows_the_paper_and_says_it(self, ask):
        told = ask(do="add", text="pleat width into 4").json
        assert "8 × 1/8" not in told["spoken"]
        assert "4 panels" in told["spoken"]
        assert "<svg" in told["lying"]
        assert 'data-kind="turn"' in told["moving"]
        assert "<mfrac><mn>1</mn><mn>4</mn></mfrac>" in told["shown"]

    def test_a_sentence_that_cannot_be_read_leaves_the_file_alone_and_says_what_would_do(self, ask, trays):
        told = ask(do="add", text="fold left egde to right edge")
        assert told.status_code == 422
        assert "egde" in told.json["told"]
        assert 'data-instead="fold left edge to right edge"' in told.json["told"]
        assert trays.read_text("utf-8") == LESSON

    def test_a_step_that_cannot_be_done_leaves_the_file_alone_and_says_what_would_do(self, ask, trays):
        told = ask(do="add", text="open last")
        assert told.status_code == 422
        assert "nothing is folded now" in told.json["told"]
        assert trays.read_text("utf-8") == LESSON

    def test_what_can_no_longer_be_done_is_marked_on_its_line_and_nothing_is_thrown_away(self, ask, trays):
        told = ask(do="remove", at=0)
        assert told.status_code == 200
        assert written_steps(trays) == ["open"]
        assert 'class="refused"' in told.json["steps"]
        ask(do="add", text="fold left edge to right edge")
        assert written_steps(trays) == ["fold left edge to right edge", "open"]

    def test_what_comes_after_a_refused_step_waits_for_it(self, ask):
        ask(do="add", text="fold top edge to bottom edge")
        told = ask(do="remove", at=0)
        assert 'class="waits"' in told.json["steps"]

    def test_a_lesson_without_steps_lies_open(self, ask, trays):
        ask(do="remove", at=1)
        told = ask(do="remove", at=0).json
        assert written_steps(trays) == []
        assert "1 panel" in told["spoken"]
        assert ask(do="add", text="fold left edge to right edge").status_code == 200

    @pytest.mark.parametrize(
        "act",
        [
            {},
            {"do": "fly"},
            {"do": "add"},
            {"do": "add", "text": 7},
            {"do": "remove", "at": 2},
            {"do": "remove", "at": -1},
            {"do": "move", "at": 0, "to": 2},
            {"do": "change", "at": "0", "text": "open"},
            {"do": "undo"},
            {"do": "redo"},
        ],
    )
    def test_what_is_no_act_changes_nothing(self, ask, trays, act):
        assert ask(**act).status_code == 422
        assert trays.read_text("utf-8") == LESSON

    @pytest.mark.parametrize(
        "body", ["[" * 100_000, "[]", "7", '{"do": "add", "text": "' + "x" * 5000 + '"}']
    )
    def test_what_is_no_wish_at_all_changes_nothing(self, visitor, trays, desk, body):
        headers = {"X-Foldmath-Token": desk.form, "Content-Type": "application/json"}
        assert visitor.post("/lesson/trays/fold/act", data=body, headers=headers).status_code in (409, 422)
        assert trays.read_text("utf-8") == LESSON


class TestTwoWindows:
    def test_an_act_on_a_text_that_is_no_longer_there_is_refused_and_the_other_text_stays(self, ask, trays):
        shown = ask(do="add", text="turn over").json["digest"]
        trays.write_text(LESSON, encoding="utf-8")
        assert ask(digest=shown, do="add", text="turn left").status_code == 409
        assert trays.read_text("utf-8") == LESSON

    def test_a_change_outside_is_seen_by_its_digest(self, visitor, trays):
        before = visitor.get("/lesson/trays/fold/digest").json["digest"]
        trays.write_text(LESSON.replace("Trays", "Pots"), encoding="utf-8")
        assert visitor.get("/lesson/trays/fold/digest").json["digest"] != before


class TestUndoing:
    def test_undo_and_redo_go_through_everything_after_a_reload_too(self, ask, visitor, trays):
        ask(do="add", text="fold top edge to bottom edge")
        ask(do="remove", at=0)
        assert "disabled" not in undo_button(visitor)
        ask(do="undo")
        ask(do="undo")
        assert written_steps(trays) == ["fold left edge to right edge", "open"]
        assert "disabled" in undo_button(visitor)
        ask(do="redo")
        ask(do="redo")
        assert written_steps(trays) == ["open", "fold top edge to bottom edge"]

    def test_a_new_act_takes_the_place_of_what_was_undone(self, ask, trays):
        ask(do="add", text="turn over")
        ask(do="undo")
        ask(do="add", text="turn left")
        assert ask(do="redo").status_code == 422
        assert written_steps(trays)[-1] == "turn left"

    def test_what_was_changed_outside_can_be_undone_too(self, ask, trays):
        ask(do="add", text="turn over")
        trays.write_text(LESSON.replace('"open"', '"turn right"'), encoding="utf-8")
        ask(do="undo")
        assert written_steps(trays)[-1] == "turn over"

    def test_nobody_else_can_read_what_was_done(self, ask, own_state):
        ask(do="add", text="turn over")
        (kept,) = own_state.rglob("*.json")
        assert stat.S_IMODE(kept.stat().st_mode) == 0o600
        assert "trays" not in kept.name

    @pytest.mark.parametrize(
        "content", [b"", b"{", b"[]", b'{"now": 5, "lists": [["open"]]}', b"\xff", b"[" * 9999]
    )
    def test_a_history_that_was_spoilt_is_begun_anew(self, ask, own_state, content):
        ask(do="add", text="turn over")
        (kept,) = own_state.rglob("*.json")
        kept.write_bytes(content)
        assert ask(do="undo").status_code == 422
        assert ask(do="add", text="turn left").status_code == 200
        assert json.loads(kept.read_bytes())["now"] == 1

    def test_two_hundred_acts_can_be_undone_and_older_ones_are_forgotten(self):
        history = History((StepList(()),), 0)
        for number in range(MOST_ACTS + 7):
            history = history.with_act([str(number)])
        assert (history.now, history.lists[0].steps) == (MOST_ACTS, ("6",))


def undo_button(visitor) -> str:
    page = visitor.get("/lesson/trays/fold").text
    start = page.index('id="undo"')
    return page[start : page.index(">", start)]


class TestMotion:
    def test_a_booklet_closes_as_on_the_slides(self, ask, trays):
        lesson = built_in_lessons()["tile-race"].read_text("utf-8")
        trays.write_text(lesson.replace('  "gather into booklet",\n', ""), encoding="utf-8")
        moving = ask(do="add", text="gather into booklet").json["moving"]
        assert 'class="gather' in moving
        assert moving.count('class="wall"') == 8

    def test_a_star_that_goes_out_of_sight_is_hollow_on_the_table_after_it(self, ask):
        moving = ask(do="add", text="turn over").json["moving"]
        assert moving.count('class="star hollow last"') == 1
        assert 'class="star hollow first"' not in moving

    def test_what_is_undone_lies_at_once(self, ask):
        ask(do="add", text="turn over")
        assert ask(do="undo").json["moving"] == ""


class TestComments:
    """What she wrote beside her steps goes with them, and comes back with them."""

    def test_a_moved_line_takes_its_comment_along(self, ask, trays):
        ask(do="move", at=0, to=1)
        assert '"open",\n  "fold left edge to right edge",  # first' in trays.read_text("utf-8")

    def test_a_line_that_was_taken_out_comes_back_with_its_comment(self, ask, trays):
        ask(do="remove", at=0)
        assert "# first" not in trays.read_text("utf-8")
        ask(do="undo")
        assert trays.read_text("utf-8") == LESSON

    def test_a_comment_that_was_added_outside_is_not_lost_by_undoing(self, ask, trays):
        ask(do="add", text="turn over")
        ask(do="undo")
        trays.write_text(LESSON.replace("# first", "# the first"), encoding="utf-8")
        ask(do="remove", at=1)
        ask(do="undo")
        assert "# the first" in trays.read_text("utf-8")


class TestMoreAboutAStep:
    def told(self, visitor, number):
        return visitor.get(f"/lesson/trays/fold/step/{number}")

    def test_everything_that_a_step_shows_is_told_when_it_is_asked_for(self, visitor, ask):
        ask(do="add", text="pleat height into 3")
        told = self.told(visitor, 3).json["told"]
        expected = ("crease", "6 panels of", "product", "7 creases and cuts", "valley fold", "mountain fold")
        for shown in expected:
            assert shown in told, shown
        assert "(later)" in told  # Fractions are multiplied a grade later than this lesson's.

    def test_an_earlier_step_is_told_as_it_was(self, visitor, ask):
        ask(do="add", text="pleat height into 3")
        told = self.told(visitor, 1).json["told"]
        assert "2 panels of" in told
        assert "6 panels of" not in told

    def test_a_booklet_tells_its_leaves_and_facing_pages(self, visitor, desk):
        shutil.copy(built_in_lessons()["tile-race"], desk.folder / "trays.toml")
        told = self.told(visitor, 8).json["told"]
        assert "1–2, 3–4, 5–6, 7–8" in told
        assert "2–3, 4–5, 6–7" in told

    @pytest.mark.parametrize("number", [0, 3, 99])
    def test_there_is_no_step_that_is_not_done(self, visitor, trays, number):
        assert trays.exists()
        assert self.told(visitor, number).status_code == 422


class TestHands:
    @pytest.fixture
    def hands(self, visitor, trays):
        assert trays.exists()
        return visitor.get("/lesson/trays/fold/hands").json

    def test_edges_and_corners_have_names(self, hands):
        names = [held["name"] for held in hands["held"]]
        assert names[:4] == ["left edge", "bottom edge", "right edge", "top edge"]
        assert set(names[4:]) == {
            "bottom left corner",
            "bottom right corner",
            "top right corner",
            "top left corner",
        }

    def test_every_fold_has_its_two_sentences_and_its_crease_lies_half_way(self, hands):
        for held, x, y, pivot_x, pivot_y, a, b, _, over, behind in hands["folds"]:
            grip_x, grip_y = hands["held"][held]["grip"]
            assert (grip_x + x) / 2 == pytest.approx(pivot_x, abs=0.002)
            assert (grip_y + y) / 2 == pytest.approx(pivot_y, abs=0.002)
            assert a * a + b * b == pytest.approx(1, abs=1e-5)
            assert a * (grip_x - pivot_x) + b * (grip_y - pivot_y) > 0
            assert parse_step(behind) == replace(parse_step(over), behind=True)

    def test_the_field_knows_gates_and_fans_too(self, hands):
        assert "fold the left and right edges to the middle" in hands["sayable"]
        assert "fold the height like a fan, into 12 equal parts" in hands["sayable"]
        assert all(parse_step(sentence) for sentence in hands["sayable"][::40])

    def test_a_button_that_cannot_be_pressed_says_why(self, hands):
        start = hands["acts"].index('aria-disabled="true" data-act="open-last"')
        assert 'aria-describedby="why-open-last"' in hands["acts"][start : start + 200]
        assert "nothing is folded now" in hands["acts"]

    def test_cuts_are_looked_for_when_they_are_asked_for(self, visitor, ask):
        ask(do="add", text="pleat height into 2")
        ask(do="add", text="open")
        cuts = visitor.get("/lesson/trays/fold/cuts").json["cuts"]
        assert "cut at height 1/2 from the left edge to 1/2" in cuts

    def test_what_is_shown_asks_whether_thirds_were_meant(self, ask):
        assert "did you mean thirds" in ask(do="add", text="fold left edge to 1/3").json["shown"]

    @pytest.mark.parametrize("grade", [4, 6])
    def test_how_far_off_hands_may_be_is_told_with_the_grade_that_folds(self, visitor, trays, grade):
        trays.write_text(LESSON.replace("grade = 4", f"grade = {grade}"), encoding="utf-8")
        shown = visitor.get("/lesson/trays/fold").text
        assert f"<dt>Folded in grade {grade}</dt><dd>the worst panel is" in shown

    def test_a_few_sizes_whose_fractions_tell_none_are_shown_in_near_values(self, ask):
        size = ask(do="add", text="fold bottom left corner to the middle of the top edge").json["shown"]
        told = "1 panel of about 0.05, 2 panels of 1/4 and 1 panel of about 0.45 of the sheet"
        assert f"<dd>{told}</dd>" in size

    def test_figures_that_no_class_could_say_are_left_out(self, ask):
        ask(do="add", text="fold (0, 1/3) to (3/4, 1)")
        told = ask(do="add", text="fold top edge to 2/7").json
        assert "too many sizes to say" in told["shown"]


def test_sentences_come_in_the_language_of_the_lesson_and_names_in_that_of_the_teacher(visitor, trays):
    trays.write_text(LESSON.replace("grade = 4", 'grade = 4\nlanguage = "es"'), encoding="utf-8")
    hands = visitor.get("/lesson/trays/fold/hands").json
    assert hands["folds"][0][-2].startswith("dobla")
    assert hands["held"][0]["name"] == "left edge"
    assert 'data-step="voltea' in hands["acts"]
    assert all(parse_step(sentence) for sentence in hands["sayable"][::40])


def test_a_lesson_begun_by_a_teacher_who_reads_spanish_is_spanish(visitor, desk):
    visitor.set_cookie("foldmath-language", "es", domain="127.0.0.1")
    form = {"token": desk.form, "title": "Velas", "grade": "4", "paper": "A4", "orientation": "portrait"}
    visitor.post("/new/empty", data=form)
    assert tomllib.loads((desk.folder / "velas.toml").read_text("utf-8"))["language"] == "es"


def test_the_page_knows_no_rule_of_folding_and_no_arithmetic_of_fractions():
    """Its scripts reflect given polygons at a given line, and draw what they are given."""
    from importlib.resources import files

    scripts = [
        path for path in files("foldmath.desk").joinpath("static").iterdir() if path.name.startswith("fold")
    ]
    texts = [path.read_text("utf-8") for path in scripts if path.name.endswith(".js")]
    assert len(texts) == 6
    for text in texts:
        for word in ("edge to", "pleat", "slit", "numerator", "denominator", "gcd", "valley", "mountain"):
            assert word not in text
