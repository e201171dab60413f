"""What CI installs is named to the version, within the ranges that the project states."""

import re
import tomllib
from datetime import date
from pathlib import Path

import pytest
from lock import LOCK, frozen_on
from packaging.requirements import Requirement

PROJECT = tomllib.loads((Path(__file__).parents[1] / "pyproject.toml").read_text("utf-8"))["project"]
ASKED = [
    Requirement(words)
    for group in (PROJECT["dependencies"], *PROJECT["optional-dependencies"].values())
    for words in group
]


def plain(name):
    return re.sub(r"[-_.]+", "-", name).lower()


LOCKED = {
    plain(line.partition("==")[0]): line.partition("==")[2]
    for line in LOCK.read_text("utf-8").splitlines()
    if "==" in line
}


@pytest.mark.parametrize("asked", ASKED, ids=str)
def test_every_package_asked_for_is_locked_within_its_range(asked):
    assert asked.specifier.contains(LOCKED[plain(asked.name)])


def test_the_lock_says_when_it_was_frozen():
    assert frozen_on(LOCK.read_text("utf-8")) >= date(2026, 11, 29)
