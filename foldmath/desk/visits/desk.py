"""One run of the desk: its folder, its address, and the secrets that let the teacher in and others not."""

import secrets
from dataclasses import field
from pathlib import Path

from foldmath.desk.shelf.shelf import Shelf
from foldmath.drawing.rendering.picture_process import PictureProcess
from foldmath.values import frozen

LOOPBACK = "127.0.0.1"
"""Nothing but this machine reaches it (RFC 5735, section 3)."""

SECRET_BYTES = 32


def _secret() -> str:
    return secrets.token_urlsafe(SECRET_BYTES)


@frozen(kw_only=True)
class Desk:
    """One run of the desk.

    Args:
        shelf: the teacher's folder.
        port: that it listens on.
        language: of its words, where the browser asks for none.
        pictures: draws what is printed, in a process of its own.
        entry: the secret in the first address.
        session: the secret in the cookie that the first address gives.
        form: the secret that every change brings along.
    """

    shelf: Shelf
    port: int
    language: str
    pictures: PictureProcess
    entry: str = field(default_factory=_secret, repr=False)
    session: str = field(default_factory=_secret, repr=False)
    form: str = field(default_factory=_secret, repr=False)

    @property
    def cookie(self) -> str:
        """The name of the cookie: cookies know no ports, so two desks need two names (RFC 6265, 8.5)."""
        return f"foldmath-{self.port}"

    @property
    def hosts(self) -> frozenset[str]:
        """The names under which it answers."""
        return frozenset({f"{LOOPBACK}:{self.port}", f"localhost:{self.port}"})

    @property
    def address(self) -> str:
        """The first address to open."""
        return f"http://{LOOPBACK}:{self.port}/open/{self.entry}"

    @property
    def folder(self) -> Path:
        """Where the teacher's lessons lie."""
        return self.shelf.folder
