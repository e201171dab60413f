"""Building the package: catalogues are compiled, fonts cut, and the lessons beside it are taken along."""

import sys
from pathlib import Path

from setuptools.command.build_py import build_py

ROOT = Path(__file__).parents[2]
LOCALE = Path(__file__).parent / "locale"
"""Beside this very file: while one checkout is built, another may be installed."""


LESSONS = "foldmath.lessons"
"""What the folder of lessons is as a part of the package; an editable install finds it beside the package."""


class BuildWithCatalogues(build_py):
    """Compile catalogues, cut fonts, and add the lessons, before the package's files are gathered."""

    def finalize_options(self) -> None:
        """Add the folder of lessons to the packages that were found."""
        found = self.distribution.packages or []
        if LESSONS not in found:
            self.distribution.packages = [*found, LESSONS]
            self.distribution.package_dir = {**(self.distribution.package_dir or {}), LESSONS: "lessons"}
        super().finalize_options()

    def run(self) -> None:
        """Compile and cut, then build as ever."""
        # A builder knows this file by its path alone: nothing of the package is installed yet.
        sys.path.insert(0, str(ROOT))
        from foldmath.typeface.cutting import WEIGHTS, cut_font
        from foldmath.typeface.for_screens import screen_font
        from foldmath.words.catalogues import compile_catalogue

        for source in sorted(LOCALE.glob("*/LC_MESSAGES/*.po")):
            compile_catalogue(source)
        for name in WEIGHTS:
            cut_font(name)
            screen_font(name)
        super().run()
