"""Folding by pointing in a real browser: by mouse, by finger and by keys alone."""

import tomllib

import pytest
from chromium import new_windows, until
from desk_on_screen import READY, Bench, served_apart

LESSON = 'title = "Trays"\ngrade = 4\npaper = "letter"\norientation = "landscape"\nsteps = []\n'

SEEN_IN_MOTION = """() => new MutationObserver(() => {
    if (document.querySelector('#bench .motion .stage')) document.body.dataset.seen = 'in motion';
}).observe(document.querySelector('#bench'), { childList: true })"""
"""Within the page: on a busy machine the motion may be over before anybody outside has looked."""


@pytest.fixture(scope="module")
def desk(tmp_path_factory, pictures):
    with served_apart(tmp_path_factory, pictures) as desk:
        yield desk


@pytest.fixture
def opened(chromium, desk):
    """Give a function that opens a lesson of some steps in a window."""
    contexts = []

    def show(*steps, width=1280, height=800, calm=True, **options) -> Bench:
        named = LESSON.replace("[]", str(list(steps)))
        (desk.folder / "trays.toml").write_text(named, encoding="utf-8")
        context = new_windows(
            chromium,
            viewport={"width": width, "height": height},
            reduced_motion="reduce" if calm else "no-preference",
            **options,
        )
        contexts.append(context)
        bench = Bench(context.new_page(), [])
        bench.page.on("console", lambda message: bench.complaints.append(message.text))
        bench.page.on("pageerror", lambda error: bench.complaints.append(str(error)))
        bench.page.goto(desk.address)
        bench.page.goto(f"http://127.0.0.1:{desk.port}/lesson/trays/fold")
        bench.wait()
        return bench

    yield show
    for context in contexts:
        context.close()


def in_file(desk) -> list[str]:
    return tomllib.loads((desk.folder / "trays.toml").read_text("utf-8"))["steps"]


class TestByMouse:
    def test_an_edge_is_carried_to_the_opposite_edge_and_the_sentence_is_in_the_file(self, opened, desk):
        bench = opened()
        bench.carry("left edge", 0.98, 0.02)
        assert bench.coming() == "fold the left edge to the right edge"
        bench.let_go()
        assert bench.steps() == in_file(desk) == ["fold the left edge to the right edge"]
        assert bench.complaints == []

    def test_near_a_simple_part_the_paper_snaps_and_the_plainer_pulls_harder(self, opened):
        bench = opened()
        width, _ = bench.size()
        bench.carry("left edge", 0.5 - 9 / width, 0)
        assert bench.coming() == "fold the left edge to the middle"
        assert "snapped" in bench.page.locator("#bench").get_attribute("class")

    def test_while_it_is_carried_the_flap_and_the_crease_are_seen_and_nothing_is_saved(self, opened, desk):
        bench = opened()
        bench.carry("top right corner", -0.5, 0.5)
        assert bench.page.locator("#preview .flap-over").count() == 1
        assert bench.page.locator("#preview .crease-to-come").count() == 1
        assert in_file(desk) == []

    def test_escape_puts_it_back(self, opened, desk):
        bench = opened()
        bench.carry("top edge", 0, 0.5)
        bench.page.keyboard.press("Escape")
        bench.let_go()
        assert in_file(desk) == []
        assert bench.page.locator("#preview > *").count() == 0

    def test_far_from_every_line_letting_go_puts_it_back(self, opened, desk):
        bench = opened()
        bench.carry("left edge", -0.3, 0)
        bench.let_go()
        assert in_file(desk) == []

    def test_a_held_key_folds_behind(self, opened, desk):
        bench = opened()
        bench.page.keyboard.down("Shift")
        bench.carry("right edge", -0.5, 0)
        assert bench.page.locator("#preview .flap-behind").count() == 1
        bench.let_go()
        bench.page.keyboard.up("Shift")
        assert in_file(desk) == ["fold the right edge to the middle, behind"]

    def test_what_was_seen_is_where_the_paper_lies_after_it(self, opened):
        bench = opened()
        bench.carry("left edge", 0.5, 0)
        crease = bench.page.locator("#preview .crease-to-come").bounding_box()
        shown = crease["x"] + crease["width"] / 2
        bench.let_go()
        folded = bench.page.locator(".paper-now .flap .paper").last.bounding_box()
        assert folded["x"] == pytest.approx(shown, abs=4)

    def test_the_paper_moves_as_on_the_slides_before_it_lies(self, opened):
        bench = opened(calm=False)
        bench.carry("left edge", 0.98, 0)
        bench.page.evaluate(SEEN_IN_MOTION)
        bench.let_go()
        assert bench.page.locator("body").get_attribute("data-seen") == "in motion"
        assert bench.page.locator("#bench .motion").count() == 0
        assert bench.steps() == ["fold the left edge to the right edge"]


