"""The teacher's own screen: notes in a second window, a count-down, a pen, keys that mean what they say."""

import pytest
from chromium import reload_until, until
from lessons_in_words import EIGHTHS, core_sheet, proved

from foldmath.slides.page import slides_html
from foldmath.slides.slides import slide_show


def second_window(show):
    """Open the notes as the teacher does, and wait until they know where the class is."""
    with show.page.context.expect_page() as opened:
        show.press("n")
    notes = opened.value
    notes.on("pageerror", lambda error: show.complaints.append(str(error)))
    wait_in(notes, "document.querySelector('.strip.here') !== null")
    return notes


def wait_in(page, true):
    until(page, lambda: page.evaluate(true), true)


def seen_in(page, selector):
    return page.eval_on_selector_all(
        selector,
        """(all) => all.filter((one) => one.checkVisibility({ visibilityProperty: true }))
                       .map((one) => one.innerText)""",
    )


def test_the_notes_tell_what_to_ask_the_answer_the_likely_slip_and_the_minutes(shown, eighths):
    show = shown(eighths)
    show.go(5, 1)
    notes = second_window(show)
    (told,) = seen_in(notes, ".strip")
    for word in ("Ask", "Predict: how many panels will there be?", "Answer", "Likely mistake", "6 panels"):
        assert word in told
    assert "of 5 minutes" in notes.locator("#used").inner_text()
    assert "the class sees this window too" in notes.locator("#mirrored").inner_text()
    assert len(seen_in(notes, ".scene")) == 2
    assert (
        notes.evaluate("[...document.querySelectorAll('.scene')].indexOf(document.querySelector('.coming'))")
        == 5
    )
    assert show.complaints == []


def test_what_the_teacher_noted_for_herself_comes_first_in_her_window_and_nowhere_else(shown):
    show = shown(proved(*EIGHTHS, notes=("Bring the big sheet.", "Ada folds with Bo.")))
    with show.page.context.expect_page() as opened:
        show.page.get_by_role("button", name="Notes").click()
    wait_in(opened.value, "document.querySelector('.strip.here') !== null")
    (told,) = seen_in(opened.value, ".strip")
    places = [told.index(words) for words in ("Your notes", "Bring the big sheet.", "Ada folds", "Ask")]
    assert places == sorted(places)
    assert not show.page.get_by_text("Bring the big sheet.").is_visible()


def test_the_class_never_sees_the_notes(shown, eighths):
    show = shown(eighths)
    show.go(5, 1)
    second_window(show)
    assert seen_in(show.page, ".strip") == []
    assert not show.page.locator("#desk").is_visible()


def test_both_windows_go_together_and_a_reload_of_either_changes_nothing(shown, eighths):
    show = shown(eighths)
    show.go(4, 0)
    notes = second_window(show)
    notes.keyboard.press("ArrowRight")
    show.wait_until("now.scene === 3 && now.reveal === 1")
    show.press("ArrowRight", "ArrowRight", "ArrowRight")
    wait_in(notes, f"now.scene === {show.place()[0] - 1} && now.reveal === {show.place()[1]}")
    show.page.reload()
    notes.keyboard.press("PageUp")
    place = show.place()
    wait_in(notes, f"now.scene === {place[0] - 1} && now.reveal === {place[1]}")
    notes.reload()
    wait_in(notes, f"now.scene === {place[0] - 1} && now.reveal === {place[1]}")
    notes.keyboard.press("Home")
    show.wait_until("now.scene === 0")


def test_windows_of_another_run_of_the_same_lesson_hear_nothing(shown, eighths):
    show = shown(eighths)
    notes = second_window(show)
    other = show.page.context.new_page()
    other.goto(show.page.url.split("#")[0])
    assert other.evaluate("run") != show.page.evaluate("run") == notes.evaluate("run")
    notes.keyboard.press("ArrowRight")
    show.wait_until("now.scene === 1")
    assert other.evaluate("now.scene") == 0


def test_a_blocked_window_is_told_plainly_and_no_notes_are_shown_instead(shown, eighths):
    show = shown(eighths)
    show.page.evaluate("window.open = () => null")
    show.press("n")
    assert "did not open a second window" in show.page.locator("#message").inner_text()
    assert seen_in(show.page, ".strip") == []


def test_notes_whose_class_is_gone_say_so(shown, eighths):
    show = shown(eighths)
    notes = show.page.context.new_page()
    notes.goto(show.page.url.split("#")[0] + "#notes-nobody")
    wait_in(notes, "document.getElementById('message').open")
    assert "not open in another window" in notes.locator("#message").inner_text()


def test_notes_that_missed_their_class_take_that_back_once_it_answers(shown, eighths):
    show = shown(eighths)
    notes = show.page.context.new_page()
    notes.goto(show.page.url.split("#")[0] + "#notes-late")
    wait_in(notes, "document.getElementById('message').open")
    show.page.evaluate("sessionStorage.setItem(`run ${code}`, 'late')")
    show.page.reload()
    wait_in(notes, "document.querySelector('.strip.here') !== null")
    assert not notes.evaluate("document.getElementById('message').open")


@pytest.mark.parametrize("language", ["en-US", "en-GB"])
def test_the_key_of_each_button_is_the_first_letter_of_its_word_and_no_two_are_alike(shown, language):
    show = shown(proved(*EIGHTHS, language=language))
    told = show.page.evaluate(
        """Object.keys(TOOLS).map((name) => [
            find(name).dataset.key, find(name).innerText.trim()[0].toLowerCase()])"""
    )
    assert all(key == letter for key, letter in told)
    assert len({key for key, _ in told}) == len(told) == 8
    assert not {"p", "t", "b", "f"} & {key for key, _ in told}


