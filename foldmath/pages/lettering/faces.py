"""Fonts by name and by what they draw: a page's own first, then those of packages, then the system's."""

import os
import re
import struct
import sys
from collections.abc import Iterator
from functools import cache
from importlib.util import find_spec
from pathlib import Path
from typing import cast

from reportlab.pdfbase import pdfmetrics

from foldmath.drawing.rendering.fonts import font_file
from foldmath.errors import SurroundingsFailed
from foldmath.pages.lettering.glyph_fonts import GlyphFont, registered
from foldmath.phrases import phrase

PACKAGES = ("fontpkg_noto_sans_devanagari", "fontpkg_noto_sans_thai")
"""Of the extra ``scripts``; DejaVu Sans, which comes with matplotlib, has Arabic and Hebrew."""

KINDS = (".ttf", ".ttc")
OTHER_CUTS = re.compile(
    "bold|italic|oblique|light|thin|black|medium|mono|condensed|display|looped|rashi", re.IGNORECASE
)
"""Names of cuts that are not the one for running text."""

WITHOUT_SERIFS = re.compile("sans|hei|gothic|dotum", re.IGNORECASE)
"""Names of plain letters, which children read more easily than those of a brush."""

MOST_FILES = 5_000
"""Font files looked through: more than any system brings, and no folder is walked for ever."""


@cache
def face_with(signs: frozenset[str], script: str, bold: bool) -> Path | None:
    """Give the font that draws all of these signs, which are of one script; None where there is none.

    A font that is named for the script is taken before others; of those the plain and the largest first.
    """
    for path in _files_for(script.casefold()):
        if _draws(path, signs):
            heavier = _bold_of(path) if bold else path
            return heavier if _draws(heavier, signs) else path
    return None


def glyph_font(name: str) -> GlyphFont:
    """Give a font; one that only another process has met is looked for by its name.

    Raises:
        SurroundingsFailed: this machine has no font of that name.
    """
    if name not in pdfmetrics.getRegisteredFontNames():
        face = _face_named(name)
        if face is None:
            raise SurroundingsFailed(
                phrase("another machine set letters in the font {name}, which is not here", name=name),
                phrase("install it here too"),
            )
        registered(face)
    return cast(GlyphFont, pdfmetrics.getFont(name))


@cache
def signs_of(font: str) -> frozenset[str]:
    """Give the signs that a font has, by its name."""
    return frozenset(map(chr, glyph_font(font).face.charToGlyph))


def _face_named(name: str) -> Path | None:
    """Give the font file of a name, as one that draws signs was found; None where there is none."""
    for path in (*_always_there(), *_files()):
        for cut in (path, _bold_of(path)):
            if cut.stem == name:
                return cut
    return None


def _files_for(script: str) -> Iterator[Path]:
    """Give fonts, the likeliest first."""
    yield from _always_there()
    named = [path for path in _files() if script and script in path.stem.casefold()]
    yield from sorted(
        named, key=lambda path: (not path.stem.startswith("NotoSans"), "[" in path.stem, path.stem)
    )
    yield from (path for path in _files() if path not in named)


@cache
def _files() -> tuple[Path, ...]:
    """Give all fonts for running text that are installed: the plain first, and the largest."""
    found: list[Path] = []
    for folder in (*_of_packages(), *_of_system()):
        for place, _, names in os.walk(folder):
            found += [Path(place, name) for name in names if name.casefold().endswith(KINDS)]
            if len(found) > MOST_FILES:
                break
    plain = [path for path in found if not OTHER_CUTS.search(path.stem)]
    return tuple(
        sorted(plain, key=lambda path: (not WITHOUT_SERIFS.search(path.stem), -path.stat().st_size, path))
    )


def _always_there() -> Iterator[Path]:
    yield font_file("DejaVuSans")


def _of_packages() -> Iterator[Path]:
    for name in PACKAGES:
        spec = find_spec(name)
        if spec and spec.origin:
            yield Path(spec.origin).parent / "files"


def _of_system() -> Iterator[Path]:
    """Give the folders in which the system keeps its fonts, and the user hers."""
    home = Path.home()
    if sys.platform == "win32":
        yield Path(os.environ.get("WINDIR", "C:/Windows"), "Fonts")
        yield home / "AppData/Local/Microsoft/Windows/Fonts"
    elif sys.platform == "darwin":
        yield from (home / "Library/Fonts", Path("/Library/Fonts"), Path("/System/Library/Fonts"))
    else:
        yield from (home / ".local/share/fonts", home / ".fonts")
        yield from (Path("/usr/local/share/fonts"), Path("/usr/share/fonts"))


def _bold_of(path: Path) -> Path:
    """Give the bold cut beside a font, or the font itself."""
    stem = path.stem.removesuffix("-Regular")
    for name in (f"{stem}-Bold", f"{stem}Bold"):
        if (bold := path.with_stem(name)).is_file():
            return bold
    return path


def _draws(path: Path, signs: frozenset[str]) -> bool:
    return signs <= _drawn(path)


@cache
def _drawn(path: Path) -> frozenset[str]:
    """Give the signs of a font with TrueType outlines, which are those that a page can take; else none."""
    if path.parent == font_file("DejaVuSans").parent:
        # Nearly every lesson takes signs of this font: it is read once, and the pages need no other library.
        return signs_of(registered(path))
    # Imported here, since reading the fonts of a whole system is seldom needed.
    from fontTools.ttLib import TTFont, TTLibError

    try:
        with path.open("rb") as stream, TTFont(stream, fontNumber=0, lazy=True) as font:
            return frozenset(map(chr, font.getBestCmap() or ())) if "glyf" in font else frozenset()
    except (TTLibError, OSError, ValueError, LookupError, AssertionError, struct.error):
        # A font that cannot be read draws nothing.
        return frozenset()
