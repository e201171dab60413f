"""Reads what the pictures of a printed page tell those who hear them."""

import ctypes
from collections.abc import Iterator

import pypdfium2
from pypdfium2 import raw


def alternates(page: pypdfium2.PdfPage) -> list[str]:
    """Give the alternate descriptions of a page's marked content, in the order of painting.

    ISO 32000-1:2008, 14.9.3.
    """
    return [words for placed in page.get_objects() for words in _marks(placed.raw)]


def _marks(placed: object) -> Iterator[str]:
    for index in range(raw.FPDFPageObj_CountMarks(placed)):
        mark = raw.FPDFPageObj_GetMark(placed, index)
        length = ctypes.c_ulong()
        if raw.FPDFPageObjMark_GetParamBlobValue(mark, b"Alt", None, 0, length):
            held = (ctypes.c_ubyte * length.value)()
            raw.FPDFPageObjMark_GetParamBlobValue(mark, b"Alt", held, length.value, length)
            yield bytes(held).decode("utf-16")


def tagged_alternates(page: pypdfium2.PdfPage) -> list[str]:
    """Give the alternate descriptions in the tag tree of a page, as a browser writes them."""
    tree = raw.FPDF_StructTree_GetForPage(page.raw)
    tops = [
        raw.FPDF_StructTree_GetChildAtIndex(tree, index)
        for index in range(raw.FPDF_StructTree_CountChildren(tree))
    ]
    return [words for top in tops for words in _below(top)]


def _below(element: object) -> Iterator[str]:
    length = raw.FPDF_StructElement_GetAltText(element, None, 0)
    if length > len("\0\0"):
        held = ctypes.create_string_buffer(length)
        raw.FPDF_StructElement_GetAltText(element, held, length)
        yield held.raw.decode("utf-16-le").rstrip("\0")
    for index in range(max(0, raw.FPDF_StructElement_CountChildren(element))):
        child = raw.FPDF_StructElement_GetChildAtIndex(element, index)
        if child:
            yield from _below(child)
