"""Looks the locked packages over: for known weaknesses where pip-audit reaches its data, else by date.

.venv/bin/python tests/lock.py
"""

import re
import subprocess
import sys
from datetime import date
from pathlib import Path

LOCK = Path(__file__).parent / "constraints.txt"
MOST_PASSED_OVER = 5
"""Packages of which pip-audit may know nothing, such as ones that are quite new."""

MOST_DAYS = 180
"""A lock that is older was not looked over for half a year of weaknesses found (this house's rule)."""


def frozen_on(text: str) -> date:
    """Give the day that the first line names."""
    return date.fromisoformat(re.search(r"Frozen on (\d{4}-\d\d-\d\d)\.", text)[1])


def verdict(code: int, told: str) -> int | None:
    """Give the exit code that pip-audit's answer asks for; None where it could look nothing up.

    Where a mirror has packages and not what is known of them, it passes all of them over and says that all is
    well.
    """
    passed_over = told.count("could not be audited")
    if passed_over > MOST_PASSED_OVER:
        return None
    if code == 0 or ("vulnerabilit" in told and "Found" in told):
        return code
    return None


def main() -> int:
    """Print what was found; give 0 if nothing speaks against the lock."""
    command = [sys.executable, "-m", "pip_audit", "--no-deps", "--disable-pip", "-r", str(LOCK)]
    audited = subprocess.run(command, capture_output=True, text=True, check=False)
    found = verdict(audited.returncode, audited.stdout + audited.stderr)
    if found is not None:
        print(audited.stdout.strip() or "pip-audit knows no weakness of the locked packages")
        return found
    days = (date.today() - frozen_on(LOCK.read_text("utf-8"))).days
    print(f"pip-audit cannot tell; the lock is {days} days old, and {MOST_DAYS} at most is well")
    return int(days > MOST_DAYS)


if __name__ == "__main__":
    sys.exit(main())
