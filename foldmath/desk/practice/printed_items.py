"""Items as they will print, for the browser: takes a worksheet, gives each item's own HTML with its pictures.

As in print, the answers in the boxes are hidden or shown; nothing else tells a worksheet from its key.
"""

from xml.etree import ElementTree
from xml.etree.ElementTree import Element

from markupsafe import Markup

from foldmath.drawing.rendering.svg import svg
from foldmath.drawing.scenes import Scene
from foldmath.worksheets.rendering import items_html
from foldmath.worksheets.worksheet import Worksheet


def printed_items(sheet: Worksheet, *, answers: bool) -> list[Markup]:
    """Give every item of a worksheet as it will print.

    Args:
        sheet: what the page says.
        answers: whether its boxes hold their answers, as on the key.
    """
    return [_printed(html, _scenes(sheet), answers=answers) for html in items_html(sheet)]


def _scenes(sheet: Worksheet) -> dict[str, Scene]:
    scenes = {}
    for placed in sheet.items:
        if placed.picture:
            scenes[placed.picture.name] = placed.picture.blank
            scenes[placed.picture.shaded_name] = placed.picture.shaded
    return scenes


def _printed(html: str, scenes: dict[str, Scene], *, answers: bool) -> Markup:
    item = ElementTree.fromstring(f'<div class="printed">{html}</div>')
    for parent in list(item.iter()):
        for place, part in enumerate(parent):
            if part.tag == "img":
                name = part.attrib["data-answer" if answers else "data-picture"]
                drawn = ElementTree.fromstring(svg(scenes[name]))
                drawn.tail = part.tail
                parent[place] = drawn
            elif part.tag == "output" and not answers and "data-given" not in part.attrib:
                _empty(part)
    return Markup(ElementTree.tostring(item, encoding="unicode", method="html"))


def _empty(box: Element) -> None:
    tail, attributes = box.tail, dict(box.attrib)
    box.clear()
    box.tail, box.text = tail, None
    box.attrib.update(attributes)
