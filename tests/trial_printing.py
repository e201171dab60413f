"""The one place where tests print documents of their own, apart from the lessons' pages."""

from foldmath.pages.page_shapes import upright
from foldmath.pages.pdf.paginating import PageMaster
from foldmath.pages.printing import Document, printed

MASTER = PageMaster(upright("letter"), "A trial", "AAAAA", "page {page} of {pages}")


def print_body(body: str, *, answers: bool = False) -> bytes:
    """Print the body of a document without pictures."""
    document = f"<html><head><title>t</title></head><body>{body}</body></html>"
    return print_document(document, {}, answers=answers)


def print_document(document: str, pictures: dict, *, answers: bool = False) -> bytes:
    """Print a whole document with the recordings of its pictures."""
    return printed([Document(document, MASTER, answers)], pictures, "A trial", "en-US")
