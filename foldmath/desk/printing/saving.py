"""Documents to take away: takes their names and contents, gives one file to save."""

from collections.abc import Mapping
from io import BytesIO
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

LONG_AGO = (1980, 1, 1, 0, 0, 0)
"""The first time that a ZIP file can say: the same documents give the same bytes."""


def zipped(folder: str, documents: Mapping[str, bytes]) -> bytes:
    """Put documents into one ZIP file, in a folder of the lesson's name."""
    written = BytesIO()
    with ZipFile(written, "w", ZIP_DEFLATED) as archive:
        for name, content in documents.items():
            archive.writestr(ZipInfo(f"{folder}/{name}", LONG_AGO), content, ZIP_DEFLATED)
    return written.getvalue()
