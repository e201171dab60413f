"""The fold moves, and ends exactly where the model says."""

import pytest
from lessons_in_words import EIGHTHS, proved

from foldmath.lesson.trace import trace
from foldmath.plane.numbers import denominator, numerator
from foldmath.slides.pictures import LONGEST_MM, MARGIN_MM
from foldmath.slides.slides import StepSlide

FOLDS = {
    "halvings": EIGHTHS,
    "behind": ("fold top edge to bottom edge, behind", "fold at 1/3 moving left, behind"),
    "gate": ("fold both edges to middle", "fold top and bottom edges to middle"),
    "pleat": ("pleat width into 5", "pleat height into 3"),
    "slanted": ("fold bottom left corner to top right corner", "fold along (0, 0) (1, 1) moving (0, 1)"),
    "outside": ("fold at 1/4 moving right", "turn over", "fold left edge to 1/3"),
    "opened": (*EIGHTHS[:2], "open last", "open"),
}


def number(exact):
    return numerator(exact) / denominator(exact)


def polygons(show, selector, attribute="points"):
    """Give polygons on screen as sets of corners, each corner rounded to a thousandth of a mm."""
    told = show.page.eval_on_selector_all(
        selector, f"(all) => all.map((one) => one.getAttribute('{attribute}') ?? one.dataset.{attribute})"
    )
    return {
        frozenset(tuple(round(float(part), 3) for part in pair.split(",")) for pair in points.split())
        for points in told
    }


def placed(corners, left, top, scale):
    """Carry corners of the model to the screen, heights from the top."""
    return frozenset(
        (round(MARGIN_MM + (x - left) * scale, 3) + 0.0, round(MARGIN_MM + (top - y) * scale, 3) + 0.0)
        for x, y in corners
    )


def near(ours, theirs):
    """Tell whether two sets of polygons are the same, give or take a thousandth of a mm."""

    def alike(one, other):
        return len(one) == len(other) and all(
            any(abs(x - u) <= 0.0011 and abs(y - v) <= 0.0011 for u, v in other) for x, y in one
        )

    return all(any(alike(one, other) for other in theirs) for one in ours) and all(
        any(alike(one, other) for other in ours) for one in theirs
    )


@pytest.mark.parametrize("steps", FOLDS.values(), ids=FOLDS)
def test_the_panels_of_the_opened_sheet_are_those_of_the_trace(shown, steps):
    show = shown(proved(*steps))
    told = trace(show.made)["steps"]
    for index in range(len(steps)):
        show.go(index + 3, show.slides[index + 2].last)
        wanted = set()
        for panel in told[index]["panels"]:
            corners = [[number_in(part) for part in corner] for corner in panel["corners"]]
            scale = (LONGEST_MM - 2 * MARGIN_MM) / 11
            wanted.add(placed(corners, 0, 8.5, scale))
        on_screen = polygons(show, f"#scene-{index + 3} .panels polygon")
        assert len(on_screen) == len(told[index]["panels"])
        assert near(on_screen, wanted)


def number_in(text):
    above, _, below = text.partition("/")
    return int(above) / int(below or 1)


def view_of(slide, moment):
    """Find the scale and the shift of a picture from the dotted whole, which it and the model share."""
    on_screen, whole = slide.lying.after.whole, moment.after.whole
    across = number(whole[1].x - whole[0].x) or number(whole[1].y - whole[0].y)
    screen = (on_screen[1].x - on_screen[0].x) or (on_screen[0].y - on_screen[1].y)
    scale = abs(screen / across)
    return scale, on_screen[0].x - number(whole[0].x) * scale, on_screen[0].y + number(whole[0].y) * scale


