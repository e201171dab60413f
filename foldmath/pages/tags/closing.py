"""Closing a file: takes its pages and its tag tree, gives the file that can be read aloud.

The elements are thousands of small objects, much alike; packed together they are a tenth of their size.

Source: ISO 32000-1:2008, 14.7 (logical structure), 14.8 (tagged PDF); ISO 14289-1:2014 (PDF/UA-1), 5 and 7.1;
ISO 16684-1 (XMP).
"""

from collections.abc import Iterable
from dataclasses import dataclass
from xml.sax.saxutils import escape

from foldmath.pages.tags.appending import Appending
from foldmath.pages.tags.tree import GROUP, ROOT, Tree

PACKET = """<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
<rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/"
 xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>
<dc:creator><rdf:Seq><rdf:li>the foldmath authors</rdf:li></rdf:Seq></dc:creator>
<dc:language><rdf:Bag><rdf:li>{language}</rdf:li></rdf:Bag></dc:language>
<xmp:CreatorTool>foldmath</xmp:CreatorTool>
<pdf:Producer>foldmath</pdf:Producer>
<pdfuaid:part>1</pdfuaid:part>
</rdf:Description>
</rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>"""
"""Metadata of a file: what it is called, and that it can be read aloud."""


@dataclass(frozen=True)
class OpenFile:
    """A file that has its pages, but no tag tree yet.

    Args:
        pages: the file.
        tree: of its pages.
        title: of the file.
        language: as in BCP 47, such as ``en-US``.
    """

    pages: bytes
    tree: Tree
    title: str
    language: str


def closed(open_file: OpenFile) -> bytes:
    """Give a file its tag tree; the same input gives the same bytes."""
    file, tree, language = Appending(open_file.pages), open_file.tree, open_file.language
    page_tree, page_numbers = file.pages()
    catalog, described, root, parents, document = file.numbers(5)
    first = file.numbers(len(tree.elements)).start
    file.add(
        catalog,
        f"<</Type/Catalog/Pages {page_tree} 0 R/Lang({language})/Metadata {described} 0 R"
        f"/MarkInfo<</Marked true>>/StructTreeRoot {root} 0 R"
        "/ViewerPreferences<</DisplayDocTitle true>>>>".encode(),
    )
    packet = _metadata(open_file.title, language)
    file.add_stream(described, "/Type/Metadata/Subtype/XML", packet, packed=False)
    children = _children(tree)
    marks = "".join(f"{page}{_listed(numbers, first)}" for page, numbers in enumerate(tree.marks))
    above = [
        f"<</Type/StructTreeRoot/K {document} 0 R/ParentTree {parents} 0 R"
        f"/ParentTreeNextKey {len(tree.marks)}>>",
        f"<</Nums[{marks}]>>",
        f"<</S/Document/P {root} 0 R/K{_listed(children[ROOT], first)}>>",
    ]
    file.pack(root, above + _elements(tree, children, first, page_numbers))
    return file.written(catalog)


def _metadata(title: str, language: str) -> bytes:
    """Say what a file is called, and that it can be read aloud."""
    return PACKET.format(title=escape(title), language=language).encode()


def _listed(numbers: Iterable[int], first: int) -> str:
    """Name elements by their objects."""
    return f"[{' '.join([f'{first + number} 0 R' for number in numbers])}]"


def _children(tree: Tree) -> dict[int, list[int]]:
    children: dict[int, list[int]] = {ROOT: []}
    for number, element in enumerate(tree.elements):
        if element.mark == GROUP:
            children[number] = []
        children[element.parent].append(number)
    return children


def _elements(tree: Tree, children: dict[int, list[int]], first: int, pages: list[int]) -> list[str]:
    """Write every element, which knows what it stands in, and its children or its ink."""
    written = []
    for number, (kind, parent, page, mark, more) in enumerate(tree.elements):
        # The document stands one before the first element, as the parent of those that have no other.
        around = f"<</S/{kind}/P {first + parent} 0 R"
        if mark == GROUP:
            written.append(f"{around}/K{_listed(children[number], first)}{more}>>")
        else:
            held = _marks_of(tree, number)
            written.append(f"{around}/Pg {pages[page]} 0 R/K {held}{more}>>")
    return written


def _marks_of(tree: Tree, number: int) -> str:
    """Give the marks of an element with ink, which follow each other."""
    element = tree.elements[number]
    owners, end = tree.marks[element.page], element.mark + 1
    while end < len(owners) and owners[end] == number:
        end += 1
    marks = range(element.mark, end)
    return str(element.mark) if len(marks) == 1 else f"[{' '.join(map(str, marks))}]"
