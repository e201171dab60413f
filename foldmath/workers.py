"""Processes that work beside this one, and end with it however it ends."""

import os
import signal
import threading
from collections.abc import Callable, Iterator
from concurrent.futures import Executor, Future, ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager
from functools import partial
from multiprocessing import Pipe, parent_process
from multiprocessing.connection import Connection, wait
from types import TracebackType
from typing import ParamSpec, Self, TypeVar

from foldmath.errors import SurroundingsFailed
from foldmath.phrases import phrase

Given = ParamSpec("Given")
Result = TypeVar("Result")

ENDINGS = tuple(
    getattr(signal, name) for name in ("SIGINT", "SIGTERM", "SIGHUP", "SIGBREAK") if hasattr(signal, name)
)
"""The signals that ask a program to end."""


HANDING_OVER_SECONDS = 2.0
"""A process that a signal asks to end while it hands a result over may take so long for it: the largest, all
pages of a class, take a tenth. Nobody may be there to take it."""

LOOKING_SECONDS = 0.2
"""How often a process that hands a result over looks whether its parent still takes it."""

_NOT_AT_WORK = threading.Lock()
"""Held in a worker process by its main thread, but while that works: only then may it be ended at once."""


def _as_it_is() -> None:
    """Leave a process as it is begun."""


class Workers(Executor):
    """Processes that do what they are given. Use them in a ``with`` block.

    Where the block is left by an error or a signal, they are ended at once, and not when they are done.
    Where one of them was ended from outside, what they were doing is lost, and others do what comes next.

    Args:
        processes: how many.
        settle: is called in each of them first.

    Raises:
        SurroundingsFailed: at the end of the block, if one of them was ended from outside.
    """

    def __init__(self, processes: int, settle: Callable[[], None] = _as_it_is) -> None:
        self._heard, self._told = Pipe(duplex=False)
        self._new = partial(
            ProcessPoolExecutor, processes, initializer=_begin, initargs=(self._heard, settle)
        )
        self._pool = self._new()
        self._turn = threading.Lock()

    def __enter__(self) -> Self:
        _let_begin(self._pool)
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if kind is not None:
            self._told.send_bytes(b"end")
        self._pool.shutdown(wait=True, cancel_futures=True)
        self._heard.close()
        self._told.close()
        if isinstance(error, BrokenProcessPool):
            raise ended_from_outside() from error

    def submit(
        self, work: Callable[Given, Result], /, *given: Given.args, **named: Given.kwargs
    ) -> "Future[Result]":
        """Have something done."""
        pool = self._pool
        try:
            return pool.submit(_done, work, *given, **named)
        except BrokenProcessPool:
            return self._in_place_of(pool).submit(_done, work, *given, **named)

    def _in_place_of(self, broken: ProcessPoolExecutor) -> ProcessPoolExecutor:
        """Give other processes; threads that miss the same ones get the same others."""
        with self._turn:
            if self._pool is broken:
                self._pool = self._new()
                _let_begin(self._pool)
            return self._pool


def ended_from_outside() -> SurroundingsFailed:
    """Say that a process was ended, as a system short of memory does it."""
    return SurroundingsFailed(
        phrase("a process that helps to make the pages was ended from outside"),
        phrase("again, with other programs closed if there is little memory"),
    )


def _let_begin(pool: ProcessPoolExecutor) -> None:
    with _no_endings():
        # Where processes are forked, all of them are with the first thing that they are given.
        pool.submit(os.getpid)


def _done(work: Callable[Given, Result], /, *given: Given.args, **named: Given.kwargs) -> Result:
    """Work, in a worker process; whatever is asked to end it meanwhile need not wait for the result."""
    _NOT_AT_WORK.release()
    try:
        return work(*given, **named)
    finally:
        _NOT_AT_WORK.acquire()


@contextmanager
def _no_endings() -> Iterator[None]:
    """Let no signal to end reach this thread, nor processes begun meanwhile until they are ready for it."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, ENDINGS)
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)


def _begin(heard: "Connection", settle: Callable[[], None]) -> None:
    """Begin to be a process that works."""
    _end_in_time(heard)
    settle()


def _end_in_time(heard: "Connection") -> None:
    """Let this process end when it is told to, or when its parent has ended.

    A terminal sends Ctrl-C, and that it is closed, to all processes at once: the parent answers for them.
    """
    _NOT_AT_WORK.acquire()
    for ending in ENDINGS:
        signal.signal(ending, _end_soon if ending == signal.SIGTERM else signal.SIG_IGN)
    if hasattr(signal, "pthread_sigmask"):
        signal.pthread_sigmask(signal.SIG_UNBLOCK, ENDINGS)
    threading.Thread(target=_end_then, args=(heard,), daemon=True).start()


def _end_then(heard: "Connection") -> None:
    """End with the parent; or, once that tells to, at once if this process works, but never in a result.

    A parent takes results to their end, however long they take, and would wait for the rest of a part.
    """
    parent = parent_process()
    ready = wait([heard] if parent is None else [heard, parent.sentinel])
    while heard in ready and not _NOT_AT_WORK.acquire(timeout=LOOKING_SECONDS):
        if parent is not None and not parent.is_alive():
            break
    os._exit(0)


def _end_soon(*_: object) -> None:
    threading.Thread(target=_end_once_handed_over, daemon=True).start()


def _end_once_handed_over() -> None:
    """End this process at once if it works, and if not, once a result that it hands over may be through."""
    _NOT_AT_WORK.acquire(timeout=HANDING_OVER_SECONDS)
    os._exit(0)