@pytest.mark.parametrize("steps", FOLDS.values(), ids=FOLDS)
def test_the_last_frame_lies_where_the_model_lays_the_paper(shown, steps):
    show = shown(proved(*steps), calm=False)
    for number_of_scene, slide in enumerate(show.slides, start=1):
        if not isinstance(slide, StepSlide) or not slide.lying.stages:
            continue
        show.go(number_of_scene, 1)
        show.page.evaluate(SCRUB, 999)
        show.page.evaluate(SCRUB, 1000)
        moment = show.made.moments[slide.number - 1]
        scale, left, down = view_of(slide, moment)
        wanted = {
            frozenset((left + number(x) * scale, down - number(y) * scale) for x, y in panel.lying)
            for panel in moment.after.panels
        }
        rest = polygons(show, f"#scene-{number_of_scene} .rest[data-at=end] .paper")
        stage = polygons(show, f"#scene-{number_of_scene} .stage:nth-last-of-type(2) .paper")
        assert near(rest, wanted)
        if slide.does == "fold":
            assert near(stage, wanted)


SCRUB = """(value) => {
    const range = document.getElementById('motion');
    range.value = value;
    range.dispatchEvent(new Event('input', { bubbles: true }));
}"""


def test_half_way_the_moving_part_stands_up_and_the_rest_lies_still(shown, eighths):
    show = shown(eighths)
    show.go(3, 1)
    show.page.evaluate(SCRUB, 500)
    moving = polygons(show, "#scene-3 .stage [data-moves='1'] .paper").pop()
    still = polygons(show, "#scene-3 .stage [data-moves='0'] .paper")
    crease = 30.0
    assert max(abs(x - crease) for x, _ in moving) < 10
    assert still == polygons(show, "#scene-3 .stage [data-moves='0']", "start")


def test_the_side_that_is_seen_changes_half_way(shown, eighths):
    show = shown(eighths)
    show.go(3, 1)
    sides = []
    for value in (400, 600):
        show.page.evaluate(SCRUB, value)
        sides.append(show.page.locator("#scene-3 .stage [data-moves='1']").get_attribute("class"))
    assert sides == ["flap printed", "flap back"]


def test_next_plays_the_fold_and_pressing_it_again_ends_it(shown, eighths):
    show = shown(eighths, calm=False)
    show.go(3, 1)
    show.press("ArrowRight")
    show.wait_until("now.time > 0.05 && now.time < 1")
    show.press("ArrowRight")
    assert show.place() == (3, 2)
    assert show.page.locator("#motion").input_value() == "1000"


def test_the_fold_plays_to_its_end(shown, eighths):
    show = shown(eighths, calm=False)
    show.go(3, 1)
    show.press("ArrowRight")
    show.wait_until("now.time === 1 && !now.playing")
    assert show.page.locator("#scene-3 .rest[data-at=end]").is_visible()


def test_who_asked_for_less_motion_sees_none(shown, eighths):
    show = shown(eighths, calm=True)
    show.go(3, 1)
    show.press("ArrowRight")
    assert show.page.evaluate("[now.time, now.playing]") == [1, 0]


def test_arrow_keys_move_the_paper_while_the_slider_has_the_focus(shown, eighths):
    show = shown(eighths)
    show.go(3, 1)
    show.page.locator("#motion").focus()
    show.press("ArrowRight", "ArrowRight")
    assert show.place() == (3, 1)
    assert 0 < show.page.evaluate("now.time") < 0.01
    show.press("End")
    assert show.place() == (3, 2)


def test_a_finger_drags_the_paper(shown, eighths):
    show = shown(eighths)
    show.go(3, 1)
    mouse = show.page.mouse
    mouse.move(200, 250)
    mouse.down()
    mouse.move(330, 250, steps=4)
    assert 0.1 < show.page.evaluate("now.time") < 0.9
    mouse.up()
    assert show.place() == (3, 1)


def test_the_words_for_the_pictures_come_from_the_model(shown, eighths):
    show = shown(eighths)
    show.go(5, 5)
    opened = show.page.locator("#scene-5 .opened").get_attribute("aria-label")
    lying = show.page.locator("#scene-5 .lying").get_attribute("aria-label")
    assert opened == "The sheet is folded into 8 panels, 4 across and 2 up; each is 1/8 of the sheet."
    assert lying == (
        "The folded sheet covers 1/8 of the dotted outline of the whole sheet, up to 8 layers thick."
    )