def test_a_key_held_down_does_not_race(shown, eighths):
    show = shown(eighths)
    show.page.keyboard.down("ArrowRight")
    for _ in range(5):
        show.page.keyboard.down("ArrowRight")
    assert show.place() == (2, 0)
    show.page.keyboard.up("ArrowRight")
    show.press("ArrowRight")
    assert show.place() == (3, 0)


@pytest.mark.parametrize("focus", ["motion", "list", "next", "minutes"])
def test_a_remote_goes_on_and_back_wherever_the_focus_is(shown, eighths, focus):
    show = shown(eighths)
    show.go(3, 0)
    show.page.locator(f"#{focus}").focus()
    show.press("PageDown")
    assert show.place() == (3, 1)
    show.page.locator(f"#{focus}").focus()
    show.press("PageUp")
    assert show.place() == (3, 0)


def test_a_remote_closes_a_dialog_and_goes_on(shown, eighths):
    show = shown(eighths)
    show.press("l", "PageDown")
    assert show.place() == (2, 0)
    assert not show.page.locator("#slide-list").is_visible()


def test_a_click_on_the_slider_and_then_the_remote_does_not_fold_the_paper_back(shown, eighths):
    show = shown(eighths)
    show.go(3, 2)
    show.page.locator("#motion").click()
    assert show.page.evaluate("now.time") < 1
    show.press("PageDown")
    assert show.place() == (3, 3)
    show.wait_until("now.time === 1")


def test_figures_and_enter_jump_to_a_slide_and_escape_forgets_them(shown, eighths):
    show = shown(eighths)
    show.press("1", "0")
    assert "10" in show.page.locator("#jump").inner_text()
    show.press("Escape", "6", "Enter")
    assert show.place() == (6, 0)
    show.press("9", "9", "Enter")
    assert show.place()[0] == len(show.slides)


def read_at_once(show, button):
    """Press a button, and give what the clock shows by then: a busy machine has it run on meanwhile."""
    pressed = "(button) => { document.querySelector(button).click(); return find('clock').innerText; }"
    return show.page.evaluate(pressed, button)


@pytest.mark.parametrize(("minutes", "face"), [("1", "1:00"), ("2", "2:00"), ("5", "5:00")])
def test_a_count_down_shows_large_and_survives_a_reload(shown, eighths, minutes, face):
    show = shown(eighths)
    show.press("m")
    clock = show.page.locator("#clock")
    assert read_at_once(show, f"#countdown [data-minutes='{minutes}']") == face
    assert clock.bounding_box()["height"] > show.page.viewport_size["height"] / 10
    reload_until(show.page, clock.is_visible, "the count-down goes on")
    show.press("m")
    show.page.get_by_role("button", name="Stop").click()
    assert not clock.is_visible()


def test_a_count_down_of_the_teachers_own_ends_in_words(shown, eighths):
    show = shown(eighths)
    show.press("m")
    show.page.locator("#own-minutes").fill("7")
    assert read_at_once(show, "#own") == "7:00"
    show.page.evaluate("setClock(Date.now() - 1)")
    assert show.page.locator("#clock").inner_text() == "Time is up"


def draw(show):
    mouse = show.page.mouse
    mouse.move(300, 300)
    mouse.down()
    mouse.move(400, 350, steps=3)
    mouse.up()


def test_drawing_stays_on_its_slide_until_it_is_wiped_or_the_next_slide_comes(shown, eighths):
    show = shown(eighths)
    lines = show.page.locator("#ink path")
    draw(show)
    assert (lines.count(), show.place()) == (0, (1, 0))
    show.go(3, 0)
    show.press("d")
    draw(show)
    assert (lines.count(), show.place()) == (1, (3, 0))
    show.press("w")
    assert lines.count() == 0
    draw(show)
    show.press("ArrowRight")
    assert lines.count() == 1
    show.go(4, 0)
    assert lines.count() == 0


SWIPE = """([start, end]) => ['pointerdown', 'pointermove', 'pointerup'].forEach((type) => room.dispatchEvent(
    new PointerEvent(type, { pointerType: 'touch', clientY: 300, bubbles: true,
        clientX: type === 'pointerdown' ? start : end, buttons: type === 'pointerup' ? 0 : 1 })))"""


def test_a_swipe_goes_on_or_back_but_on_the_paper_a_finger_moves_the_paper(shown, eighths):
    show = shown(eighths)
    show.page.evaluate(SWIPE, [900, 700])
    assert show.place() == (2, 0)
    show.page.evaluate(SWIPE, [700, 900])
    assert show.place() == (1, 0)


def test_the_speed_of_the_motion_goes_round_and_is_kept(shown, eighths):
    show = shown(eighths)
    told = []
    for _ in range(3):
        show.press("s")
        told.append(show.page.evaluate("now.speed"))
    assert told == [2, 0.5, 1]
    show.press("s")
    reload_until(show.page, lambda: show.page.evaluate("now.speed") == 2, "the speed is kept")


def test_the_words_of_the_controls_stand_in_no_script(eighths):
    """All words come from templates, where a translation finds them."""
    page = slides_html(slide_show(eighths, core_sheet(eighths)))
    script = page[page.rindex("<script>") :]
    for word in ("Time is up", "Notes", "Slow", "Minutes", "panels", "Predict"):
        assert f'"{word}' not in script
