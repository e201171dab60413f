"""How fast folding, printing and starting are; left out of the normal run.

Run with ``pytest tests/benchmarks -o addopts=--import-mode=importlib --benchmark-only``. Ratios and rates
stand in each benchmark's extra information; nothing here fails for being slow.
"""

import os
import subprocess
import sys
from functools import partial
from itertools import count
from statistics import median
from time import perf_counter, process_time

import numpy
import pytest
import shapely
from lessons_in_words import EIGHTHS, LETTER, proved
from trial_printing import print_document

from foldmath.cli.arguments import COMMANDS
from foldmath.drawing.rendering.recorder import record
from foldmath.paper.moments.moment import Moment
from foldmath.paper.moments.performing import perform
from foldmath.paper.state import open_sheet
from foldmath.paper.steps import Edge, FoldEdge
from foldmath.statements.items import Level
from foldmath.statements.sentences import sentences
from foldmath.worksheets.folding_part import folding_part
from foldmath.worksheets.picture_book import SIZES, folding_pictures, item_pictures
from foldmath.worksheets.rendering import html
from foldmath.worksheets.worksheet import with_items

ACROSS = FoldEdge(Edge.LEFT, Edge.RIGHT.position)
DOWN = FoldEdge(Edge.TOP, Edge.BOTTOM.position)
TURNS = 5
"""Programs that are compared run in turn, this often each; the median counts."""


def all_figures(moment):
    """Look at everything that a moment shows, as the trace does."""
    table = moment.after.table
    return (
        moment.sizes,
        table.layers,
        table.area,
        table.box,
        moment.after.creases,
        sentences(moment),
        moment.new_panels,
    )


def halved(times):
    """Halve a sheet across and down in turn, every moment's figures included."""
    state = open_sheet(LETTER)
    for number in range(times):
        step = DOWN if number % 2 else ACROSS
        after = perform(step, state)
        all_figures(Moment(step, state, after))
        state = after
    return state


@pytest.mark.usefixtures("_as_a_command")
@pytest.mark.parametrize("times", [8, 9, 10, 11, 12], ids=lambda times: f"{2**times} panels")
def test_halving_with_every_figure_grows_with_the_panels(benchmark, times):
    state = benchmark(halved, times)
    assert len(state.panels) == 2**times
    benchmark.extra_info["microseconds a panel"] = round(
        benchmark.stats.stats.median * 1e6 / len(state.panels), 1
    )


def halved_by_shapely(times):
    """Do the same halvings in floats, all panels at once: cut them at the middle and mirror what moves."""
    panels = numpy.array([shapely.box(0, 0, 11, 8.5)])
    for number in range(times):
        left, bottom, right, top = shapely.total_bounds(panels)
        axis = number % 2
        middle = (bottom + top) / 2 if axis else (left + right) / 2
        if axis:
            staying, moving = shapely.box(left, bottom, right, middle), shapely.box(left, middle, right, top)
        else:
            staying, moving = shapely.box(middle, bottom, right, top), shapely.box(left, bottom, middle, top)
        parts = shapely.intersection(panels, moving)
        mirror = numpy.array([2 * middle if side == axis else 0.0 for side in (0, 1)])
        hand = numpy.array([-1.0 if side == axis else 1.0 for side in (0, 1)])
        landed = shapely.transform(parts, lambda points, hand=hand, mirror=mirror: points * hand + mirror)
        panels = numpy.concatenate([shapely.intersection(panels, staying), landed])
        shapely.union_all(panels)
    return panels


@pytest.mark.usefixtures("_as_a_command")
@pytest.mark.parametrize("times", [10, 12], ids=lambda times: f"{2**times} panels")
def test_halving_beside_shapely_in_floats(benchmark, times):
    """A floor to compare with: shapely (shapely.readthedocs.io) keeps no order, creases or sentences."""
    panels = benchmark.pedantic(halved_by_shapely, args=(times,), rounds=1, warmup_rounds=1)
    assert len(panels) == 2**times
    assert shapely.area(panels).sum() == pytest.approx(11 * 8.5)
    halved(times)
    ways = {"own": halved, "the other": halved_by_shapely}
    taken = {name: [] for name in ways}
    for _ in range(4 * TURNS):
        for name, way in ways.items():
            begun = process_time()
            way(times)
            taken[name].append(process_time() - begun)
    own, other = (median(each) for each in taken.values())
    benchmark.extra_info["milliseconds of processor"] = round(own * 1000, 1)
    benchmark.extra_info["milliseconds of processor, the other"] = round(other * 1000, 1)
    benchmark.extra_info["ratio of processors"] = round(own / other, 2)


def print_worksheet(sheet, shared, kept):
    """Print one worksheet, drawing only pictures that no worksheet before it had."""
    for scenes in (shared, item_pictures(sheet, "regular")):
        for name, scene in scenes.items():
            if name not in kept and not name.endswith("shaded"):
                kept[name] = record(scene)
    return print_document(html(sheet, "regular", key=False), kept)


