"""Objects of a file: each is written as soon as it is given, and only where it lies is kept.

Source: ISO 32000-1:2008, 7.5.7 (object streams), 7.5.8 (cross-reference streams).
"""

import zlib
from collections.abc import Sequence
from hashlib import sha256
from io import BytesIO
from itertools import accumulate, chain
from struct import calcsize, pack

HEADER = b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n"
"""The version that PDF/UA-1 builds on, and signs by which programs know that a file is no text."""

LEVEL = 3
"""How hard streams are packed: a ninth more bytes than usual, in a third of the time."""

PACKED = 200
"""Objects in one stream: whoever wants one of them unpacks them all."""

FREE, PLAIN, IN_STREAM = 0, 1, 2
"""Kinds of entries in a cross-reference stream."""

ENTRY = ">BIH"
"""An entry: its kind; where the object begins, or which stream it is in; its place in there."""

ENTRY_BYTES = calcsize(ENTRY)
PLACES = [pack(">H", place) for place in range(PACKED)]

IDENTIFIER_BYTES = 16


def packed(content: bytes | bytearray) -> bytes:
    """Give what stands in a stream for its content."""
    return zlib.compress(content, LEVEL)


class File:
    """A file that is being written; its first object is number 1."""

    def __init__(self) -> None:
        self._body = BytesIO()
        self._body.write(HEADER)
        self._entries = bytearray(pack(ENTRY, FREE, 0, 0xFFFF))

    def numbers(self, count: int) -> range:
        """Give the numbers of so many further objects."""
        first = self._size
        self._entries += bytes(count * ENTRY_BYTES)
        return range(first, first + count)

    @property
    def _size(self) -> int:
        return len(self._entries) // ENTRY_BYTES

    def add(self, number: int, content: bytes) -> None:
        """Add an object."""
        self._enter(number, pack(ENTRY, PLAIN, self._body.tell(), 0))
        self._body.write(b"%d 0 obj\n%b\nendobj\n" % (number, content))

    def _enter(self, first: int, entries: bytes) -> None:
        """Keep the entries of objects with numbers in a row."""
        start = first * ENTRY_BYTES
        self._entries[start : start + len(entries)] = entries

    def add_stream(self, number: int, entries: bytes, content: bytes) -> None:
        """Add a stream that is ``packed`` already, and further entries of its dictionary."""
        self.add_plain(number, b"%b/Filter/FlateDecode" % entries, content)

    def add_plain(self, number: int, entries: bytes, content: bytes) -> None:
        """Add a stream that is not packed."""
        head = b"<<%b/Length %d>>\nstream\n" % (entries, len(content))
        self.add(number, b"%b%b\nendstream" % (head, content))

    def pack(self, first: int, objects: Sequence[bytes]) -> None:
        """Add objects with numbers in a row, packed into streams."""
        for start in range(0, len(objects), PACKED):
            self._pack(first + start, objects[start : start + PACKED])

    def _pack(self, first: int, objects: Sequence[bytes]) -> None:
        (stream,) = self.numbers(1)
        numbers = range(first, first + len(objects))
        begun = pack(">BI", IN_STREAM, stream)
        self._enter(first, begun + begun.join(PLACES[: len(objects)]))
        places = accumulate((len(content) + 1 for content in objects[:-1]), initial=0)
        head = b"%d %d " * len(objects) % tuple(chain.from_iterable(zip(numbers, places, strict=True)))
        entries = b"/Type/ObjStm/N %d/First %d" % (len(objects), len(head))
        self.add_stream(stream, entries, packed(head + b"\n".join(objects)))

    def written(self, catalog: int, info: int) -> bytes:
        """Write the end of the file."""
        (number,) = self.numbers(1)
        start = self._body.tell()
        self._enter(number, pack(ENTRY, PLAIN, start, 0))
        digest = sha256(self._body.getbuffer()).hexdigest()[: 2 * IDENTIFIER_BYTES].encode()
        told = b"/Type/XRef/Size %d/W[1 4 2]/Root %d 0 R/Info %d 0 R" % (self._size, catalog, info)
        entries = b"%b/ID[<%b><%b>]" % (told, digest, digest)
        self.add_stream(number, entries, packed(self._entries))
        self._body.write(b"startxref\n%d\n%%%%EOF\n" % start)
        return self._body.getvalue()
