"""A real Chromium, driven by playwright; tests say what is missing where there is none."""

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from time import monotonic

import pytest

WHOLE = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
ENGINE = shutil.which("chromium-headless-shell") or WHOLE
"""The same Chromium without the windows round it, a package of Debian's; a page takes half the time there."""

FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-sync"]
FLAGS += ["--disable-background-networking", "--disable-component-update"]

PATIENCE_SECONDS = 120
"""What has not come by then never does; until then the machine may have other things to do."""


def new_windows(browser, **options):
    """Give a place for windows of their own, in which things are waited for as long as they may take."""
    context = browser.new_context(**options)
    context.set_default_timeout(1000 * PATIENCE_SECONDS)
    return context


def until(page, is_so, told=""):
    """Wait until something is so, while the page goes on.

    Its policy keeps playwright's own way of waiting for an expression out.
    """
    end = monotonic() + PATIENCE_SECONDS
    while not is_so():
        assert monotonic() < end, f"never came true: {told}"
        page.wait_for_timeout(10)


def reload_until(page, is_so, told=""):
    """Load a page again until it shows what it kept.

    A browser writes that down by itself, on a busy machine a moment after the page is loaded again.
    """

    def shown():
        page.reload()
        return is_so()

    until(page, shown, told)


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
