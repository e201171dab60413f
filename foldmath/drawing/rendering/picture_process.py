"""The picture_process: draws scenes in a process of its own, beside the one that folds and sets pages.

Importing matplotlib takes as long as all the rest of making one lesson, so it happens meanwhile.
"""

import logging
import os
from collections.abc import Iterator, Sequence
from concurrent.futures import Future
from contextlib import contextmanager
from functools import lru_cache
from typing import Self

from foldmath.drawing.rendering.recording import Recording
from foldmath.drawing.scenes import Scene
from foldmath.errors import SurroundingsFailed
from foldmath.phrases import phrase
from foldmath.workers import Workers

PICTURES_KEPT = 2048
"""Many pages share a picture; a recording is a few kilobytes."""


class PictureProcess(Workers):
    """Draws scenes; each distinct scene once. Use it in a ``with`` block."""

    def __init__(self) -> None:
        super().__init__(1)

    def __enter__(self) -> Self:
        super().__enter__()
        self.submit(_fetch_pens)
        return self

    def fetch_files(self) -> None:
        """Have it import what makes files of scenes, where some are asked for later."""
        self.submit(_fetch_files)

    def recordings(self, scenes: Sequence[Scene]) -> "Future[list[Recording]]":
        """Begin to draw scenes as ink for pages."""
        return self.submit(recordings_here, list(scenes))

    def svgs(self, scenes: Sequence[Scene]) -> "Future[list[bytes]]":
        """Begin to draw scenes as SVG."""
        return self.submit(_svgs, list(scenes))

    def svg(self, scene: Scene) -> "Future[bytes]":
        """Begin to draw one scene as SVG."""
        return self.submit(_svg, scene)

    def pngs(self, scenes: Sequence[Scene]) -> "Future[list[bytes]]":
        """Begin to draw scenes as PNG, for a screen."""
        return self.submit(_pngs, list(scenes))

    def fine_pngs(self, scenes: Sequence[Scene]) -> "Future[list[bytes]]":
        """Begin to draw scenes as PNG, fine enough for print."""
        return self.submit(_fine_pngs, list(scenes))


@contextmanager
def _with_a_folder() -> Iterator[None]:
    """Tell what matplotlib lacks: a folder to write its list of fonts in, or room there.

    Raises:
        SurroundingsFailed: it lacks them.
    """
    try:
        yield
    except OSError as error:
        reason = (error.strerror or "there is none").lower()
        raise SurroundingsFailed(
            phrase("no folder for passing files can be used: {reason}", reason=reason),
            phrase("set TMPDIR to a folder with room"),
        ) from error


def _fetch_pens() -> None:
    """Import matplotlib, before the first scene comes.

    Raises:
        SurroundingsFailed: it finds no folder to write in, or no room there.
    """
    # Where the usual folder cannot be written it takes another and says so, which helps no teacher.
    logging.getLogger("matplotlib").setLevel(logging.ERROR)
    # Drawing asks numpy for no linear algebra, whose threads would keep a core for 50 ms as they begin.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    with _with_a_folder():
        import foldmath.drawing.rendering.recorder  # noqa: F401


def _fetch_files() -> None:
    _fetch_pens()
    with _with_a_folder():
        import foldmath.drawing.rendering.files  # noqa: F401


@lru_cache(maxsize=PICTURES_KEPT)
def _recording(scene: Scene) -> Recording:
    _fetch_pens()
    from foldmath.drawing.rendering.recorder import record

    return record(scene)


def recordings_here(scenes: list[Scene]) -> list[Recording]:
    """Draw scenes as ink for pages, in the process that draws."""
    return [_recording(scene) for scene in scenes]


def _svgs(scenes: list[Scene]) -> list[bytes]:
    return [_svg(scene) for scene in scenes]


def _svg(scene: Scene) -> bytes:
    _fetch_files()
    from foldmath.drawing.rendering.files import svg

    return svg(scene)


def _pngs(scenes: list[Scene]) -> list[bytes]:
    _fetch_files()
    from foldmath.drawing.rendering.files import png

    return [png(scene) for scene in scenes]


def _fine_pngs(scenes: list[Scene]) -> list[bytes]:
    _fetch_files()
    from foldmath.drawing.rendering.files import PRINTED_DPI, png

    return [png(scene, PRINTED_DPI) for scene in scenes]
