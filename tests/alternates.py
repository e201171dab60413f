"""Reads what the pictures of a printed page tell those who hear them."""

import ctypes
from collections.abc import Iterator

import pypdfium2
from pypdfium2 import raw


def tagged_alternates(page: pypdfium2.PdfPage) -> list[str]:
    """Give the alternate descriptions in the tag tree of a page, by ours or a browser's."""
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
