"""Word problems: takes a story and a source of chance, gives one telling with its answer, in words that stand
in ``stories.toml``.
"""

import re
import tomllib
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from random import Random
from typing import Any

from foldmath.plane.numbers import ONE, ZERO, Exact, exact
from foldmath.statements.products import Product
from foldmath.statements.ratios import Ratio, fraction, mixed_form, whole_number
from foldmath.statements.story_numbers import MINUTES, Asks, Filling, Ranges, Worked, fillings, worked
from foldmath.statements.wrong_answers import WrongAnswer
