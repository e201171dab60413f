"""Scenes as files: SVG for the browser and PNG, from the same matplotlib figure."""

from io import BytesIO

import matplotlib
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.backends.backend_svg import FigureCanvasSVG

from foldmath.drawing.rendering.artist import figure_of
from foldmath.drawing.scenes import Scene

PNG_DPI = 150
"""Enough for a screen."""

PRINTED_DPI = 300
"""The usual resolution for print (common practice, no source)."""

SVG_SETTINGS = {"svg.hashsalt": "foldmath", "svg.fonttype": "path"}
"""The same scene must give the same bytes, on machines with and without the font."""


def svg(scene: Scene) -> bytes:
    """Give a scene as SVG, its words as the description."""
    figure = figure_of(scene)
    stream = BytesIO()
    with matplotlib.rc_context(SVG_SETTINGS):
        FigureCanvasSVG(figure).print_svg(
            stream, metadata={"Date": None, "Creator": "foldmath", "Description": str(scene.words)}
        )
    return stream.getvalue()


def png(scene: Scene, dots_per_inch: int = PNG_DPI) -> bytes:
    """Give a scene as PNG, on white."""
    figure = figure_of(scene)
    figure.patch.set_visible(True)
    figure.patch.set_facecolor("white")
    figure.set_dpi(dots_per_inch)
    stream = BytesIO()
    canvas = FigureCanvasAgg(figure)
    canvas.print_png(stream, metadata={"Software": "foldmath", "Description": str(scene.words)})
    return stream.getvalue()
