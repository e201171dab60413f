"""Looks the locked packages over: for known weaknesses where pip-audit reaches its data, else by date.

.venv/bin/python tests/lock.py
"""

import re
import subprocess
import sys
from datetime import date
from pathlib import Path

LOCK = Path(__file__).parent / "constraints.txt"
MOST_DAYS = 180
"""A lock that is older was not looked over for half a year of weaknesses found (this house's rule)."""


def frozen_on(text: str) -> date:
    """Give the day that the first line names."""
    return date.fromisoformat(re.search(r"Frozen on (\d{4}-\d\d-\d\d)\.", text)[1])


def main() -> int:
    """Print what was found; give 0 if nothing speaks against the lock."""
    command = [sys.executable, "-m", "pip_audit", "--no-deps", "--disable-pip", "-r", str(LOCK)]
    audited = subprocess.run(command, capture_output=True, text=True, check=False)
    told = audited.stdout + audited.stderr
    if audited.returncode == 0 or ("vulnerabilit" in told and "Found" in told):
        print(told.strip())
        return audited.returncode
    days = (date.today() - frozen_on(LOCK.read_text("utf-8"))).days
    print(f"pip-audit cannot tell; the lock is {days} days old, and {MOST_DAYS} at most is well")
    return int(days > MOST_DAYS)


if __name__ == "__main__":
    sys.exit(main())
