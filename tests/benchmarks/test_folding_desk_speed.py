"""Folding at the desk with 64 panels: from letting go to the sheet drawn anew, served and on the screen.

What is compared stands in each benchmark's extra information; nothing here fails for being slow.
"""

import time
from pathlib import Path
from statistics import median, quantiles

import pytest
from desk_on_screen import Bench, served

from foldmath.desk.app import desk_app
from foldmath.desk.shelf.open_lesson import open_lesson
from foldmath.desk.shelf.shelf import Shelf
from foldmath.desk.visits.desk import Desk
from foldmath.lesson.proving import prove
from foldmath.pointing.folds import offered_folds

HALVINGS = ["fold left edge to right edge", "fold top edge to bottom edge"] * 3
ROUNDS = 20
SITE = "http://127.0.0.1:5000"


@pytest.fixture
def folder(tmp_path, monkeypatch) -> Path:
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    lessons = tmp_path / "lessons"
    lessons.mkdir()
    steps = ", ".join(f'"{step}"' for step in [*HALVINGS, "open"])
    text = f'title = "Trays"\ngrade = 5\npaper = "letter"\norientation = "landscape"\nsteps = [{steps}]\n'
    (lessons / "trays.toml").write_text(text, encoding="utf-8")
    return lessons


def told(benchmark, seconds: list[float]) -> None:
    benchmark.extra_info["95 of 100 within, ms"] = round(1000 * quantiles(seconds, n=20)[-1], 1)
    benchmark.extra_info["median, ms"] = round(1000 * median(seconds), 1)


def test_a_fold_is_saved_and_the_sheet_drawn_anew_at_the_server(benchmark, folder):
    desk = Desk(shelf=Shelf(folder.resolve()), port=5000, language="en-US", pictures=None)
    client = desk_app(desk, lambda: None).test_client()
    client.get(f"/open/{desk.entry}", base_url=SITE)
    headers = {"X-Foldmath-Token": desk.form, "Origin": SITE}
    digest = client.get("/lesson/trays/fold/digest", base_url=SITE).json["digest"]
    taken = []

    def fold_and_undo() -> None:
        nonlocal digest
        begun = time.perf_counter()
        for wish in ({"do": "add", "text": "fold left edge to 1/3"}, {"do": "undo"}):
            answer = client.post(
                "/lesson/trays/fold/act", json={**wish, "digest": digest}, base_url=SITE, headers=headers
            )
            digest = answer.json["digest"]
            if wish["do"] == "add":
                taken.append(time.perf_counter() - begun)

    benchmark.pedantic(fold_and_undo, rounds=ROUNDS, warmup_rounds=2)
    told(benchmark, taken[2:])
    lesson = open_lesson(desk.shelf, "trays").read()
    begun = time.perf_counter()
    prove(lesson)
    proving = time.perf_counter() - begun
    benchmark.extra_info["times proving the lesson"] = round(median(taken) / proving, 1)


def test_all_folds_of_sixty_four_panels_are_offered(benchmark, folder):
    state = prove(open_lesson(Shelf(folder.resolve()), "trays").read()).states[-1]
    benchmark.extra_info["folds"] = len(benchmark(offered_folds, state))


SINCE = """() => {
  window.taken = [];
  let begun = 0;
  document.addEventListener("pointerup", () => { begun = performance.now(); }, true);
  new MutationObserver(() => {
    if (!begun || !document.querySelector("#bench .paper-now")) return;
    const since = begun;
    begun = 0;
    requestAnimationFrame(() => setTimeout(() => window.taken.push(performance.now() - since)));
  }).observe(document.querySelector("#bench"), { childList: true });
}"""


ONE_FRAME = """() => new Promise((done) => requestAnimationFrame((begun) => requestAnimationFrame(
  () => setTimeout(() => done(performance.now() - begun)))))"""


def test_a_fold_is_seen_on_the_screen(benchmark, folder, chromium):
    """From the finger that lets go to the next picture of the screen, with the motion left out."""
    with served(folder, None) as desk:
        context = chromium.new_context(viewport={"width": 1280, "height": 800}, reduced_motion="reduce")
        bench = Bench(context.new_page(), [])
        bench.page.goto(desk.address)
        bench.page.goto(f"http://127.0.0.1:{desk.port}/lesson/trays/fold")
        bench.wait()
        bench.page.evaluate(SINCE)

        def fold_and_undo() -> None:
            bench.carry("left edge", 0.5, 0)
            bench.let_go()
            bench.page.get_by_role("button", name="Undo").click()
            bench.page.wait_for_timeout(30)
            bench.wait()

        benchmark.pedantic(fold_and_undo, rounds=ROUNDS, warmup_rounds=1)
        told(benchmark, [ms / 1000 for ms in bench.page.evaluate("() => window.taken")])
        benchmark.extra_info["a picture of the screen, ms"] = round(bench.page.evaluate(ONE_FRAME), 1)
