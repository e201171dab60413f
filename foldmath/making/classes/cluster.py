"""A cluster that lays out class pages: an existing one of Dask, which gives an executor as Python knows them.

Source: the documentation of Dask distributed, "Client.get_executor".
"""

import logging
from collections.abc import Iterator
from concurrent.futures import CancelledError
from contextlib import contextmanager
from ipaddress import ip_address
from typing import TYPE_CHECKING
from urllib.parse import SplitResult, urlsplit

from foldmath import __version__
from foldmath.errors import SurroundingsFailed, Unreadable
from foldmath.making.classes.crew import Crew
from foldmath.phrases import phrase

if TYPE_CHECKING:
    from distributed import Client

SECONDS_TO_ANSWER = 10
"""A scheduler that is there answers at once; over a slow line, within seconds."""

EXAMPLE = phrase("--cluster tls://scheduler.example:8786")


def keeps_names(address: str) -> bool:
    """Tell whether nobody on the way can read what is sent to an address: by TLS, or within this machine.

    Raises:
        Unreadable: it is no address of a scheduler.
    """
    place = _place(address)
    if place.scheme == "tls" or place.hostname == "localhost":
        return True
    try:
        return ip_address(place.hostname or "").is_loopback
    except ValueError:
        return False


@contextmanager
def cluster_crew(address: str) -> Iterator[Crew]:
    """Have the workers of a Dask cluster lay out pages.

    Args:
        address: of its scheduler, such as ``tls://scheduler.example:8786``.

    Raises:
        Unreadable: it is no address of a scheduler.
        SurroundingsFailed: the package ``distributed`` is missing, nothing answers, nobody works there, or a
            worker has another version of this program, which might make other pages; or at the end of the
            block, if the scheduler went, or one worker after the other.
    """
    _place(address)
    with _client(address) as client:
        from distributed import KilledWorker

        _require_same_version(client, address)
        try:
            yield Crew(client.get_executor(), len(client.nthreads()), keeps_names(address))
        except (CancelledError, KilledWorker) as error:
            raise SurroundingsFailed(
                phrase("{address}: the scheduler or its workers have gone", address=address),
                phrase("start them again, and give the same command: it goes on from there"),
            ) from error


def _place(address: str) -> SplitResult:
    try:
        place = urlsplit(address)
        if place.scheme in ("tcp", "tls") and place.port:
            return place
    except ValueError:
        # Brackets that are not closed, or a port that no machine has.
        pass
    message = phrase("--cluster {address}: this is no address of a scheduler", address=address)
    raise Unreadable(message, EXAMPLE)


def _client(address: str) -> "Client":
    try:
        from distributed import Client
    except ImportError:
        raise SurroundingsFailed(
            phrase("--cluster needs the package {package}", package="distributed"),
            "pip install 'foldmath[cluster]'",
        ) from None
    # It tells at length, with tracebacks, what is told in one line where it is caught.
    for room in ("distributed", "distributed.client"):
        logging.getLogger(room).setLevel(logging.CRITICAL)
    try:
        return Client(  # type: ignore[no-untyped-call]
            address, timeout=SECONDS_TO_ANSWER, set_as_default=False
        )
    except (OSError, ValueError, TypeError) as error:
        raise SurroundingsFailed(
            phrase("{address}: no scheduler answers there", address=address),
            phrase("see that it runs, and that this machine may reach it"),
        ) from error


def _require_same_version(client: "Client", address: str) -> None:
    """Make sure that somebody works there, and that all would make the same pages."""
    answers = client.run(_version, on_error="return").values()
    versions = {answer if isinstance(answer, str) else "" for answer in answers}
    if not versions:
        raise SurroundingsFailed(
            phrase("{address}: no workers are there", address=address), phrase("start some, and try again")
        )
    if versions != {__version__}:
        found = sorted(versions - {__version__})[0] or phrase("none")
        raise SurroundingsFailed(
            phrase(
                "{address}: workers have another foldmath ({found}), and this is {version}",
                address=address,
                found=found,
                version=__version__,
            ),
            phrase("install this version there"),
        )


def _version() -> str:
    """Give the version of this program on a worker; empty where there is none."""
    try:
        from foldmath import __version__ as found
    except ImportError:
        return ""
    return found