class TestByFinger:
    def drag(self, bench, name, across, down, second=None):
        x, y = bench.middle_of(name)
        width, height = bench.size()
        end = (x + across * width, y + down * height)
        bench.touch("touchStart", (x, y))
        bench.touch("touchMove", ((x + end[0]) / 2, (y + end[1]) / 2))
        bench.touch("touchMove", end)
        if second:
            bench.touch("touchStart", end, second)
        bench.settle()
        said = bench.coming()
        bench.touch("touchEnd")
        bench.settle()
        return said

    def test_a_finger_folds_on_a_phone(self, opened, desk):
        bench = opened(width=360, height=740, has_touch=True, is_mobile=True)
        self.drag(bench, "bottom right corner", -0.98, -0.98)
        assert in_file(desk) == ["fold the bottom right corner to the top left corner"]
        assert bench.page.evaluate("() => document.documentElement.scrollWidth - innerWidth") <= 0

    def test_a_second_finger_means_behind(self, opened):
        bench = opened(width=800, height=1000, has_touch=True)
        x, y = bench.middle_of("top edge")
        assert (
            self.drag(bench, "left edge", 0.5, 0, (x, y + 60)) == "fold the left edge to the middle, behind"
        )


class TestByKeys:
    def test_tab_finds_edges_and_corners_by_name(self, opened):
        bench = opened()
        bench.page.locator(".grip").first.focus()
        names = []
        for _ in range(8):
            names.append(bench.page.evaluate("() => document.activeElement.getAttribute('aria-label')"))
            bench.page.keyboard.press("Tab")
        assert names[:4] == ["left edge", "bottom edge", "right edge", "top edge"]
        assert sorted(names[4:]) == [
            "bottom left corner",
            "bottom right corner",
            "top left corner",
            "top right corner",
        ]

    def test_enter_takes_arrows_choose_and_speak_and_enter_folds(self, opened, desk):
        bench = opened()
        keys = bench.page.keyboard
        bench.page.get_by_role("button", name="top edge", exact=True).focus()
        keys.press("Enter")
        bench.page.wait_for_function(
            "() => document.querySelector('#spoken').textContent.includes('in the hand')"
        )
        keys.press("ArrowDown")
        assert bench.coming() == "fold the top edge to the bottom edge"
        keys.press("ArrowDown")
        assert bench.coming() == "fold the top edge to the middle"
        keys.press("ArrowUp")
        bench.page.wait_for_function(
            "() => document.querySelector('#spoken').textContent === 'fold the top edge to the bottom edge'"
        )
        keys.press("Enter")
        bench.settle()
        assert in_file(desk) == ["fold the top edge to the bottom edge"]
        assert "2 panels" in bench.spoken()
        assert bench.page.evaluate("() => document.activeElement.getAttribute('aria-label')") == "top edge"

    def test_escape_puts_back_what_keys_took(self, opened, desk):
        bench = opened()
        bench.page.get_by_role("button", name="left edge", exact=True).focus()
        for key in ("Enter", "ArrowRight", "Escape", "Escape"):
            bench.page.keyboard.press(key)
        assert bench.page.locator("#preview > *").count() == 0
        assert in_file(desk) == []

    def test_a_first_lesson_by_keys_alone_eighths_shaded_undone_and_done_again(self, opened, desk):
        bench = opened()
        page = bench.page
        for name in ("left edge", "top edge", "left edge"):
            page.get_by_role("button", name=name, exact=True).focus()
            for key in ("Enter", "ArrowDown", "Enter"):
                page.keyboard.press(key)
            bench.settle()
        page.get_by_role("button", name="Open", exact=True).focus()
        page.keyboard.press("Enter")
        bench.settle()
        folded = [
            "fold the left edge to the right edge",
            "fold the top edge to the bottom edge",
            "fold the left edge to the right edge",
        ]
        assert in_file(desk) == [*folded, "open the sheet"]
        page.get_by_role("button", name="Undo").focus()
        page.keyboard.press("Enter")
        bench.settle()
        assert in_file(desk) == folded
        page.get_by_role("button", name="Redo").focus()
        page.keyboard.press("Enter")
        bench.settle()
        assert in_file(desk) == [*folded, "open the sheet"]


