"""Compiling the catalogues while the package is built, so that a wheel and an editable install hold them."""

from pathlib import Path

from setuptools.command.build_py import build_py

from foldmath.words.catalogues import compile_catalogue

# Beside this very file: while one checkout is built, another may be installed.
LOCALE = Path(__file__).parent / "locale"


class BuildWithCatalogues(build_py):
    """Compile every catalogue before the package's files are gathered."""

    def run(self) -> None:
        """Compile, then build as ever."""
        for source in sorted(LOCALE.glob("*/LC_MESSAGES/*.po")):
            compile_catalogue(source)
        super().run()
