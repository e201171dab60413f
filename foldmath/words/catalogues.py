"""The catalogues of the languages: GNU gettext files, compiled anew where they are older than their source.

Texts in the code are American English, and are the keys; a catalogue holds what its language says for them.
"""

from functools import cache
from gettext import GNUTranslations, NullTranslations
from io import BytesIO
from pathlib import Path

from foldmath.kept_beside import keep_beside
from foldmath.words.languages import folder_of

DOMAIN = "foldmath"
"""``locale/es/LC_MESSAGES/foldmath.po`` is the Spanish catalogue; what is compiled from it lies beside it."""


@cache
def catalogue(language: str) -> NullTranslations:
    """Give what a language says instead of the texts in the code; they stay where it says nothing.

    Args:
        language: as a lesson names it, such as ``en-GB``.
    """
    folder = folder_of(language) / "LC_MESSAGES"
    source, compiled = folder / f"{DOMAIN}.po", folder / f"{DOMAIN}.mo"
    if not source.is_file():
        # A wheel may hold only what is compiled; American English needs neither.
        return _read(compiled.read_bytes()) if compiled.is_file() else NullTranslations()
    if compiled.is_file() and compiled.stat().st_mtime >= source.stat().st_mtime:
        return _read(compiled.read_bytes())
    return _read(compile_catalogue(source))


def compile_catalogue(source: Path) -> bytes:
    """Compile a catalogue and keep it beside its source, where that can be written."""
    from babel.messages.mofile import write_mo
    from babel.messages.pofile import read_po

    written = BytesIO()
    with source.open("rb") as stream:
        write_mo(written, read_po(stream))
    keep_beside(written.getvalue(), source.with_suffix(".mo"))
    return written.getvalue()


def _read(compiled: bytes) -> GNUTranslations:
    return GNUTranslations(BytesIO(compiled))
