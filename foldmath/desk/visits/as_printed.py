"""What prints, for the browser: takes the HTML of a page and its pictures, gives it to be shown at the desk.

As in print, the answers in the boxes are hidden or shown; nothing else tells a worksheet from its key.
"""

from collections.abc import Iterable, Mapping
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

from markupsafe import Markup

from foldmath.drawing.rendering.svg import svg
from foldmath.drawing.scenes import Scene

LOWER = {"h1": "h2", "h2": "h3"}
"""A page of the desk has a heading above those of what it shows."""

ALONE = "presentation"
"""An item of a list in print stands alone here, in a list of the desk's own."""


def as_printed(html: str, scenes: Mapping[str, Scene], language: str, *, answers: bool) -> Markup:
    """Give what a document prints.

    Args:
        html: as the templates of pages write it.
        scenes: its pictures, by the names that stand there.
        language: of what the pictures say to who cannot see them.
        answers: whether its boxes hold their answers, as on the key.
    """
    return _shown(ElementTree.fromstring(html).findall("body/*"), scenes, language, answers=answers)


def part_as_printed(html: str, scenes: Mapping[str, Scene], language: str, *, answers: bool) -> Markup:
    """Give what a part of a document prints; else as ``as_printed``."""
    return _shown(ElementTree.fromstring(f"<div>{html}</div>"), scenes, language, answers=answers)


def _shown(parts: Iterable[Element], scenes: Mapping[str, Scene], language: str, *, answers: bool) -> Markup:
    printed = Element("div", {"class": "printed"})
    printed.extend(parts)
    for parent in list(printed.iter()):
        for place, part in enumerate(parent):
            part.tag = LOWER.get(part.tag, part.tag)
            if part.get("role") == "list":
                part.set("role", ALONE)
            if part.tag == "img":
                scene = scenes[part.attrib[_name_of(part, answers=answers)]]
                drawn = ElementTree.fromstring(svg(scene, language))
                drawn.tail = part.tail
                parent[place] = drawn
            elif part.tag == "output" and not answers and "data-given" not in part.attrib:
                _empty(part)
    return Markup(ElementTree.tostring(printed, encoding="unicode", method="html"))


def _name_of(picture: Element, *, answers: bool) -> str:
    return "data-answer" if answers and "data-answer" in picture.attrib else "data-picture"


def _empty(box: Element) -> None:
    tail, attributes = box.tail, dict(box.attrib)
    box.clear()
    box.tail = tail
    box.attrib.update(attributes)
