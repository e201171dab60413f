"""The fold moves, and ends exactly where the model says."""

import math

import pytest
from lessons_in_words import EIGHTHS, proved
from svg_paths import corners_of

from foldmath.lesson.trace import trace

FOLDS = {
    "halvings": EIGHTHS,
    "behind": ("fold top edge to bottom edge, behind", "fold at 1/3 moving left, behind"),
    "gate": ("fold both edges to middle", "fold top and bottom edges to middle"),
    "pleat": ("pleat width into 5", "pleat height into 3"),
    "slanted": ("fold bottom left corner to top right corner", "fold along (0, 0) (1, 1) moving (0, 1)"),
    "outside": ("fold at 1/4 moving right", "turn over", "fold left edge to 1/3"),
    "opened": (*EIGHTHS[:2], "open last", "open"),
}


def polygons(show, selector):
    """Give the outlines of paths on screen as sets of corners, each rounded to a thousandth of a mm."""
    told = show.page.eval_on_selector_all(selector, "(all) => all.map((one) => one.getAttribute('d'))")
    return {
        frozenset((round(x, 3), round(y, 3)) for x, y in loop) for path in told for loop in corners_of(path)
    }


@pytest.mark.parametrize("steps", FOLDS.values(), ids=FOLDS)
def test_the_creases_of_the_opened_sheet_are_those_of_the_trace(shown, steps):
    show = shown(proved(*steps))
    told = trace(show.made)["steps"]
    for index in range(len(steps)):
        if not show.slides[index + 2].opens:
            continue
        outline = show.slides[index + 2].picture.opened.outline
        scale = (outline[1].x - outline[0].x) / 11
        for kind in ("valley", "mountain"):
            drawn = lines(show, index + 3, kind)
            wanted = [
                [placed(crease[end], outline[3], scale) for end in ("from", "to")]
                for crease in told[index]["creases"]
                if crease["fold"] == kind
            ]
            assert sum(math.dist(*line) for line in drawn) == pytest.approx(
                sum(math.dist(*line) for line in wanted), abs=0.05
            )
            for line in wanted:
                assert any(lies_on(line, other) for other in drawn)


def lines(show, scene, kind):
    """Give the lines of a kind on the opened sheet, with those that an earlier slide's sheet lends it."""
    told = show.page.eval_on_selector(
        f"#scene-{scene} .opened",
        """(sheet, kind) => [sheet, ...[...sheet.querySelectorAll('use')]
            .map((lent) => document.querySelector(lent.getAttribute('href')))]
            .flatMap((each) => [...each.querySelectorAll(`.${kind}`)].map((one) => one.getAttribute('d')))""",
        kind,
    )
    return [line for path in told for line in corners_of(path)]


def placed(point, top_left, scale):
    """Carry a point of the trace to the screen, heights from the top."""
    x, y = map(number_in, point)
    return (top_left.x + x * scale, top_left.y + (8.5 - y) * scale)


def lies_on(line, other):
    (start, end) = other
    return all(math.dist(start, spot) + math.dist(spot, end) - math.dist(start, end) < 0.01 for spot in line)


def number_in(text):
    above, _, below = text.partition("/")
    return int(above) / int(below or 1)


SCRUB = """(value) => {
    const range = document.getElementById('motion');
    range.value = value;
    range.dispatchEvent(new Event('input', { bubbles: true }));
}"""


def test_half_way_the_moving_part_stands_up_and_the_rest_lies_still(shown, eighths):
    show = shown(eighths)
    show.go(3, 1)
    still_before = polygons(show, "#scene-3 .stage [data-moves='0'] .paper")
    show.page.evaluate(SCRUB, 500)
    moving = polygons(show, "#scene-3 .stage [data-moves='1'] .first .paper").pop()
    crease = 30.0
    assert max(abs(x - crease) for x, _ in moving) < 10
    assert still_before == polygons(show, "#scene-3 .stage [data-moves='0'] .paper")