def test_a_hundred_worksheets_with_numbers_of_their_own_are_printed_in_one_process(benchmark):
    """Each into a file of its own; what is shared is folded and drawn once."""
    made = proved(*EIGHTHS, "open", practice=("2/3 × 4/5", "3/4 × 1/2"))
    shared = folding_part(made)

    def print_all():
        kept = {}
        scenes = folding_pictures(made, shared, "regular")
        sheets = (
            with_items(shared, made, Level.CORE, SIZES["regular"].models, seed=seed) for seed in range(100)
        )
        return [print_worksheet(sheet, scenes, kept) for sheet in sheets]

    pages = sum(content.count(b"/Type /Page\n") + content.count(b"/Type /Page ") for content in print_all())
    assert pages >= 200
    benchmark.pedantic(print_all, rounds=3)
    benchmark.extra_info["pages a second"] = round(pages / benchmark.stats.stats.median)


BARE = """\
import argparse
parser = argparse.ArgumentParser(prog="bare", description="A bare program.")
parser.add_argument("lesson", nargs="?")
parser.parse_args()
"""
WITH_COMMANDS = f"""\
import argparse
parser = argparse.ArgumentParser(prog="bare", description="A bare program.")
commands = parser.add_subparsers()
for number in range({len(COMMANDS)}):
    commands.add_parser(f"command-{{number}}", help="what it does")
parser.parse_args()
"""


def seconds(command, **changes):
    """Run a command and give how long it takes, by the clock and of processors, its helpers' included."""
    start, before = perf_counter(), os.times()
    subprocess.run(command, capture_output=True, check=True, env=os.environ | changes)
    after = os.times()
    spent = after.children_user + after.children_system - before.children_user - before.children_system
    return perf_counter() - start, spent


def compared(benchmark, ours, theirs):
    """Measure two things in turn; the median of each counts."""
    benchmark.pedantic(ours, rounds=1)
    mine, others = zip(*((ours(), theirs()) for _ in range(TURNS)), strict=True)
    for kind, ending in enumerate(("", " of processors")):
        own, other = (median(taken[kind] for taken in each) for each in (mine, others))
        benchmark.extra_info[f"seconds{ending}"] = round(own, 3)
        benchmark.extra_info[f"seconds{ending}, the other"] = round(other, 3)
        benchmark.extra_info[f"ratio{ending}"] = round(own / other, 2)


@pytest.mark.parametrize("other", [BARE, WITH_COMMANDS], ids=["one argument", "as many commands"])
def test_help_is_as_quick_as_a_bare_program(benchmark, tmp_path, other):
    bare = tmp_path / "bare.py"
    bare.write_text(other, encoding="utf-8")
    ours = tmp_path / "ours.py"
    ours.write_text("import sys\nfrom foldmath.cli.console import run\nsys.exit(run())\n", encoding="utf-8")
    helped = (partial(seconds, [sys.executable, str(program), "--help"]) for program in (ours, bare))
    compared(benchmark, *helped)
    assert benchmark.extra_info["ratio"] > 0


TRAYS = """\
title = "Seed trays"
grade = 5
paper = "letter"
steps = ["fold left edge to right edge", "fold top edge to bottom edge", "open"]
practice = ["2/3 × 4/5", "3/4 × 1/2"]
"""
BOOKLET = """\
[booklet]
form = "eight-page"
pages = "fraction-diary"
"""


@pytest.fixture
def imports():
    return partial(seconds, [sys.executable, "-c", "import sympy, matplotlib, jinja2, reportlab"])


@pytest.mark.parametrize(
    ("more", "only"),
    [("", ()), ("", ("--only", "worksheet,key")), (BOOKLET, ())],
    ids=["all", "worksheets and keys", "all and a booklet"],
)
def test_one_lesson_is_made_cold_in_about_the_time_of_the_imports(benchmark, tmp_path, imports, more, only):
    compared(benchmark, partial(seconds, making(tmp_path, TRAYS + more, *only)), imports)
    assert (tmp_path / "trays" / "worksheet.pdf").is_file()
    assert (tmp_path / "trays" / "booklet.pdf").is_file() is bool(more)


def test_the_very_first_lesson_is_made_where_nothing_is_kept(benchmark, tmp_path, imports):
    fresh = map(str, map(tmp_path.joinpath, map(str, count())))

    def make():
        return seconds(making(tmp_path, TRAYS), XDG_CACHE_HOME=next(fresh), MPLCONFIGDIR=next(fresh))

    compared(benchmark, make, imports)


def making(folder, text, *only):
    """Give the command that makes a lesson."""
    (folder / "trays.toml").write_text(text, encoding="utf-8")
    made = ["make", str(folder / "trays.toml"), *only, "--out", str(folder)]
    return [sys.executable, "-m", "foldmath", *made]
