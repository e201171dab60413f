"""Serving the desk: takes a folder and a port, and answers the browser until it is ended."""

import gc
import logging
import socket
import sys
import threading
import webbrowser
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from waitress import wasyncore
from waitress.server import create_server

from foldmath.desk.app import desk_app
from foldmath.desk.shelf.shelf import Shelf
from foldmath.desk.visits.desk import LOOPBACK, Desk
from foldmath.desk.visits.guards import MOST_BYTES
from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.errors import FoldmathError
from foldmath.phrases import phrase

THREADS = 4
"""Two that compute, as many as the usual cores, and two that answer short questions meanwhile."""

MOST_CONNECTIONS = 100
"""A browser opens six for a page."""

PATIENCE_SECONDS = 20
"""A connection that sends nothing for so long is shut; a page of ours sends all at once."""


LOOKING_SECONDS = 0.5
"""How often it is looked whether the desk was closed, and all answered; a signal ends the waiting at once."""

GOOD_BYE_SECONDS = 5
"""What is being answered when the desk is closed has so long, and so long to be taken by the browser: a set
of pages may take minutes."""


class PortTaken(FoldmathError):
    """Another program listens on the port, or this user may not."""


def serve(folder: Path, port: int, language: str, tell: Callable[[str], None], *, open_browser: bool) -> None:
    """Serve the desk until Ctrl-C, or until its button ends it.

    Args:
        folder: of the teacher's lessons.
        port: to listen on, on this machine alone; 0 for any that is free.
        language: of the desk's words, where the browser asks for none.
        tell: is given the address once the desk answers.
        open_browser: whether a browser is opened on it.

    Raises:
        PortTaken: the port cannot be listened on.
    """
    listening = _listening(port)
    ended = threading.Event()
    # It comes first, since processes are best begun before there are threads.
    with PictureProcess() as pictures:
        desk = Desk(
            shelf=Shelf(folder.resolve()),
            port=listening.getsockname()[1],
            language=language,
            pictures=pictures,
        )
        with answering(desk, listening, ended.set):
            # What is loaded by now stays, so no act has to wait until all of it is looked through again.
            gc.freeze()
            tell(desk.address)
            if open_browser:
                webbrowser.open(desk.address)
            while not ended.wait(LOOKING_SECONDS):
                pass


@contextmanager
def answering(desk: Desk, listening: socket.socket, end: Callable[[], None]) -> Iterator[None]:
    """Answer the browser from threads beside this one until the block ends, and what was asked by then.

    Args:
        desk: that is asked.
        listening: the port, bound to the loopback address; it is closed at the end.
        end: what the desk's own button calls.
    """
    # Waitress warns where a browser asks for many pictures at once, which is how a page of them loads,
    # and where a desk is closed while a class's pages are laid out.
    logging.getLogger("waitress").setLevel(logging.ERROR)
    connections: dict[int, Any] = {}
    server = create_server(
        desk_app(desk, end),
        map=connections,
        sockets=[listening],
        threads=THREADS,
        connection_limit=MOST_CONNECTIONS,
        channel_timeout=PATIENCE_SECONDS,
        max_request_body_size=MOST_BYTES,
        ident=None,
    )
    answered = threading.Event()
    carrying = threading.Thread(target=_carry, args=(connections, answered), daemon=True)
    carrying.start()
    try:
        yield
    finally:
        # What is being answered is answered to its end, the page that says good-bye among it.
        server.task_dispatcher.shutdown(timeout=GOOD_BYE_SECONDS)
        answered.set()
        carrying.join(GOOD_BYE_SECONDS)


def _carry(connections: dict[int, Any], answered: threading.Event) -> None:
    """Take requests in and send answers out until all is answered and sent; then close what is open.

    One thread does all of it, since it must not wait for what another one closes.
    """
    while not answered.is_set() or any(each.writable() for each in connections.values()):
        wasyncore.loop(LOOKING_SECONDS, map=connections, count=1)
    wasyncore.close_all(connections)


def _listening(port: int) -> socket.socket:
    """Take the port, on the loopback address alone; waitress begins to listen on it."""
    taken = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    try:
        if sys.platform != "win32":
            # Else a desk that was closed a minute ago keeps its port from the next one.
            taken.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        taken.bind((LOOPBACK, port))
    except (OSError, OverflowError) as error:
        taken.close()
        why = getattr(error, "strerror", None) or str(error)
        raise PortTaken(
            phrase("port {port}: {why}", port=port, why=why.lower()),
            phrase("another number after --port, or none"),
        ) from None
    return taken
