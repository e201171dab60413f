"""The tag tree of a file: takes what is told of its pages, gives the file that can be read aloud.

The elements are thousands of small objects, much alike; packed together they are a tenth of their size.

Source: ISO 32000-1:2008, 14.7 (logical structure), 14.8 (tagged PDF); ISO 14289-1:2014 (PDF/UA-1), 5 and 7.1;
ISO 16684-1 (XMP).
"""

from html import escape

from foldmath.pages.tags.objects import File
from foldmath.pages.tags.tree import DOCUMENT, Told

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


class TagTree:
    """The tag tree of a file, which takes its pages section by section."""

    def __init__(self, file: File) -> None:
        self._file = file
        self._sections: list[int] = []
        self._marks: list[int] = []
        if file.numbers(1).start != DOCUMENT:
            raise ValueError("a file begins with its tag tree")

    def add(self, told: Told) -> range:
        """Put what is told of further pages into the file, and give the numbers that these must have."""
        pages = self._file.numbers(len(told.marks))
        first = self._file.numbers(told.objects.count(b"\n") + 1).start
        self._file.pack(first, (told.objects % tuple([first + one for one in told.named])).split(b"\n"))
        self._sections += (first + section for section in told.sections)
        self._marks += (first + marks for marks in told.marks)
        return pages[::-1]

    def closed(self, title: str, language: str) -> bytes:
        """Put into the file what stands above the elements, and give the entries by which it is found.

        Args:
            title: of the file.
            language: as in BCP 47, such as ``en-US``.
        """
        described, root = self._file.numbers(2)
        self._file.add_plain(described, b"/Type/Metadata/Subtype/XML", _metadata(title, language))
        marks = b"".join(b"%d %d 0 R " % told for told in enumerate(self._marks))
        parents = b"/ParentTree<</Nums[%b]>>/ParentTreeNextKey %d" % (marks, len(self._marks))
        self._file.add(root, b"<</Type/StructTreeRoot/K %d 0 R%b>>" % (DOCUMENT, parents))
        sections = b" ".join(b"%d 0 R" % section for section in self._sections)
        self._file.add(DOCUMENT, b"<</S/Document/P %d 0 R/K[%b]>>" % (root, sections))
        return (
            f"/Lang({language})/Metadata {described} 0 R/MarkInfo<</Marked true>>/StructTreeRoot {root} 0 R"
            "/ViewerPreferences<</DisplayDocTitle true>>"
        ).encode()


def _metadata(title: str, language: str) -> bytes:
    """Say what a file is called, and that it can be read aloud."""
    return PACKET.format(title=escape(title, quote=False), language=language).encode()