def test_the_side_that_is_seen_changes_half_way(shown, eighths):
    show = shown(eighths)
    show.go(3, 1)
    sides = []
    for value in (400, 600):
        show.page.evaluate(SCRUB, value)
        sides.append(
            show.page.locator("#scene-3 .stage [data-moves='1'] .face >> visible=true").get_attribute("class")
        )
    assert sides == ["face printed first", "face back last"]


PICTURES = ["before", "motion", "after", "opened"]
SHOWING = """['before', 'motion', 'after', 'opened'].filter((name) =>
    here().querySelector('.' + name).checkVisibility({ visibilityProperty: true }))"""


def test_one_picture_shows_at_a_time_and_all_are_at_one_scale(shown, eighths):
    show = shown(eighths)
    told = []
    for reveal in (0, 1, 2, 3, 5):
        show.go(4, reveal)
        told.append(show.page.evaluate(SHOWING))
    show.page.evaluate(SCRUB, 500)
    told.append(show.page.evaluate(SHOWING))
    assert told == [["before"], ["before"], ["after"], ["opened"], ["opened"], ["motion"]]
    boxes = {show.page.locator(f"#scene-4 .{name}").get_attribute("viewBox") for name in PICTURES}
    assert len(boxes) == 1


PRESSED_ON_THE_WAY = """() => {
    // Within the page: on a busy machine the fold may be over before anybody outside has looked twice.
    const look = () => {
        if (!(now.time > 0.05 && now.time < 1)) return requestAnimationFrame(look);
        window.pressedAt = now.time;
        document.body.dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowRight", bubbles: true }));
    };
    look();
}"""


def test_next_plays_the_fold_and_pressing_it_again_ends_it(shown, eighths):
    show = shown(eighths, calm=False)
    show.go(3, 1)
    show.page.evaluate(PRESSED_ON_THE_WAY)
    show.press("ArrowRight")
    show.wait_until("window.pressedAt !== undefined")
    assert 0.05 < show.page.evaluate("window.pressedAt") < 1
    assert show.place() == (3, 2)
    assert show.page.locator("#motion").input_value() == "1000"


def test_the_fold_plays_to_its_end(shown, eighths):
    show = shown(eighths, calm=False)
    show.go(3, 1)
    show.press("ArrowRight")
    show.wait_until("now.time === 1 && !now.playing")
    assert show.page.locator("#scene-3 .after").is_visible()


def test_who_asked_for_less_motion_sees_stills_one_after_the_other(shown, eighths):
    show = shown(eighths, calm=True)
    show.go(3, 1)
    show.page.evaluate("window.times = []; moved.push(() => times.push(now.time))")
    show.press("ArrowRight")
    show.wait_until("now.time === 1 && !now.playing")
    assert show.page.evaluate("[...new Set(times)]") == [0.3, 0.7, 1]
    assert show.place() == (3, 2)


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


def test_the_words_for_the_pictures_answer_what_the_slide_asks(shown, eighths):
    show = shown(eighths)
    show.go(5, 5)
    before, after, opened = (
        show.page.locator(f"#scene-5 .{name}").get_attribute("aria-label")
        for name in ("before", "after", "opened")
    )
    assert before == (
        "The folded sheet covers 1/4 of the dotted outline of the whole sheet, up to 4 layers thick. "
        "The back side is up. The star is at the bottom right, on the side below. "
        "A dashed line to fold on runs from top to bottom, at 1/2 of the width."
    )
    assert after == (
        "The folded sheet covers 1/8 of the dotted outline of the whole sheet, up to 8 layers thick. "
        "The back side is up. The star is at the bottom right, on the side below."
    )
    assert opened == (
        "The opened sheet has 8 panels. They lie 4 across and 2 up. Each is 1/8 of the sheet. "
        "It has 4 valley creases. It has 3 mountain creases."
    )
