"""A document as it is written: whatever lays it out is brought in where it is printed, and nowhere else."""

from typing import TYPE_CHECKING

from foldmath.pages.pdf.styles import SLIDE, PageShape
from foldmath.values import frozen

if TYPE_CHECKING:
    from foldmath.pages.printing import Document

SLIDE_WORDS = "{page} / {pages}"
"""At the foot of slides, where other pages say it in words."""


@frozen(kw_only=True)
class Written:
    """A document that nobody has laid out yet.

    Args:
        html: its body, by the templates.
        shape: of its pages.
        footer: words at the left of the foot.
        code: ties a worksheet to its key.
        answers: whether its answers show.
    """

    html: str
    shape: PageShape
    footer: str
    code: str
    answers: bool

    def document(self) -> "Document":
        """Give it ready to be printed."""
        from foldmath.pages.pdf.paginating import PAGE_WORDS, PageMaster
        from foldmath.pages.printing import Document

        words = SLIDE_WORDS if self.shape == SLIDE else PAGE_WORDS
        master = PageMaster(self.shape, self.footer, self.code, words)
        return Document(self.html, master, answers=self.answers)
