"""Metadata of a file, as XML: what it is called, and that it can be read aloud.

Source: ISO 16684-1 (XMP), ISO 14289-1:2014, clause 5 (identification of PDF/UA).
"""

from xml.sax.saxutils import escape

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


def metadata(title: str, language: str) -> bytes:
    """Give the metadata of a file.

    Args:
        title: of the file.
        language: as in BCP 47, such as ``en-US``.
    """
    return PACKET.format(title=escape(title), language=language).encode()
