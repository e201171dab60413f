"""Sharing the work of laying out pages between two processes: the one that draws, and this one."""

from collections.abc import Mapping
from concurrent.futures import Future
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeAlias

from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.drawing.rendering.recording import Recording

if TYPE_CHECKING:
    from foldmath.pages.printing import Document


def fetch_press() -> None:
    """Import what prints, and read the fonts: in the process that draws, before the first document comes."""
    import foldmath.pages.printing  # noqa: F401
    from foldmath.pages.pdf import fonts

    fonts.register_fonts()


Content: TypeAlias = "bytes | Future[bytes]"
"""Of a file: as it is, or as soon as the other process has it."""


@dataclass(frozen=True, kw_only=True)
class Printing:
    """A document to be printed into a file of its own.

    Args:
        document: what it says.
        pictures: those that it places, their words said.
        title: of the file.
        language: of its words.
        look: the name of its style sheet.
    """

    document: "Document"
    pictures: Mapping[str, Recording]
    title: str
    language: str
    look: str

    def printed(self) -> bytes:
        """Give the file."""
        # Imported here, since the process that draws knows nothing of pages until it is asked for some.
        from foldmath.pages.printing import printed

        return printed([self.document], self.pictures, self.title, self.language, self.look)


def printed_by_both(printings: Mapping[str, Printing], process: PictureProcess) -> dict[str, Content]:
    """Print documents: the process that draws from the first on, this one meanwhile from the last on.

    Args:
        printings: by the names of their files.
        process: the one that draws.
    """
    begun = {name: process.submit(printing.printed) for name, printing in printings.items()}
    made: dict[str, bytes] = {}
    for name in reversed(begun):
        if not begun[name].cancel():
            # The other process is at it, and has those before it.
            break
        made[name] = printings[name].printed()
    return {**begun, **made}
