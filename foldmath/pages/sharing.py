"""Sharing the work of laying out pages between two processes: the one that draws, and this one."""

from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import Future
from typing import TypeAlias

from foldmath.drawing.rendering.picture_process import PictureProcess, recordings_here
from foldmath.drawing.rendering.recording import Recording
from foldmath.drawing.scenes import Scene
from foldmath.pages.written import Written
from foldmath.values import frozen


@frozen(kw_only=True)
class Printing:
    """A document to be printed into a file of its own.

    Args:
        written: what it says.
        scenes: the pictures that it places.
        title: of the file.
        language: of its words, and of what its pictures are said to show.
        look: the name of its style sheet.
    """

    written: Written
    scenes: Mapping[str, Scene]
    title: str
    language: str
    look: str

    def printed(self, recordings: Sequence[Recording]) -> bytes:
        """Give the file.

        Args:
            recordings: of the scenes.
        """
        # Imported here, since the process that draws knows nothing of pages until it is asked for some, and
        # the other one prints only what is left when all is written.
        from foldmath.pages.printing import printed

        pictures = dict(zip(self.scenes, recordings, strict=True))
        return printed([self.written.document()], pictures, self.title, self.language, self.look)

    def drawn_and_printed(self) -> bytes:
        """Give the file, in the process that draws."""
        return self.printed(recordings_here([*self.scenes.values()]))


@frozen
class Begun:
    """A document that waits in the other process to be printed, or is being printed there.

    Args:
        printing: what is to be done.
        process: that does it.
        file: as soon as it is done.
    """

    printing: Printing
    process: PictureProcess
    file: "Future[bytes]"

    def pictures(self) -> "Future[list[Recording]]":
        """Begin to draw its pictures for whoever prints it in the place of that process."""
        return self.process.recordings([*self.printing.scenes.values()])


def begin(printing: Printing, process: PictureProcess) -> Begun:
    """Have the process that draws print a document as soon as it can."""
    return Begun(printing, process, process.submit(printing.drawn_and_printed))


Content: TypeAlias = "bytes | Future[bytes] | Begun | Callable[[], bytes]"
"""Of a file: as it is; as soon as the other process has it, or either of the two; as this one makes it."""

WORTH_HELPING = 6
"""Documents that wait: fewer are printed by the other process before this one has fetched what prints."""


def gathered(contents: Mapping[str, Content]) -> dict[str, bytes]:
    """Make what this process makes of some files, then print, from the last on, what waits for the other one.

    Args:
        contents: of the files, by their names.
    """
    begun = {name: content for name, content in contents.items() if isinstance(content, Begun)}
    waiting = _taken_back(begun)
    made = {name: content for name, content in contents.items() if isinstance(content, bytes)}
    made |= {name: content() for name, content in contents.items() if callable(content)}
    made |= _printed_here(waiting)
    begun |= {name: one for name, (one, _) in waiting.items()}
    coming = {name: content for name, content in contents.items() if isinstance(content, Future)}
    coming |= {name: one.file for name, one in begun.items() if name not in made}
    made |= {name: file.result() for name, file in coming.items()}
    return {name: made[name] for name in contents}


def _taken_back(begun: dict[str, Begun]) -> "dict[str, tuple[Begun, Future[list[Recording]]]]":
    """Begin anew what the other process has not come to, the last first, with its pictures drawn before."""
    waiting = [name for name, one in begun.items() if not (one.file.running() or one.file.done())]
    if len(waiting) < WORTH_HELPING:
        return {}
    names = [name for name in reversed(waiting) if begun[name].file.cancel()]
    drawn = {name: begun[name].pictures() for name in names}
    again = {name: begin(begun[name].printing, begun[name].process) for name in reversed(names)}
    return {name: (again[name], drawn[name]) for name in names}


def _printed_here(waiting: "dict[str, tuple[Begun, Future[list[Recording]]]]") -> dict[str, bytes]:
    """Print documents until one comes that the other process is at."""
    made = {}
    for name, (one, drawn) in waiting.items():
        if not one.file.cancel():
            break
        made[name] = one.printing.printed(drawn.result())
    return made
