"""Going through the slides: nothing goes on by itself, and every key a teacher tries does what it says."""

import pytest
from lessons_in_words import proved

from foldmath.slides.slides import StepSlide


def all_places(show):
    return [
        (number, reveal)
        for number, slide in enumerate(show.slides, start=1)
        for reveal in range(slide.last + 1)
    ]


@pytest.mark.sweep("seed-trays")
def test_every_scene_of_our_lessons_and_every_reveal_is_reached_by_one_key(shown, lesson):
    goes_through(shown(lesson), "ArrowRight")


@pytest.mark.parametrize("key", [" ", "PageDown", "Enter"])
def test_other_keys_and_those_of_a_presenters_remote_go_on_too(shown, eighths, key):
    goes_through(shown(eighths), key)


def goes_through(show, key):
    places = all_places(show)
    reached = [(1, 0)]
    for _ in places[1:]:
        show.press(key)
        reached.append(show.place())
    assert reached == places
    show.press(key)
    assert show.place() == places[-1]


@pytest.mark.parametrize("key", ["ArrowLeft", "PageUp"])
def test_going_back_passes_the_same_places(shown, eighths, key):
    show = shown(eighths)
    places = all_places(show)
    show.press("End")
    reached = [show.place()]
    for _ in places[1:]:
        show.press(key)
        reached.append(show.place())
    assert reached == places[::-1]


def test_home_and_end_go_to_the_first_scene_and_to_the_last(shown, eighths):
    show = shown(eighths)
    show.press("End")
    assert show.place() == all_places(show)[-1]
    show.press("Home")
    assert show.place() == (1, 0)


def test_question_then_count_then_size_then_whole_is_the_order_of_a_fold(shown, eighths):
    show = shown(eighths)
    show.go(5, 0)
    seen = [show.seen()]
    for _ in range(5):
        show.press("ArrowRight")
        seen.append(show.seen())
    predict = "Predict: how many panels will there be?"
    fraction = "What fraction of the whole sheet is one panel?"
    count, size, whole = "4 × 2 = 8 panels", "1 /2 of 1 /4 = 1 /8 of the sheet", "8 × 1 /8 = 1 whole sheet"
    plain = [[words.replace("\u00a0", " ").replace("  ", " ") for words in told] for told in seen]
    # Where letters have little room, a question that is answered gives way to its answer.
    asked = {predict: count, fraction: size}
    told = [[words for words in now if asked.get(words) not in now] for now in plain]
    assert told == [
        [],
        [predict],
        [predict],
        [count, fraction],
        [count, size],
        [count, size, whole],
    ]


def test_fractions_in_panels_wait_for_the_size_sentence(shown, eighths):
    show = shown(eighths)
    for reveal in range(6):
        show.go(5, reveal)
        assert show.page.locator("#scene-5 .figure >> visible=true").count() == (8 if reveal >= 4 else 0)


def test_what_is_revealed_is_said_to_those_who_listen(shown, eighths):
    show = shown(eighths)
    show.go(5, 2)
    show.press("ArrowRight")
    assert show.page.locator("#live").inner_text().replace("\u00a0", " ") == (
        "4 × 2 = 8 panels. What fraction of the whole sheet is one panel?"
    )
    show.press("ArrowRight")
    assert "1/8 of the sheet" in show.page.locator("#live").inner_text().replace("\u00a0", " ")


def test_a_reload_keeps_the_place(shown, eighths):
    show = shown(eighths)
    show.go(4, 3)
    before = show.seen()
    show.page.reload()
    assert show.place() == (4, 3)
    assert show.seen() == before


@pytest.mark.parametrize("address", ["#scene-99-9", "#scene-0", "#scene-4-77", "#elsewhere", "#scene--1"])
def test_an_address_that_is_nowhere_leads_to_a_scene(shown, eighths, address):
    show = shown(eighths)
    show.page.evaluate(f"location.hash = '{address}'")
    show.wait_until(f"location.hash !== '{address}'")
    assert show.page.locator(".scene >> visible=true").count() == 1
    assert show.complaints == []


def test_a_tap_at_the_right_goes_on_and_one_at_the_left_goes_back(shown, eighths):
    show = shown(eighths)
    show.page.mouse.click(900, 300)
    assert show.place() == (2, 0)
    show.page.mouse.click(100, 300)
    assert show.place() == (1, 0)


def test_the_bar_does_what_the_keys_do(shown, eighths):
    show = shown(eighths)
    show.page.get_by_role("button", name="Next").click()
    assert show.place() == (2, 0)
    show.press("Space")
    assert show.place() == (3, 0)
    show.page.get_by_role("button", name="Back").click()
    assert show.place() == (2, 0)


def test_the_list_opens_at_the_slide_that_shows(shown, eighths):
    show = shown(eighths)
    show.go(4, 2)
    show.press("l")
    assert show.page.evaluate("document.activeElement.dataset.scene") == "4"


def test_the_list_opens_by_key_and_leads_to_a_step(shown, eighths):
    show = shown(eighths)
    show.press("l", "Tab", "Tab", "Tab", "Enter")
    assert show.place() == (4, 0)
    show.press("l", "Escape", "ArrowRight")
    assert show.place() == (4, 1)


def test_a_hidden_slide_is_black_until_any_key(shown, eighths):
    show = shown(eighths)
    show.press("h")
    cover = show.page.locator("#cover")
    assert cover.bounding_box() == {"x": 0, "y": 0, "width": 1280, "height": 800}
    show.press("ArrowRight")
    assert not cover.is_visible()
    assert show.place() == (1, 0)


def test_nothing_goes_on_by_itself(shown, eighths):
    show = shown(eighths, calm=False)
    show.go(3, 1)
    show.page.wait_for_timeout(400)
    assert show.place() == (3, 1)
    assert show.page.locator("#motion").input_value() == "0"


def test_keyboard_alone_reaches_every_control(shown, eighths):
    show = shown(eighths)
    show.go(3, 1)
    reached = set()
    for _ in range(18):
        show.press("Tab")
        reached.add(show.page.evaluate("document.activeElement.id"))
    assert {
        "back",
        "next",
        "motion",
        "list",
        "notes",
        "minutes",
        "draw",
        "wipe",
        "hide",
        "speed",
        "enlarge",
    } <= reached


def test_every_kind_of_step_has_a_scene(shown):
    made = proved(
        "fold both edges to middle",
        "open last",
        "turn over",
        "open",
        "turn left",
        "pleat height into 4",
        "open",
    )
    show = shown(made)
    steps = [slide for slide in show.slides if isinstance(slide, StepSlide)]
    assert [slide.does for slide in steps] == ["fold", "open", "turn", "open", "turn", "fold", "open"]
    for number, reveal in all_places(show):
        show.go(number, reveal)
    assert show.complaints == []
