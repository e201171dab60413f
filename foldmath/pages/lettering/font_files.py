"""Font files: takes a TrueType file, gives what reportlab reads of it, in a third of the time.

reportlab reads the glyph of every sign, and the width and place of every glyph, number by number; here each
table is read at once. Whatever other tables a font may have, reportlab reads.

Source: OpenType specification 1.9, the tables ``cmap`` (formats 4 and 12), ``hmtx`` and ``loca``.
"""

from collections.abc import Callable, Iterator
from struct import unpack_from
from typing import Any, Literal

from reportlab.pdfbase.ttfonts import TTFontFace

MICROSOFT = 3
NUMBERS_OF_WIDTHS, KIND_OF_PLACES = 34, 50
"""Where ``hhea`` and ``head`` tell how many widths there are, and how long places are."""

SPACE, NO_BREAK_SPACE = 0x20, 0xA0


class FontFile(TTFontFace):
    """A font as reportlab knows it."""

    _ttf_data: bytes
    _pdfScale: Callable[[float], float]  # noqa: N815 (reportlab's)

    def extractInfo(self, charInfo: Literal[0, 1] | bool = 1) -> None:  # noqa: N802, N803 (reportlab's)
        """Read the file."""
        super().extractInfo(0)
        signs = self._signs()
        if signs is None:
            super().extractInfo(charInfo)
            return
        self.charToGlyph = dict(signs)
        self.hmetrics, widths = self._widths()
        self.defaultWidth = widths[0]
        self.charWidths = {
            sign: widths[glyph] for sign, glyph in self.charToGlyph.items() if glyph < len(widths)
        }
        self.glyphPos = self._places()
        for told in (self.charToGlyph, self.charWidths):
            if SPACE in told:
                told[NO_BREAK_SPACE] = told[SPACE]
            elif NO_BREAK_SPACE in told:
                told[SPACE] = told[NO_BREAK_SPACE]

    def _numbers(self, kind: str, count: int, start: int) -> tuple[int, ...]:
        return unpack_from(f">{count}{kind}", self._ttf_data, start)

    def _start(self, table: str) -> int:
        return int(self.get_table_pos(table)[0])

    def _signs(self) -> Iterator[tuple[int, int]] | None:
        """Give each sign and its glyph, from the last table for Microsoft's systems; None for any other."""
        start = self._start("cmap")
        _, count = self._numbers("H", 2, start)
        tables = [unpack_from(">HHL", self._ttf_data, start + 4 + 8 * number) for number in range(count)]
        of_microsoft = [start + place for platform, _, place in tables if platform == MICROSOFT]
        if not of_microsoft or tables[-1][0] != MICROSOFT:
            return None
        (written,) = self._numbers("H", 1, of_microsoft[-1])
        kinds: dict[int, Any] = {4: self._by_segments, 12: self._by_groups}
        return kinds[written](of_microsoft[-1]) if written in kinds else None

    def _by_groups(self, start: int) -> Iterator[tuple[int, int]]:
        (count,) = self._numbers("L", 1, start + 12)
        told = iter(self._numbers("L", 3 * count, start + 16))
        for first, last, glyph in zip(told, told, told, strict=True):
            yield from enumerate(range(glyph, glyph + last + 1 - first), first)

    def _by_segments(self, start: int) -> Iterator[tuple[int, int]]:
        _, length, _, twice = self._numbers("H", 4, start)
        count = twice // 2
        lasts = self._numbers("H", count, start + 14)
        firsts, deltas, shifts = (self._numbers("H", count, start + 16 + part * twice) for part in (1, 2, 3))
        for number in range(count):
            first, delta, shift = firsts[number], deltas[number], shifts[number]
            for sign in range(first, lasts[number] + 1):
                if not shift:
                    yield sign, (sign + delta) & 0xFFFF
                    continue
                place = start + 16 + 3 * twice + 2 * number + shift + 2 * (sign - first)
                (glyph,) = self._numbers("H", 1, place) if place < start + length else (0,)
                yield sign, (glyph + delta) & 0xFFFF if glyph else 0

    def _widths(self) -> tuple[list[tuple[float, int]], list[float]]:
        """Give widths and bearings as reportlab keeps them: glyphs after the last width have it scaled."""
        (count,) = self._numbers("H", 1, self._start("hhea") + NUMBERS_OF_WIDTHS)
        start, rest = self._start("hmtx"), self.numGlyphs - count
        pairs = iter(self._numbers("H", 2 * count, start))
        metrics: list[tuple[float, int]] = list(zip(pairs, pairs, strict=True))
        widths = [self._pdfScale(width) for width, _ in metrics]
        metrics += [(widths[-1], bearing) for bearing in self._numbers("H", rest, start + 4 * count)]
        return metrics, widths + widths[-1:] * rest

    def _places(self) -> list[int]:
        start, count = self._start("loca"), self.numGlyphs + 1
        (long,) = self._numbers("H", 1, self._start("head") + KIND_OF_PLACES)
        return (
            [*self._numbers("L", count, start)]
            if long
            else [2 * at for at in self._numbers("H", count, start)]
        )
