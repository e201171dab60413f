"""Sheets of paper by name or by measure; the names and their sources are in ``sizes.toml``."""

import re
import tomllib
from difflib import get_close_matches
from functools import cache
from importlib.resources import files
from typing import Any

from foldmath.errors import Unreadable
from foldmath.paper.lengths import Length, read_number
from foldmath.paper.measures import length_said
from foldmath.paper.state import Sheet
from foldmath.phrases import either, phrase
from foldmath.plane.numbers import Exact, denominator, exact, mixed
from foldmath.values import frozen

SHORTEST_MM, LONGEST_MM = exact(5), exact(5000)
"""No side of a sheet is shorter than half a centimetre or longer than five metres."""

LARGEST_DENOMINATOR = 10_000
"""Sides are whole, or parts of a unit down to this."""

ORIENTATIONS = ("landscape", "portrait")


@frozen(kw_only=True)
class PaperSize:
    """A size of paper, standing on its narrow side.

    Args:
        name: as it is usually written.
        width: the narrow side, in ``unit``.
        height: the long side, in ``unit``.
        unit: ``mm``, ``cm`` or ``in``.
        series: the standard or the trade that the name comes from; empty for a measured sheet.
    """

    name: str
    width: Exact
    height: Exact
    unit: str
    series: str = ""


class PaperRefused(Unreadable):
    """A name that no paper has, or a sheet of a size that nobody folds.

    Args:
        message: what is wrong.
        hint: the nearest names, or advice.
    """


def paper_named(name: str) -> PaperSize:
    """Find a paper by its name; capitals, spaces and hyphens do not matter.

    Raises:
        PaperRefused: no paper has this name; the hint gives the nearest ones.
    """
    known = _by_plain_name()
    size = known.get(_plain(name))
    if size is None:
        shown = name if len(name) <= 40 else name[:40] + "…"
        raise PaperRefused(
            phrase("there is no paper called '{shown}'", shown=shown), either(nearest_names(name))
        )
    return size


def nearest_names(name: str) -> list[str]:
    """Give one to three paper names that are nearest to a misspelt one."""
    known = _by_plain_name()
    near = get_close_matches(_plain(name)[:40], known, n=3, cutoff=0.6)
    return list(dict.fromkeys(known[match].name for match in near)) or ["letter", "A4"]


AT_SCHOOL = ("letter", "A4", "tabloid", "A3", "construction 9 x 12", "construction 12 x 18")
"""Paper of copiers, and the coloured sheets that are cut for schools [common practice, no source]."""


def all_papers() -> list[PaperSize]:
    """Give every paper that has a name, in the order of the table."""
    return list(dict.fromkeys(_by_plain_name().values()))


def papers_to_choose_from() -> list[PaperSize]:
    """Give every paper, those that schools have at hand before the others."""
    usual = [paper_named(name) for name in AT_SCHOOL]
    return [*usual, *(paper for paper in all_papers() if paper not in usual)]


def paper_measured(width: Length, height: Length) -> PaperSize:
    """Give the size of a sheet from its two sides, in their unit, or in millimetres if they have two.

    Raises:
        PaperRefused: a side under ``SHORTEST_MM``, over ``LONGEST_MM``, or measured too finely.
    """
    for side in (width, height):
        if not SHORTEST_MM <= side.in_millimetres <= LONGEST_MM:
            raise PaperRefused(
                phrase(
                    "a side of {length} is no size for a sheet to fold",
                    length=length_said(side.number, side.unit),
                ),
                phrase("use sides from 5 mm to 5 m (about 1/4 in to 196 in)"),
            )
        if denominator(side.number) > LARGEST_DENOMINATOR:
            raise PaperRefused(
                phrase("a side of a sheet has too many decimals"),
                phrase("measure to the nearest 1/16 in or 1 mm"),
            )
    unit = width.unit if width.unit == height.unit else "mm"
    sides = [side.number if side.unit == unit else side.in_millimetres for side in (width, height)]
    name = f"{mixed(sides[0])} × {mixed(sides[1])} {unit}"
    return PaperSize(name=name, width=min(sides), height=max(sides), unit=unit)


def sheet(size: PaperSize, orientation: str) -> Sheet:
    """Lay a paper down: landscape on its long side, portrait on its narrow one."""
    if orientation not in ORIENTATIONS:
        raise ValueError(f"not an orientation: {orientation!r}")
    if orientation == "landscape":
        return Sheet(size.height, size.width, size.unit)
    return Sheet(size.width, size.height, size.unit)


def _plain(name: str) -> str:
    return re.sub(r"[\s\-_.‐–]+", "", name.casefold().replace("×", "x"))


@cache
def _by_plain_name() -> dict[str, PaperSize]:
    table = tomllib.loads(files(__package__).joinpath("sizes.toml").read_text(encoding="utf-8"))
    known: dict[str, PaperSize] = {}
    for group in table["group"]:
        known |= _group(group)
    return known


def _group(group: dict[str, Any]) -> dict[str, PaperSize]:
    known = {}
    for name, (width, height) in group["sizes"].items():
        size = PaperSize(
            name=name,
            width=read_number(width),
            height=read_number(height),
            unit=group["unit"],
            series=group["title"],
        )
        for spelling in (name, *group.get("also", {}).get(name, ())):
            known[_plain(spelling)] = size
    return known
