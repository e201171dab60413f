"""A file's objects are found again by their numbers, however they were put into it."""

import zlib
from io import BytesIO

import pikepdf
import pytest

from foldmath.pages.tags.objects import PACKED, File


def written(file, more=b""):
    catalog, pages, info = file.numbers(3)
    file.add(pages, b"<</Type/Pages/Count 0/Kids[]>>")
    file.add(catalog, b"<</Type/Catalog/Pages %d 0 R%b>>" % (pages, more))
    file.add(info, b"<<>>")
    return file.written(catalog, info)


@pytest.mark.parametrize("count", [1, PACKED, PACKED + 1])
def test_packed_objects_are_found_and_no_stream_has_more_than_its_share(count):
    file = File()
    numbers = file.numbers(count)
    file.pack(numbers.start, [b"(%d)" % number for number in numbers])
    found = pikepdf.open(BytesIO(written(file)))
    assert [str(found.get_object(number, 0)) for number in numbers] == list(map(str, numbers))
    streams = [one for one in found.objects if isinstance(one, pikepdf.Stream) and "/N" in one]
    assert [int(one.N) for one in streams] == ([count] if count <= PACKED else [PACKED, 1])


def test_a_number_may_be_named_before_its_object_is_put_in():
    file = File()
    named, ink = file.numbers(2)
    file.add_stream(ink, b"/Kind/Ink", zlib.compress(b"0 0 m"))
    file.add(named, b"[%d 0 R]" % ink)
    opened = pikepdf.open(BytesIO(written(file, b"/Inks %d 0 R" % named)))
    (found,) = opened.Root.Inks
    assert (found.Kind, found.read_bytes()) == ("/Ink", b"0 0 m")


def test_files_of_one_content_are_the_same_and_others_have_another_identifier():
    first, again, other = (written(File(), more) for more in (b"/A 1", b"/A 1", b"/A 2"))
    assert first == again
    identifiers = [bytes(pikepdf.open(BytesIO(one)).trailer.ID[0]) for one in (first, other)]
    assert identifiers[0] != identifiers[1]
