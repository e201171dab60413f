"""The terminal: runs a command of the shell, writes what can be written, and keeps its exit code."""

import errno
import gc
import io
import os
import sys
import time

from foldmath.cli import main
from foldmath.cli.terminal.signs import writable
from foldmath.cli.terminal.stopping import EndSignals
from foldmath.phrases import phrase

# So mypy knows it too; typing itself is slow to import, and help must be quick.
TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any, TextIO

    from _typeshed import ReadableBuffer

STANDARD_DESCRIPTORS = (0, 1, 2)

NEW_OBJECTS = 500_000
"""Before garbage is looked for; so many are 70 MB. A lesson's make leaves 150,000 in each of its processes,
and all of them stay to its end: to look through them after every 50,000 takes a tenth of its time, and much
more after every 700, as is usual."""

PATIENCE_SECONDS = 0.01
"""Between two tries to write to a terminal that is not ready, because another program set it so."""


def run() -> int:
    """Obey the words of the shell.

    Returns:
        What ``main`` gives; 128 and the number of a signal, if one asked to end. Where standard output is
        closed or full, the work is done all the same, and the code is that of ``SurroundingsFailed``; a
        reader that leaves a pipe changes nothing.
    """
    gc.set_threshold(NEW_OBJECTS)
    _fill_standard_descriptors()
    outlet = Outlet(sys.stdout)
    sys.stdout, sys.stderr = _console(sys.stdout, outlet), _console(sys.stderr, Outlet(sys.stderr))
    code = _obeyed()
    # The process ends: looking once more for garbage in all that it loaded would take a tenth of its time.
    gc.freeze()
    sys.stdout.flush()
    if outlet.failure is None or _reader_has_gone(outlet.failure):
        return code
    # Imported here, since this is seldom needed and the way in must be quick.
    from foldmath.cli.terminal.speaking import tell_error
    from foldmath.errors import SurroundingsFailed

    reason = (outlet.failure.strerror or str(outlet.failure)).lower()
    lost = SurroundingsFailed(
        phrase("standard output: what there is to say cannot be written: {reason}", reason=reason)
    )
    return tell_error(lost)


def _obeyed() -> int:
    """Obey the words of the shell until all is done, or until a signal asks to end."""
    signals = EndSignals()
    code = 0
    try:
        with signals:
            code = main()
    except SystemExit as leaving:
        # As argparse leaves, after help and after words that it cannot read.
        code = leaving.code if isinstance(leaving.code, int) else 0
    except BaseException:
        # What goes wrong in a library that a signal interrupts is no fault of anybody.
        if signals.exit_code is None:
            raise
    return code if signals.exit_code is None else signals.exit_code


class Outlet(io.RawIOBase):
    """Where bytes leave the program: it never fails, and remembers what kept it from writing.

    Args:
        stream: standard output or standard error as Python opened it; None where it is closed.
    """

    def __init__(self, stream: "TextIO | None") -> None:
        super().__init__()
        # Unbuffered streams write to the raw file itself.
        self.raw: Any = None if stream is None else getattr(stream.buffer, "raw", stream.buffer)
        self.failure: OSError | None = None

    def writable(self) -> bool:
        """Whatever happens, it takes bytes."""
        return True

    def isatty(self) -> bool:
        """Tell whether someone reads along."""
        return self.raw is not None and bool(self.raw.isatty())

    def fileno(self) -> int:
        """Give the descriptor, for whoever asks how wide the terminal is."""
        if self.raw is None:
            raise io.UnsupportedOperation("this stream is closed")
        return int(self.raw.fileno())

    def write(self, content: "ReadableBuffer", /) -> int:
        """Write bytes, or after a failure pass them over."""
        content = bytes(content)
        while self.failure is None:
            try:
                if self.raw is None:
                    raise OSError(errno.EBADF, "it is closed")
                written = self.raw.write(content)
            except OSError as error:
                self.failure = error
            else:
                if written is not None:
                    return int(written)
                time.sleep(PATIENCE_SECONDS)
        return len(content)


class _Console(io.TextIOWrapper):
    """A text stream that writes signs which its encoding lacks in plain letters."""

    def write(self, text: str, /) -> int:
        super().write(writable(text, self.encoding))
        return len(text)


def _console(stream: "TextIO | None", outlet: Outlet) -> _Console:
    """Open a stream anew over an outlet, with the encoding and the haste that Python chose for it."""
    if not isinstance(stream, io.TextIOWrapper):
        return _Console(io.BufferedWriter(outlet), encoding="utf-8")
    at_once = stream.line_buffering or stream.write_through
    return _Console(io.BufferedWriter(outlet), encoding=stream.encoding, line_buffering=at_once)


def _fill_standard_descriptors() -> None:
    """Keep files that are opened later from taking the place of a closed standard stream."""
    for descriptor in STANDARD_DESCRIPTORS:
        try:
            os.fstat(descriptor)
        except OSError:
            os.open(os.devnull, os.O_RDWR)


def _reader_has_gone(failure: OSError) -> bool:
    """Tell whether a pipe was left, as after ``| head``; Windows calls it an invalid argument."""
    return isinstance(failure, BrokenPipeError) or (sys.platform == "win32" and failure.errno == errno.EINVAL)
