"""How the time of `make` grows with folds and panels; nothing here fails for being slow."""

from pathlib import Path

import pytest

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.guides import guide_sheets
from foldmath.making import Order, make, proved_lesson
from foldmath.making.parts import core_worksheet
from foldmath.teachers_plan.plan import plan, plan_html


def fans(folder: Path, parts: int) -> Path:
    """Write a lesson of two fans, across and up, each opened: so many panels squared."""
    steps = (f"pleat width into {parts}", "open", f"pleat height into {parts}", "open")
    listed = ", ".join(f'"{step}"' for step in steps)
    path = folder / f"fans-{parts}.toml"
    path.write_text(f'title = "Fans"\ngrade = 5\npaper = "letter"\nsteps = [{listed}]\n', "utf-8")
    return path


@pytest.mark.parametrize("parts", [4, 7, 12])
def test_making_grows_no_faster_than_panels_times_folds(benchmark, parts, tmp_path):
    """The goal: milliseconds for a panel and fold do not grow from one of these to the next."""
    path, panels, folds = fans(tmp_path, parts), parts**2, 2 * (parts - 1)
    with PictureProcess() as pictures:
        make(path, Order(out=tmp_path / "warm"), pictures, print)
        benchmark.pedantic(lambda: make(path, Order(out=tmp_path / "out"), pictures, print), rounds=2)
    taken = benchmark.stats.stats.min * 1000
    benchmark.extra_info["panels, folds"] = f"{panels}, {folds}"
    benchmark.extra_info["milliseconds for a panel and fold"] = round(taken / (folds * panels), 2)


def test_guide_sheets_and_plan_of_hundreds_of_creases(benchmark, tmp_path):
    """The goal: under two seconds."""
    proved, pages = proved_lesson(fans(tmp_path, 12))
    core = core_worksheet(proved)
    benchmark.extra_info["creases"] = len(proved.states[-1].creases)

    def written():
        return guide_sheets(proved, pages, "regular"), plan_html(plan(proved, core, None))

    assert all(benchmark.pedantic(written, rounds=3))
