"""Runs the command: ``python -m foldmath``."""

import sys

from foldmath.cli.console import run

sys.exit(run())
