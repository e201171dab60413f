"""What is made from a source once and kept beside it: compiled catalogues, cut fonts."""

from contextlib import suppress
from pathlib import Path


def keep_beside(made: bytes, path: Path) -> None:
    """Put a file in place whole, since another run may be reading it; where that cannot be, do nothing."""
    # Imported here, since it is seldom needed and the way in must be quick.
    from tempfile import NamedTemporaryFile

    # The folder may belong to somebody else: then what was made serves this run.
    with suppress(OSError):
        with NamedTemporaryFile(dir=path.parent, suffix=f"{path.suffix}.new", delete=False) as stream:
            stream.write(made)
        Path(stream.name).chmod(0o644)
        Path(stream.name).replace(path)
