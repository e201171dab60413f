"""Lengths and sheets as a person reads them: inches as mixed numbers, every unit in its own words."""

from typing import assert_never

from foldmath.paper.state import Sheet
from foldmath.paper.steps import Edge
from foldmath.phrases import Phrase, phrase
from foldmath.plane.lines import Point
from foldmath.plane.numbers import Exact, mixed, written


def length_said(length: Exact, unit: str) -> Phrase:
    """Say a length, such as ``8 1/2 in``."""
    number = mixed(length)
    match unit:
        case "in":
            return phrase("{number} in", number=number)
        case "cm":
            return phrase("{number} cm", number=number)
        case "mm":
            return phrase("{number} mm", number=number)
    raise ValueError(f"not a unit: {unit!r}")


def sides_said(width: Exact, height: Exact, unit: str) -> Phrase:
    """Say how wide and how high something is, such as ``11 by 8 1/2 in``."""
    return phrase("{width} by {length}", width=mixed(width), length=length_said(height, unit))


def measures_said(sheet: Sheet) -> Phrase:
    """Say how large a sheet is as it is printed: ``11 × 8 1/2 in``."""
    return phrase(
        "{width} × {length}", width=mixed(sheet.width), length=length_said(sheet.height, sheet.unit)
    )


def edge_said(edge: Edge) -> Phrase:
    """Say which edge is meant, with its article."""
    match edge:
        case Edge.LEFT:
            return phrase("the left edge")
        case Edge.RIGHT:
            return phrase("the right edge")
        case Edge.TOP:
            return phrase("the top edge")
        case Edge.BOTTOM:
            return phrase("the bottom edge")
        case _:
            assert_never(edge)


def place_said(place: Point) -> str:
    """Write a place by its two numbers."""
    return f"({written(place.x)}, {written(place.y)})"


def orientation_said(orientation: str) -> Phrase:
    """Say how a sheet lies."""
    return phrase("landscape") if orientation == "landscape" else phrase("portrait")
