"""Adding objects to a finished file: its end is taken off, and written anew after them.

Source: ISO 32000-1:2008, 7.5.4 (cross-reference table), 7.5.7 (object streams), 7.5.8 (cross-reference
streams).
"""

import re
import zlib
from struct import pack

HEADER = b"%PDF-1.7\n"
"""The version that PDF/UA-1 builds on; as long as the header whose place it takes."""

PACKED = 200
"""Objects in one stream: whoever wants one of them unpacks them all."""

ENTRY_LENGTH = 20
"""Bytes of an entry in a cross-reference table."""

OFFSET_LENGTH, KIND_AT = 10, 17
"""Its first bytes say where an object begins; a letter further on says whether there is one."""

FREE, PLAIN, IN_STREAM = 0, 1, 2
"""Kinds of entries in a cross-reference stream."""


class Appending:
    """A file that takes more objects; its cross-reference table must be in one piece."""

    def __init__(self, file: bytes) -> None:
        table = int(_found(rb"startxref\s+(\d+)\s+%%EOF\s*$", file)[1])
        head = _found(rb"xref\s+0 (\d+) *\r?\n", file[table:])
        entries = table + head.end()
        self._trailer = entries + int(head[1]) * ENTRY_LENGTH
        self._file = file
        self._body = bytearray(HEADER + file[len(HEADER) : table])
        self._entries = [
            _entry(file[place : place + ENTRY_LENGTH])
            for place in range(entries, self._trailer, ENTRY_LENGTH)
        ]

    def numbers(self, count: int) -> range:
        """Give the numbers of so many further objects."""
        first = len(self._entries)
        self._entries += [b""] * count
        return range(first, first + count)

    def pages(self) -> tuple[int, list[int]]:
        """Give the number of the page tree, which has one level, and those of the pages in order."""
        tree = int(_found(rb"/Pages (\d+) 0 R", self._object(self._named(b"Root")))[1])
        kids = _found(rb"/Kids\s*\[([^]]*)\]", self._object(tree))[1]
        return tree, [int(number) for number in re.findall(rb"(\d+) 0 R", kids)]

    def _named(self, key: bytes) -> int:
        """Give the number of an object that the trailer names."""
        return int(_found(rb"/%b (\d+) 0 R" % key, self._file[self._trailer :])[1])

    def _object(self, number: int) -> bytes:
        begin = int.from_bytes(self._entries[number][1:5])
        return self._file[begin : self._file.index(b"endobj", begin)]

    def add(self, number: int, content: bytes) -> None:
        """Add an object."""
        self._entries[number] = pack(">BIH", PLAIN, len(self._body), 0)
        self._body += b"%d 0 obj\n%b\nendobj\n" % (number, content)

    def add_stream(self, number: int, entries: str, content: bytes, *, packed: bool = True) -> None:
        """Add a stream, and further entries of its dictionary."""
        if packed:
            content, entries = zlib.compress(content), f"{entries}/Filter/FlateDecode"
        head = f"<<{entries}/Length {len(content)}>>\nstream\n".encode()
        self.add(number, b"%b%b\nendstream" % (head, content))

    def pack(self, first: int, objects: list[str]) -> None:
        """Add objects with numbers in a row, packed into streams."""
        for start in range(0, len(objects), PACKED):
            some = objects[start : start + PACKED]
            (stream,) = self.numbers(1)
            number, places, at = first + start, [], 0
            for place, content in enumerate(some):
                self._entries[number + place] = pack(">BIH", IN_STREAM, stream, place)
                places.append(f"{number + place} {at}")
                at += len(content) + 1
            head = " ".join(places) + "\n"
            entries = f"/Type/ObjStm/N {len(some)}/First {len(head)}"
            self.add_stream(stream, entries, (head + "\n".join(some)).encode())

    def written(self, root: int) -> bytes:
        """Write the end of the file, whose catalog is an object that was added."""
        (number,) = self.numbers(1)
        self._entries[self._named(b"Root")] = pack(">BIH", FREE, 0, 0)
        start = len(self._body)
        self._entries[number] = pack(">BIH", PLAIN, start, 0)
        identifier = _found(rb"/ID\s*(\[[^]]*\])", self._file[self._trailer :])[1].decode()
        told = (
            f"/Type/XRef/Size {len(self._entries)}/W[1 4 2]/Root {root} 0 R/Info {self._named(b'Info')} 0 R"
        )
        self.add_stream(number, f"{told}/ID{identifier}", b"".join(self._entries))
        return b"%b startxref\n%d\n%%%%EOF\n" % (bytes(self._body).rstrip(b" "), start)


def _entry(entry: bytes) -> bytes:
    """Turn an entry of a table into one of a stream."""
    kind = PLAIN if entry[KIND_AT : KIND_AT + 1] == b"n" else FREE
    return pack(">BIH", kind, int(entry[:OFFSET_LENGTH]), 0)


def _found(pattern: bytes, text: bytes) -> re.Match[bytes]:
    found = re.search(pattern, text)
    if found is None:
        raise ValueError(f"no file as it is written here: it lacks {pattern.decode()}")
    return found
