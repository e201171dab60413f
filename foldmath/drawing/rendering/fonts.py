"""The font files that ship with matplotlib, found without importing it."""

from importlib.util import find_spec
from pathlib import Path


def font_file(name: str) -> Path:
    """Give the path of a font, such as ``DejaVuSans``.

    Raises:
        FileNotFoundError: matplotlib is not installed, or has no such font.
    """
    spec = find_spec("matplotlib")
    if spec is None or spec.origin is None:
        raise FileNotFoundError("matplotlib is not installed")
    path = Path(spec.origin).parent / "mpl-data" / "fonts" / "ttf" / f"{name}.ttf"
    if not path.is_file():
        raise FileNotFoundError(path)
    return path
