"""How fast the slides are in a real Chromium: frames, first paint, the longest task, the size of the file.

What is compared stands in each benchmark's extra information; nothing here fails for being slow. Beside what
a clock says, which counts what else the machine does, stands what the page's own thread took of a processor.
"""

import json
from statistics import median

import pytest
from lessons_in_words import core_sheet, proved

from foldmath.making import proved_lesson
from foldmath.slides.page import slides_html
from foldmath.slides.slides import slide_show

HALVINGS = ("fold left edge to right edge", "fold top edge to bottom edge") * 5
PLACE_OF_OPENING = 13
TURNS = 5

PLAYED = """() => new Promise((done) => {
    goTo(%s, 1);
    const moments = [];
    const count = (moment) => {
        moments.push(moment);
        if (now.playing || moments.length < 3) requestAnimationFrame(count);
        else done(%s);
    };
    next();
    requestAnimationFrame(count);
})"""

COUNTED = PLAYED % ("%d", "moments.length")
FRAMES = PLAYED % ("%d", "moments.length / ((moments.at(-1) - moments[0]) / 1000)")

PAINT = """() => new Promise((done) => {
    const look = () => {
        const [first] = performance.getEntriesByName('first-contentful-paint');
        if (first) done(first.startTime); else setTimeout(look, 20);
    };
    look();
})"""

LONGEST = """() => new Promise((done) => {
    const tasks = [0];
    new PerformanceObserver((list) => tasks.push(...list.getEntries().map((task) => task.duration)))
        .observe({ type: 'longtask', buffered: true });
    let left = %d;
    const end = () => done(Math.max(...tasks));
    const on = () => { next(); left -= 1; if (left) setTimeout(on, 60); else setTimeout(end, 400); };
    on();
})"""


@pytest.fixture
def page(chromium):
    context = chromium.new_context(viewport={"width": 1920, "height": 1080})
    yield context.new_page()
    context.close()


TRACED = ["-*", "toplevel", "devtools.timeline"]


def processor_ms(chromium, page, doing):
    """Do something; give the processor time of each task of the page's own thread meanwhile, longest first.

    Source:
        Trace Event Format (Chromium project): ``tdur`` is a slice's thread time in microseconds.
    """
    chromium.start_tracing(page=page, categories=TRACED)
    try:
        doing()
    finally:
        events = json.loads(chromium.stop_tracing())["traceEvents"]
    main = {
        (event["pid"], event["tid"])
        for event in events
        if event["name"] == "thread_name" and event["args"]["name"] == "CrRendererMain"
    }
    tasks: dict[tuple[int, int], list[float]] = {}
    for event in events:
        thread = event["pid"], event["tid"]
        if thread in main and event["name"] == "ThreadControllerImpl::RunTask" and "tdur" in event:
            tasks.setdefault(thread, []).append(event["tdur"] / 1000)
    return sorted(max(tasks.values(), key=sum), reverse=True)


@pytest.fixture(scope="module")
def files(tmp_path_factory):
    folder = tmp_path_factory.mktemp("slides")
    halved = proved(*HALVINGS, "open")
    trays, _ = proved_lesson("lessons/seed-trays.toml")
    told = {
        "halvings": slides_html(slide_show(halved, core_sheet(halved))),
        "trays": slides_html(slide_show(trays, core_sheet(trays))),
    }
    told["empty"] = "<!DOCTYPE html><html lang='en'><title>-</title><p>.</p></html>"
    for name, text in told.items():
        (folder / f"{name}.html").write_text(text, encoding="utf-8")
    return folder


def test_opening_a_thousand_panels_keeps_the_pace_of_the_screen(benchmark, chromium, page, files):
    """The goal is the screen's 60 frames a second, at 1920 by 1080."""
    page.goto((files / "halvings.html").as_uri())
    rates = []
    benchmark.pedantic(
        lambda: rates.append(page.evaluate(FRAMES % (PLACE_OF_OPENING - 1))), rounds=2, iterations=1
    )
    benchmark.extra_info["frames a second"] = round(median(rates), 1)
    frames = []
    spent = processor_ms(
        chromium, page, lambda: frames.append(page.evaluate(COUNTED % (PLACE_OF_OPENING - 1)))
    )
    benchmark.extra_info["ms of processor a frame, of 16.7"] = round(sum(spent) / frames[0], 2)


def test_the_first_paint_comes_soon_after_that_of_an_empty_page(benchmark, page, files):
    """The goal is twice an empty page's."""

    def painted(name):
        page.goto((files / f"{name}.html").as_uri())
        return page.evaluate(PAINT)

    def both():
        return [(painted("trays"), painted("empty")) for _ in range(TURNS)]

    told = benchmark.pedantic(both, rounds=1, iterations=1)
    benchmark.extra_info["first paint, ms"] = round(median(ours for ours, _ in told), 1)
    benchmark.extra_info["times an empty page's"] = round(median(ours / empty for ours, empty in told), 2)


@pytest.mark.parametrize("name", ["trays", "halvings"])
def test_no_task_holds_the_page_up_for_long(benchmark, chromium, page, files, name):
    """The goal is 50 ms, above which the Long Tasks API (W3C) counts a task."""
    page.goto((files / f"{name}.html").as_uri())
    longest = benchmark.pedantic(lambda: page.evaluate(LONGEST % 40), rounds=1, iterations=1)
    benchmark.extra_info["longest task, ms"] = longest
    spent = processor_ms(chromium, page, lambda: (page.reload(), page.evaluate(LONGEST % 40)))
    benchmark.extra_info["longest task, ms of processor"] = round(spent[0], 1)


def test_a_page_of_slides_is_written_small(benchmark, files):
    """The goal is 150 kB without fonts."""
    diary, _ = proved_lesson("lessons/fraction-diary.toml")
    text = benchmark(slides_html, diary, core_sheet(diary))
    benchmark.extra_info["kB"] = round(len(text.encode()) / 1000)
    benchmark.extra_info["kB of ten halvings"] = round((files / "halvings.html").stat().st_size / 1000)