class TestTheList:
    def test_a_sentence_is_typed_and_a_slip_says_what_would_do_beside_the_field(self, opened, desk):
        bench = opened()
        field = bench.page.get_by_label("Add a step")
        field.fill("fold left egde to right edge")
        field.press("Enter")
        bench.page.get_by_role("button", name="Do this instead").click()
        bench.page.wait_for_selector("#steps .sentence")
        assert in_file(desk) == ["fold left edge to right edge"]

    def test_a_step_is_changed_in_place_and_one_that_cannot_be_done_says_why_there(self, opened, desk):
        bench = opened("fold left edge to right edge", "open")
        bench.page.locator(".sentence").first.click()
        field = bench.page.get_by_label("Step 1", exact=True)
        field.fill("open")
        field.press("Enter")
        bench.page.wait_for_selector("#steps .editor .slip:not(:empty)")
        assert in_file(desk) == ["fold left edge to right edge", "open"]
        field.fill("fold top edge to 1/3")
        field.press("Enter")
        bench.page.wait_for_selector("#steps:not(:has(.editor))")
        assert in_file(desk) == ["fold top edge to 1/3", "open"]

    def test_what_can_no_longer_be_done_is_marked_and_the_sheet_shows_the_steps_before(self, opened):
        bench = opened("fold left edge to right edge", "open last", "turn over")
        bench.page.get_by_role("button", name="Take out step 1").click()
        bench.page.wait_for_selector("#steps .refused")
        assert bench.page.locator("#steps .waits").count() == 1

    def test_a_fan_is_chosen_by_its_sentence(self, opened, desk):
        bench = opened()
        bench.page.get_by_role("button", name="Fan", exact=True).click()
        fan = "fold the height like a fan, into 5 equal parts"
        bench.page.get_by_role("button", name=fan).click()
        bench.page.wait_for_selector("#steps .sentence")
        assert in_file(desk) == [fan]

    def test_keys_go_through_the_cuts_and_back_to_their_button(self, opened, desk):
        bench = opened("fold left edge to right edge", "fold top edge to bottom edge", "open")
        bench.page.get_by_role("button", name="Cut", exact=True).press("Enter")
        bench.page.wait_for_selector(".ways:not([hidden]) button:nth-child(3)")
        _, second, *_, last = bench.page.locator(".ways:not([hidden]) button").all_inner_texts()
        for key in ("ArrowDown", "ArrowUp", "ArrowUp"):
            bench.page.keyboard.press(key)
        assert bench.page.locator(":focus").inner_text() == last
        bench.page.keyboard.press("Escape")
        assert bench.page.locator(":focus").inner_text() == "Cut"
        assert bench.page.locator(".ways:visible").count() == 0
        for key in ("Enter", "ArrowDown", "Enter"):
            bench.page.keyboard.press(key)
        bench.page.wait_for_selector("#steps li:nth-child(4)")
        assert in_file(desk)[-1] == second

    @pytest.mark.parametrize("width", [390, 1366])
    def test_the_ways_of_an_act_are_read_whole_on_every_screen(self, opened, width):
        bench = opened()
        bench.page.set_viewport_size({"width": width, "height": 844})
        bench.page.get_by_role("button", name="Fan", exact=True).click()
        ways = bench.page.get_by_role("group", name="Fan: into how many parts, which way").locator("button")
        assert ways.count() == 22
        assert ways.evaluate_all("all => all.every((way) => way.scrollWidth <= way.clientWidth)")

    def test_a_button_that_cannot_be_pressed_says_why_and_does_nothing(self, opened, desk):
        bench = opened()
        button = bench.page.get_by_role("button", name="Open last")
        assert button.get_attribute("aria-disabled") == "true"
        button.click(force=True)
        assert bench.page.locator("#why-open-last").is_visible()
        assert in_file(desk) == []

    def test_an_act_that_a_closed_desk_does_not_answer_is_not_done_and_says_so(self, opened, desk):
        bench = opened("fold left edge to right edge")
        bench.page.route("**/fold/act", lambda route: route.abort())
        bench.page.get_by_label("Add a step").fill("turn over")
        bench.page.get_by_label("Add a step").press("Enter")
        bench.page.get_by_text("The desk does not answer. Open it again.").wait_for()
        assert bench.page.get_by_label("Add a step").input_value() == "turn over"
        assert in_file(desk) == ["fold left edge to right edge"]


