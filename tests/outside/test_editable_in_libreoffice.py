"""The editable copy, checked by LibreOffice: opened there and saved as OpenDocument, it says the same.

Source: LibreOffice Writer and Math (headless), which read Office Open XML (ECMA-376) and write OpenDocument
(ISO/IEC 26300), in which equations are MathML objects.
"""

import shutil
import subprocess
from pathlib import Path
from xml.etree import ElementTree
from zipfile import ZipFile

import pytest
from pages.worded import fractions_of, words_of

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.making.editable import EDITABLE, word_files
from foldmath.making.order import proved_lesson
from foldmath.making.papers import papers
from foldmath.pages.looks import REGULAR
from foldmath.pages.markup.blocks import pictures_in
from foldmath.pages.markup.reading import blocks_of

DRAW = "{urn:oasis:names:tc:opendocument:xmlns:drawing:1.0}"
TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
SVG = "{urn:oasis:names:tc:opendocument:xmlns:svg-compatible:1.0}"
OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
LINK = "{http://www.w3.org/1999/xlink}"
MATHML = "{http://www.w3.org/1998/Math/MathML}"

pytestmark = [
    pytest.mark.sweep,
    pytest.mark.skipif(
        not (shutil.which("soffice") and shutil.which("lowriter") and shutil.which("lomath")),
        reason="LibreOffice Writer and Math are not installed",
    ),
]


@pytest.fixture(scope="module")
def proved():
    return proved_lesson(Path("lessons/seed-trays.toml"))


@pytest.fixture(scope="module")
def opened(proved, tmp_path_factory):
    """Give the OpenDocument archives that LibreOffice makes of the copy, by name."""
    folder = tmp_path_factory.mktemp("editable")
    with PictureProcess() as pictures:
        files = word_files(*proved, REGULAR, pictures)
    for name, content in files.items():
        (folder / name).write_bytes(content)
    command = [
        "soffice",
        f"-env:UserInstallation=file://{folder}/profile",
        "--headless",
        "--convert-to",
        "odt",
        "--outdir",
        str(folder),
        *(str(folder / name) for name in files),
    ]
    subprocess.run(command, check=True, capture_output=True, timeout=300)
    return {path.stem: ZipFile(path) for path in folder.glob("*.odt")}


def fraction_in(archive: ZipFile, name: str) -> str:
    """Read one equation out, from its MathML."""
    tree = ElementTree.fromstring(archive.read(f"{name.removeprefix('./')}/content.xml"))
    above, below = tree.find(f".//{MATHML}mfrac")
    return "/".join("".join("".join(part.itertext()).split()) for part in (above, below))


def read_out(node, archive: ZipFile) -> str:
    if node.tag == f"{DRAW}object":
        return f" {fraction_in(archive, node.get(f'{LINK}href'))} "
    if node.tag in (f"{SVG}title", f"{SVG}desc", f"{TEXT}sequence-decls"):
        return ""
    if node.tag == f"{TEXT}s":
        return " "
    inside = "".join([node.text or "", *(read_out(child, archive) + (child.tail or "") for child in node)])
    return f"{inside} " if node.tag in (f"{TEXT}p", f"{TEXT}h") else inside


def body_of(archive: ZipFile):
    return ElementTree.fromstring(archive.read("content.xml")).find(f".//{OFFICE}text")


@pytest.fixture(params=["worksheet", "answer-key", "worksheet-guided", "answer-key-stretch"])
def page(request, proved, opened):
    document = papers(*proved, REGULAR, EDITABLE).documents[f"{request.param}.pdf"]
    return document, opened[request.param]


def test_it_reads_the_same_words_and_fractions_in_the_same_order(page):
    document, archive = page
    read = read_out(body_of(archive), archive).replace("\u00a0", " ").split()
    expected = words_of(blocks_of(document.html), answers=document.answers)
    assert "".join(read) == "".join(expected)


def test_every_fraction_is_an_equation_there(page):
    document, archive = page
    names = [node.get(f"{LINK}href") for node in body_of(archive).iter(f"{DRAW}object")]
    read = [fraction_in(archive, name) for name in names]
    assert read == fractions_of(blocks_of(document.html), answers=document.answers)


def test_every_picture_keeps_the_words_that_say_what_it_shows(page):
    document, archive = page
    frames = [
        frame for frame in body_of(archive).iter(f"{DRAW}frame") if frame.find(f"{DRAW}image") is not None
    ]
    pictures = [frame for frame in frames if frame.find(f"{DRAW}object") is None]
    assert len(pictures) == len(list(pictures_in(blocks_of(document.html))))
    assert all(frame.findtext(f"{SVG}desc") for frame in pictures)
