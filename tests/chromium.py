"""A real Chromium, driven by playwright; tests say what is missing where there is none."""

import shutil
from collections.abc import Iterator
from contextlib import contextmanager

import pytest

CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-sync"]
FLAGS += ["--disable-background-networking", "--disable-component-update"]


@contextmanager
def started_chromium() -> Iterator:
    """Start it, and close it at the end of the block."""
    if CHROMIUM is None:
        pytest.skip("no Chromium is installed")
    sync_api = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")
    with sync_api.sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        yield browser
        browser.close()
