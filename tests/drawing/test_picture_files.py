"""Pictures as files: SVG in pure vectors, PNG at 150 dots an inch, the same bytes every time."""

import struct
from xml.etree import ElementTree

import pytest
from lessons_in_words import EIGHTHS, paper_after

from foldmath.drawing.area_models import Grid, shaded_model
from foldmath.drawing.rendering.files import png, svg
from foldmath.drawing.sheets.crease_patterns import crease_pattern
from foldmath.drawing.sheets.folded_sheets import folded_sheet
from foldmath.lesson.grammar.sentences import parse_step

SVG = "{http://www.w3.org/2000/svg}"
DOTS_PER_MM = 150 / 25.4
POINTS_PER_MM = 72 / 25.4

SCENES = {
    "creases": crease_pattern(paper_after(*EIGHTHS), 120, 120),
    "folded": folded_sheet(paper_after(*EIGHTHS), parse_step("fold left edge to right edge"), 80, 80),
    "model": shaded_model(Grid(3, 5, 2, 4), 64, 44),
}
scenes = pytest.mark.parametrize("scene", SCENES.values(), ids=SCENES)


@scenes
def test_an_svg_is_sound_xml_of_paths_alone(scene):
    root = ElementTree.fromstring(svg(scene))
    assert root.tag == f"{SVG}svg"
    tags = {element.tag for element in root.iter()}
    assert f"{SVG}path" in tags
    assert f"{SVG}image" not in tags
    assert f"{SVG}text" not in tags


@scenes
def test_an_svg_has_the_size_of_its_scene_and_tells_in_words_what_it_shows(scene):
    root = ElementTree.fromstring(svg(scene))
    assert float(root.get("width").removesuffix("pt")) == pytest.approx(scene.width_mm * POINTS_PER_MM)
    assert float(root.get("height").removesuffix("pt")) == pytest.approx(scene.height_mm * POINTS_PER_MM)
    assert str(scene.words) in {(element.text or "").strip() for element in root.iter()}


@scenes
def test_the_same_scene_gives_the_same_files(scene):
    assert svg(scene) == svg(scene)
    assert png(scene) == png(scene)


@scenes
def test_a_png_has_150_dots_an_inch(scene):
    """Width and height stand first in the IHDR chunk: PNG specification, W3C, 11.2.2."""
    content = png(scene)
    assert content[:8] == b"\x89PNG\r\n\x1a\n"
    assert content[12:16] == b"IHDR"
    width, height = struct.unpack(">II", content[16:24])
    assert abs(width - scene.width_mm * DOTS_PER_MM) <= 1
    assert abs(height - scene.height_mm * DOTS_PER_MM) <= 1