class TestTwoWindows:
    def test_a_second_window_sees_what_the_first_did_and_neither_overwrites(self, opened, desk):
        first = opened("fold left edge to right edge")
        second = Bench(first.page.context.new_page(), [])
        second.page.goto(first.page.url)
        second.wait()
        first.page.get_by_label("Add a step").fill("turn over")
        first.page.get_by_label("Add a step").press("Enter")
        first.page.wait_for_selector("#steps li:nth-child(2)")
        second.page.get_by_label("Add a step").fill("turn left")
        second.page.get_by_label("Add a step").press("Enter")
        second.page.wait_for_selector("#outside button, #steps li:nth-child(3)")
        assert in_file(desk)[:2] == ["fold left edge to right edge", "turn over"]
        again = second.page.get_by_role("button", name="Do this here too: turn left")
        if again.count():
            again.click()
        second.page.wait_for_selector("#steps li:nth-child(3)")
        assert in_file(desk) == ["fold left edge to right edge", "turn over", "turn left"]

    def test_a_change_outside_is_shown(self, opened, desk):
        bench = opened("fold left edge to right edge")
        path = desk.folder / "trays.toml"
        path.write_text(path.read_text("utf-8").replace("left edge to right", "right edge to left"), "utf-8")
        bench.page.wait_for_selector('[data-written="fold right edge to left edge"]')

    def test_a_look_that_an_act_overtakes_draws_nothing_and_the_paper_waits_for_the_act(self, opened):
        bench = opened("fold left edge to right edge")
        page, looks, acts, drawn = bench.page, [], [], []
        page.route("**/fold/paper", lambda route: drawn.append(route))
        page.route("**/fold/digest", lambda route: looks.append(route))
        page.route("**/fold/act", lambda route: acts.append((route, route.fetch())))
        with page.expect_request("**/fold/digest"):
            page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
        with page.expect_request("**/fold/act"):
            page.get_by_role("button", name="Turn over", exact=True).click()
        until(page, lambda: acts, "an act")
        with page.expect_response("**/fold/digest"):
            looks[0].continue_()
        page.wait_for_timeout(200)
        assert (drawn, page.locator("body").get_attribute("data-ready")) == ([], "")
        route, done = acts[0]
        route.fulfill(response=done)
        bench.wait()
        assert bench.steps() == ["fold left edge to right edge", "turn the sheet over"]


class TestForEveryone:
    @pytest.mark.parametrize("steps", [(), ("fold left edge to 1/3", "fold top edge to middle"), ("open",)])
    @pytest.mark.parametrize("look", [{}, {"color_scheme": "dark"}])
    def test_axe_finds_nothing(self, opened, steps, look):
        axe = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe is not installed")
        bench = opened(*steps, bypass_csp=True, **look)
        found = axe.Axe().run(bench.page)
        assert found.violations_count == 0, found.generate_report()

    @pytest.mark.parametrize(("width", "height"), [(320, 256), (360, 740), (1280, 720), (3840, 2160)])
    def test_nothing_runs_out_of_the_window_sideways(self, opened, width, height):
        bench = opened("fold (0, 1/3) to (3/4, 1)", width=width, height=height)
        assert bench.page.evaluate("() => document.documentElement.scrollWidth - innerWidth") <= 0

    def test_the_page_is_ready_again_after_a_reload(self, opened):
        bench = opened("turn over")
        bench.page.reload()
        bench.page.wait_for_selector(READY)
        assert bench.steps() == ["turn over"]
