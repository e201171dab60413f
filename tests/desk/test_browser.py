"""The desk in a real Chromium: answers typed into the grid, and two windows on one lesson."""

import re

import pytest
from chromium import new_windows
from desk.test_attacks import served


@pytest.fixture(scope="module")
def desk(tmp_path_factory):
    folder = tmp_path_factory.mktemp("lessons")
    with served(folder) as (_, port, entry):
        yield folder, f"http://127.0.0.1:{port}", entry


@pytest.fixture
def page(chromium, desk):
    """Give a page that was let in, and hear what it complains of."""
    _, site, entry = desk
    context = new_windows(chromium)
    page = context.new_page()
    complaints = []
    page.on("console", lambda message: complaints.append(message.text))
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.goto(site + entry)
    page.site = site
    yield page
    context.close()
    assert complaints == []


@pytest.fixture
def grid(page):
    """Give the grid of two pupils, the first cell waiting."""
    take(page)
    page.goto(page.site + "/lesson/seed-trays/mark")
    page.get_by_label(re.compile("^Students")).fill("Ada Reed\nBo Marsh")
    page.get_by_role("button", name="Show the grid").click()
    # The script gives the first cell the focus once it hears what is typed.
    page.wait_for_selector("[aria-label='Ada Reed, 1']:focus")
    return page


def answer_both(grid):
    grid.keyboard.type("6/8")
    grid.keyboard.press("Enter")
    grid.keyboard.type("8/15")
    grid.keyboard.press("Tab")


def test_answers_are_typed_with_tab_and_enter_and_marked_at_once(grid):
    answer_both(grid)
    grid.wait_for_selector("[aria-label='Ada Reed, 1'][data-verdict=WRONG]")
    grid.wait_for_selector("[aria-label='Bo Marsh, 1'][data-verdict=RIGHT]")
    assert grid.evaluate("document.activeElement.getAttribute('aria-label')") == "Bo Marsh, 2"


def test_what_is_told_is_of_the_cell_left_last_though_an_older_answer_comes_in_after_it(grid):
    held = []
    grid.route("**/mark/cell", lambda route: route.continue_() if held else held.append(route))
    answer_both(grid)
    grid.wait_for_selector("[aria-label='Bo Marsh, 1'][data-verdict=RIGHT]")
    held[0].continue_()
    grid.wait_for_selector("[aria-label='Ada Reed, 1'][data-verdict=WRONG]")
    assert grid.locator("#why").inner_text().startswith("Bo Marsh, 1")


def test_the_second_of_two_windows_does_not_write_over_the_first(page):
    take(page)
    place = page.site + "/lesson/seed-trays/practice"
    other = page.context.new_page()
    for window in (page, other):
        window.goto(place)
    add(page, "1/2 × 3/5")
    page.get_by_role("button", name="Take out item 3").wait_for()
    add(other, "1/4 × 2/3")
    other.get_by_role("main").get_by_text("changed in another window").wait_for()


def test_an_item_is_written_with_keys_alone_and_a_refusal_puts_them_at_its_field(page):
    take(page)
    window = page.context.new_page()
    window.goto(page.site + "/lesson/seed-trays/practice")
    window.locator("#own > summary").focus()
    for text in ("", "A bed is 3/4 planted. How much is 1/2 of that?", "1/2 of"):
        window.keyboard.press("Tab" if text else "Enter")
        window.keyboard.type(text)
    window.keyboard.press("Enter")
    # The page may be there a moment before its field has the focus, and keys go to what has it.
    wrong = window.locator("#own [aria-invalid=true]:focus")
    wrong.wait_for()
    assert wrong.get_attribute("name") == "sum"
    window.keyboard.press("End")
    window.keyboard.type(" 3/4")
    for key in ("Tab", "Tab", "Tab", "Tab", "Tab", "Enter"):
        window.keyboard.press(key)
    # Beside the lesson's two products.
    window.get_by_role("button", name=re.compile("^Take out item")).nth(2).wait_for()
    assert window.get_by_text("in your own words", exact=True).count() == 1


def test_who_exchanges_an_item_far_down_is_still_there_and_keys_go_on_from_it(page):
    take(page)
    page.goto(page.site + "/lesson/seed-trays/practice")
    last = page.get_by_role("button", name=re.compile("^Another for item")).last
    number = last.get_attribute("aria-label").split()[-1]
    last.press("Enter")
    page.wait_for_url(f"**/practice?level=core#item-{number}")
    top = page.locator(f"#item-{number}").bounding_box()["y"]
    assert 0 <= top < page.viewport_size["height"]
    page.keyboard.press("Tab")
    assert page.locator(":focus").get_attribute("aria-label") == f"Keep item {number}"


