"""Stopping: a signal to end the program is heeded once, in a way that leaves everything whole."""

import signal
from collections.abc import Callable
from contextlib import suppress
from types import FrameType, TracebackType

NAMES = ("SIGINT", "SIGTERM", "SIGHUP")
"""Ctrl-C, the system's wish to end a program, and a terminal that was closed."""

SIGNALLED = 128
"""Shells give this and the signal's number as the exit code of a program that a signal ended."""


class AskedToEnd(KeyboardInterrupt):
    """A signal asked the program to end.

    A class of its own: where ``KeyboardInterrupt`` itself has once come out of code that was given as text,
    as dataclasses write their methods, ``python -m`` ends by SIGINT whatever exit code it is given
    (``run_eval_code_obj`` in CPython's ``Python/pythonrun.c``).
    """


class EndSignals:
    """Turns the first signal to end into ``AskedToEnd``; later ones do not disturb the clearing up.

    Use it in a ``with`` block. What the program was begun to ignore, as by ``nohup``, stays ignored.
    """

    def __init__(self) -> None:
        self.heard: int | None = None
        self._before: dict[int, Callable[[int, FrameType | None], object] | int | None] = {}

    @property
    def exit_code(self) -> int | None:
        """The exit code of a program that was asked to end; None if it was not."""
        return None if self.heard is None else SIGNALLED + self.heard

    def __enter__(self) -> "EndSignals":
        # Signals are heard by the main thread alone: any other is refused.
        with suppress(ValueError):
            for name in NAMES:
                number = getattr(signal, name, None)
                if number is not None and signal.getsignal(number) is not signal.SIG_IGN:
                    self._before[number] = signal.signal(number, self._hear)
        return self

    def _hear(self, number: int, _: FrameType | None) -> None:
        for other in self._before:
            signal.signal(other, signal.SIG_IGN)
        self.heard = number
        raise AskedToEnd

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self.heard is None:
            for number, handler in self._before.items():
                signal.signal(number, handler)
