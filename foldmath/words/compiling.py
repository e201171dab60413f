"""Compiling the catalogues while the package is built, so that a wheel and an editable install hold them."""

import sys
from pathlib import Path

from setuptools.command.build_py import build_py

ROOT = Path(__file__).parents[2]
LOCALE = Path(__file__).parent / "locale"
"""Beside this very file: while one checkout is built, another may be installed."""


class BuildWithCatalogues(build_py):
    """Compile every catalogue before the package's files are gathered."""

    def run(self) -> None:
        """Compile, then build as ever."""
        # A builder knows this file by its path alone: nothing of the package is installed yet.
        sys.path.insert(0, str(ROOT))
        from foldmath.words.catalogues import compile_catalogue

        for source in sorted(LOCALE.glob("*/LC_MESSAGES/*.po")):
            compile_catalogue(source)
        super().run()