@pytest.fixture
def printing(page):
    """Give the page on which a lesson is printed, with a class typed and a list chosen."""
    take(page)
    page.goto(page.site + "/lesson/seed-trays/print")
    page.get_by_text("A page for each student", exact=True).click()
    page.get_by_label(re.compile("^Students")).fill("Ada Reed")
    listed = {"name": "4b.csv", "mimeType": "text/csv", "buffer": b"name\nBo Marsh\n"}
    page.get_by_label(re.compile("^Or a list")).set_input_files(listed)
    return page


def test_every_wish_shows_at_once_however_fast_it_follows_and_nothing_typed_or_chosen_is_lost(printing):
    printing.get_by_label("A4").check()
    printing.get_by_label("Large print").check()
    printing.get_by_role("link", name="Exit ticket").click()
    printing.locator("#pages img[src*='exit-ticket.pdf/1.png?paper=A4&large=1']").first.wait_for()
    assert printing.evaluate("location.href").endswith("/print?document=exit-ticket.pdf&paper=A4&large=1")
    assert printing.get_by_role("link", name="Save this").get_attribute("href").endswith("paper=A4&large=1")
    assert printing.get_by_label(re.compile("^Students")).input_value() == "Ada Reed"
    assert printing.evaluate("document.forms.printing.list.files[0].name") == "4b.csv"


def test_pages_that_come_late_do_not_take_the_place_of_those_that_were_wished_for_after_them(printing):
    held = []
    printing.route("**/print?*paper=A4", lambda route: held.append(route))
    printing.get_by_label("A4").check()
    printing.get_by_label("Large print").check()
    printing.get_by_label("Letter").check()
    printing.locator("#pages img[src*='paper=letter&large=1']").first.wait_for()
    with printing.expect_response("**/print?*paper=A4"):
        held[0].continue_()
    printing.wait_for_timeout(100)
    assert printing.locator("#pages img[src*='paper=A4']").count() == 0


def test_enter_presses_the_button_of_its_own_part_of_a_form(printing):
    printing.get_by_label(re.compile("^Or a list")).set_input_files([])
    printing.get_by_label("Letter").press("Enter")
    printing.get_by_label("Name of the class").press("Enter")
    made = printing.locator(".made code")
    made.wait_for()
    assert made.inner_text().endswith("class-class")


def test_enter_in_a_goal_asks_for_ways_to_fold_it(page):
    page.goto(page.site + "/new")
    page.get_by_label("What should the folds show?").fill("2/3 × 4/5")
    page.keyboard.press("Enter")
    page.get_by_role("heading", name="Ways to fold 2/3 × 4/5").wait_for()


@pytest.fixture
def asked(page):
    """Hear whether the browser asks before something typed is lost; it is told to stay."""
    dialogs = []

    def stay(dialog):
        dialogs.append(dialog.type)
        dialog.dismiss()

    page.on("dialog", stay)
    return dialogs


def test_answers_that_were_typed_and_not_marked_are_not_lost_by_a_link(asked, grid):
    grid.keyboard.type("6/8")
    grid.get_by_role("link", name="Print").click(no_wait_after=True)
    grid.wait_for_timeout(300)
    assert asked == ["beforeunload"]
    assert grid.get_by_label("Ada Reed, 1", exact=True).input_value() == "6/8"
    grid.get_by_role("button", name="Mark the class").click()
    grid.wait_for_selector(".made")
    grid.get_by_role("link", name="Print").click()
    grid.wait_for_url("**/print")
    assert asked == ["beforeunload"]


def test_words_that_were_typed_in_one_form_are_not_lost_by_another(asked, page):
    take(page)
    page.goto(page.site + "/lesson/seed-trays/practice")
    page.get_by_text("Word bank", exact=True).click()
    words = page.get_by_label(re.compile("^One word on each line"))
    words.fill("panel")
    page.get_by_role("button", name="Other numbers everywhere").click(no_wait_after=True)
    page.wait_for_timeout(300)
    assert (asked, words.input_value()) == (["beforeunload"], "panel")
    page.get_by_role("button", name="Teach these words").click()
    page.wait_for_url("**/practice?level=core")
    assert asked == ["beforeunload"]


def test_saving_documents_asks_nothing_and_keeps_the_class_that_is_typed(asked, printing):
    with printing.expect_download():
        printing.get_by_role("button", name="Save the checked ones").click()
    assert (asked, printing.get_by_label(re.compile("^Students")).input_value()) == ([], "Ada Reed")


def add(window, product):
    window.get_by_label("A product of your own").fill(product)
    window.get_by_role("button", name="Add it").click()


def take(page):
    if page.get_by_role("link", name=re.compile("Seed trays")).count() == 0:
        page.get_by_role("button", name=re.compile("Seed trays")).click()
