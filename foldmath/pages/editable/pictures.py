"""Pictures in a Word file: PNG for every program, with the SVG beside it for those that read it."""

from io import BytesIO
from typing import Any

from docx.opc.packuri import PackURI
from docx.opc.part import Part
from docx.oxml.ns import qn
from docx.oxml.parser import parse_xml
from docx.shared import Mm
from docx.text.paragraph import Paragraph as WordParagraph

from foldmath.values import frozen

SVG_CONTENT = "image/svg+xml"
IMAGE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/image"
SVG_EXTENSION = "{96DAC541-7B7A-43D3-8B79-37D633B846F1}"
"""The extension of a picture that names its SVG (Office Open XML extensions, MS-ODRAWXML 2.3.12)."""

SVG_NAMESPACE = "http://schemas.microsoft.com/office/drawing/2016/SVG/main"
DRAWING = "http://schemas.openxmlformats.org/drawingml/2006/main"
RELATIONSHIPS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"


@frozen
class DrawnPicture:
    """A picture in both forms, with its width in mm and what it shows in words."""

    png: bytes
    svg: bytes
    width_mm: float
    words: str


def place_picture(paragraph: WordParagraph, picture: DrawnPicture, words: str, most_mm: float) -> None:
    """Place a picture at the end of a paragraph.

    Args:
        paragraph: takes it.
        picture: both its forms.
        words: what it shows here; where there are none, the picture's own.
        most_mm: it is made no wider.
    """
    run = paragraph.add_run()
    inline = run.add_picture(BytesIO(picture.png), width=Mm(min(picture.width_mm, most_mm)))._inline
    inline.docPr.set("descr", words or picture.words)
    blip = inline.find(f".//{qn('a:blip')}")
    blip.append(_extension(_svg_relationship(paragraph, picture.svg)))


def _svg_relationship(paragraph: WordParagraph, svg: bytes) -> str:
    """Add the SVG to the package, once, and give the relationship to it."""
    document: Any = paragraph.part
    for identifier, relation in document.rels.items():
        if relation.reltype == IMAGE and relation.target_part.blob == svg:
            return str(identifier)
    number = len(document.rels) + 1
    part = Part(PackURI(f"/word/media/drawing{number}.svg"), SVG_CONTENT, svg, document.package)
    return str(document.relate_to(part, IMAGE))


def _extension(relationship: str) -> Any:
    return parse_xml(
        f'<a:extLst xmlns:a="{DRAWING}"><a:ext uri="{SVG_EXTENSION}">'
        f'<asvg:svgBlip xmlns:asvg="{SVG_NAMESPACE}" xmlns:r="{RELATIONSHIPS}" r:embed="{relationship}"/>'
        "</a:ext></a:extLst>"
    )
