"""A real Chromium, driven by playwright; tests say what is missing where there is none."""

import shutil
from collections.abc import Iterator
from contextlib import contextmanager

import pytest

WHOLE = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
ENGINE = shutil.which("chromium-headless-shell") or WHOLE
"""The same Chromium without the windows round it, a package of Debian's; a page takes half the time there."""

FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-sync"]
FLAGS += ["--disable-background-networking", "--disable-component-update"]


@contextmanager
def started_chromium() -> Iterator:
    """Start it, and close it at the end of the block."""
    if ENGINE is None:
        pytest.skip("no Chromium is installed")
    sync_api = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")
    with sync_api.sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=ENGINE, args=FLAGS)
        yield browser
        browser.close()


@contextmanager
def whole_beside(browser) -> Iterator:
    """Start the browser that a teacher has, windows and all, beside one that was started."""
    if WHOLE is None:
        pytest.skip("no Chromium with windows is installed")
    whole = browser.browser_type.launch(executable_path=WHOLE, args=FLAGS)
    yield whole
    whole.close()
