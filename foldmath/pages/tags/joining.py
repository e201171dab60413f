"""Joining PDF files, their pages and their tag trees in order."""

from io import BytesIO

from foldmath.pages.tags.closing import OpenFile, closed
from foldmath.pages.tags.tree import joined as joined_trees


def joined(files: list[OpenFile]) -> bytes:
    """Join files into one, called as the first is, and close it. The same input gives the same bytes."""
    return closed(files[0] if len(files) == 1 else _in_one(files))


def _in_one(files: list[OpenFile]) -> OpenFile:
    # Imported here, since only sets of more than one batch are joined.
    import pikepdf

    first = files[0]
    with pikepdf.open(BytesIO(first.pages)) as whole:
        for file in files[1:]:
            with pikepdf.open(BytesIO(file.pages)) as part:
                whole.pages.extend(part.pages)
        for number, page in enumerate(whole.pages):
            page.StructParents = number
        stream = BytesIO()
        whole.save(stream, deterministic_id=True)
    tree = joined_trees(file.tree for file in files)
    return OpenFile(stream.getvalue(), tree, first.title, first.language)
