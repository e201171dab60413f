"""Printed pages as other programs read them: places by pdfplumber, words and pixels by pypdfium2."""

import re
from functools import cache
from pathlib import Path

import pdfplumber
import pypdfium2

MM = 72 / 25.4
"""Points in a millimetre."""

BOX_SIZES_MM = {(12, 10.5), (14, 14), (6, 6)}
"""The boxes that pupils write in, width by height."""

DESCENT = 0.25
"""Of the em: how far a line of Lexend reaches below the baseline (from the font's own table)."""

PLACES = ("x0", "top", "x1", "bottom")


@cache
def pages_of(path: Path) -> list[dict]:
    """Give every page's size in points, its images, and the places of all its characters and lines."""
    with pdfplumber.open(path) as document:
        return [
            {
                "width": float(page.width),
                "height": float(page.height),
                "images": page.images,
                "chars": page.chars,
                "words": page.extract_words(x_tolerance=1.5, y_tolerance=1.5, extra_attrs=["size"]),
                "rects": page.rects,
                "lines": page.lines,
                "curves": page.curves,
            }
            for page in document.pages
        ]


@cache
def text_of(path: Path) -> tuple[str, ...]:
    """Give the words of every page as a reader copies them, spaces run together."""
    document = pypdfium2.PdfDocument(path)
    words = (" ".join(page.get_textpage().get_text_range().split()) for page in document)
    # A reader puts a space after a fraction, before whatever follows it.
    return tuple(re.sub(r"(?<=\d) (?=[.,;:?])", "", text) for text in words)


def text_within(path: Path, number: int, places: list[dict]) -> list[str]:
    """Give the words inside each of several places of a page."""
    page = pypdfium2.PdfDocument(path)[number]
    height, textpage = page.get_height(), page.get_textpage()
    return [
        textpage.get_text_bounded(place["x0"], height - place["bottom"], place["x1"], height - place["top"])
        for place in places
    ]


def grey_page(path: Path, number: int, dpi: int):
    """Render a page as an array of greys, 0 black and 255 white, its top row first."""
    page = pypdfium2.PdfDocument(path)[number]
    return page.render(scale=dpi / 72, grayscale=True).to_numpy().squeeze()


def boxes_of(page: dict) -> list[dict]:
    """Give the boxes to write in, in reading order of the page's own marks."""
    return [rect for rect in page["rects"] if rect["stroke"] and _size_mm(rect) in BOX_SIZES_MM]


def models_of(page: dict) -> list[dict]:
    """Give the outlines of area models: the thick ones."""
    return [rect for rect in page["rects"] if rect["stroke"] and rect["linewidth"] > 1.5]


def _size_mm(place: dict) -> tuple[float, float]:
    return round(place["width"] / MM, 1), round(place["height"] / MM, 1)


def place_of(mark: dict) -> tuple[float, float, float, float]:
    """Give a mark's left, top, right and bottom, in points from the page's top left corner."""
    return tuple(round(float(mark[side]), 2) for side in PLACES)


def ink_of(mark: dict) -> tuple[float, float, float, float]:
    """Give the place that a mark's ink takes: figures stand on the baseline, and reach nowhere below it."""
    left, top, right, bottom = place_of(mark)
    below = DESCENT * mark["size"] if mark.get("text", "").isdigit() else 0.0
    return left, top, right, bottom - below


def apart(one: tuple, other: tuple, by: float = 0.0) -> bool:
    """Tell whether two places share no more than ``by`` points of either way."""
    return (
        one[2] - by <= other[0]
        or other[2] - by <= one[0]
        or one[3] - by <= other[1]
        or other[3] - by <= one[1]
    )


def within(inner: tuple, outer: tuple, by: float = 0.0) -> bool:
    """Tell whether a place lies inside another, give or take ``by`` points."""
    return (
        inner[0] >= outer[0] - by
        and inner[1] >= outer[1] - by
        and inner[2] <= outer[2] + by
        and inner[3] <= outer[3] + by
    )


def usable_area(page: dict) -> tuple[float, float, float, float]:
    """Give the 180 mm by 246 mm in the middle of a letter page, by 262 mm on A4."""
    high = 246 if page["height"] < 800 else 262
    across, down = (page["width"] - 180 * MM) / 2, (page["height"] - high * MM) / 2
    return across, down, page["width"] - across, page["height"] - down


def foot_words(page: dict) -> list[dict]:
    """Give the words at the foot of a page, under the usable area."""
    return [word for word in page["words"] if word["top"] > usable_area(page)[3]]


def fractions_in(text: str) -> list[str]:
    """Give every fraction in a text."""
    return re.findall(r"\d+/\d+", text)
