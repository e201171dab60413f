"""Scenes as files: SVG for the browser and PNG, both drawn by matplotlib."""

from io import BytesIO, StringIO

import matplotlib
import numpy
from matplotlib.backends.backend_agg import RendererAgg
from matplotlib.backends.backend_svg import RendererSVG
from matplotlib.font_manager import FontProperties
from matplotlib.image import imsave

from foldmath.drawing.look import POINTS_PER_INCH
from foldmath.drawing.rendering.artist import draw, size_inches
from foldmath.drawing.scenes import Scene

PNG_DPI = 150
"""Enough for a screen."""

PRINTED_DPI = 300
"""The usual resolution for print (common practice, no source)."""

SVG_SETTINGS = {"svg.hashsalt": "foldmath", "svg.fonttype": "path"}
"""The same scene must give the same bytes, on machines with and without the font."""

FONT_FAMILY = "DejaVu Sans"

WHITE = 255
"""All of red, green, blue and cover, of 255."""


def svg(scene: Scene) -> bytes:
    """Give a scene as SVG, its words as the description."""
    width, height = size_inches(scene)
    metadata = {"Date": None, "Creator": "foldmath", "Description": str(scene.words)}
    written = StringIO()
    with matplotlib.rc_context(SVG_SETTINGS):
        renderer = RendererSVG(width * POINTS_PER_INCH, height * POINTS_PER_INCH, written, metadata=metadata)
        renderer.open_group("figure")
        draw(scene, renderer, _font)
        renderer.close_group("figure")
        renderer.finalize()
    return written.getvalue().encode()


def png(scene: Scene, dots_per_inch: int = PNG_DPI) -> bytes:
    """Give a scene as PNG, on white."""
    width, height = size_inches(scene)
    renderer = RendererAgg(width * dots_per_inch, height * dots_per_inch, dots_per_inch)
    dots = numpy.asarray(renderer.buffer_rgba())
    dots[:] = WHITE
    draw(scene, renderer, _font, dots_per_inch)
    stream = BytesIO()
    metadata = {"Software": "foldmath", "Description": str(scene.words)}
    imsave(stream, dots, format="png", dpi=dots_per_inch, metadata=metadata)
    return stream.getvalue()


def _font(points: float) -> FontProperties:
    return FontProperties(family=FONT_FAMILY, size=points)
