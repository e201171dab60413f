"""Runs the command: ``python -m foldmath``."""

import sys

from foldmath.cli import main

sys.exit(main())
