"""The picture_process draws in a process of his own what would be drawn here."""

import subprocess
import sys

from lessons_in_words import EIGHTHS, paper_after

from foldmath.drawing.area_models import Grid, blank_model
from foldmath.drawing.rendering.files import png, svg
from foldmath.drawing.rendering.recorder import record
from foldmath.drawing.sheets.crease_patterns import crease_pattern

SCENES = [crease_pattern(paper_after(*EIGHTHS), 120, 120), blank_model(Grid(3, 5, 2, 4), 64, 44)]


def test_his_pictures_are_those_drawn_here_in_the_order_they_were_asked_for(picture_process):
    asked = [*SCENES, SCENES[0]]
    assert picture_process.recordings(asked).result() == [record(scene) for scene in asked]
    assert picture_process.svgs(SCENES).result() == [svg(scene) for scene in SCENES]
    assert picture_process.pngs(SCENES).result() == [png(scene) for scene in SCENES]


DRAWS = """
import sys
import foldmath.drawing.rendering.files, foldmath.drawing.rendering.recorder
libraries = ("matplotlib", "matplotlib.figure", "matplotlib.pyplot", "foldmath.plane.numbers")
print([name for name in libraries if name in sys.modules])
"""


def test_to_draw_neither_exact_numbers_are_fetched_nor_what_makes_figures_and_axes():
    fetched = subprocess.run([sys.executable, "-c", DRAWS], capture_output=True, text=True, check=True).stdout
    assert fetched == "['matplotlib']\n"
