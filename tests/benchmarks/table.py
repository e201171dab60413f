"""The figures of the benchmarks as one table: what was done, the median, and each ratio or rate beside it.

.venv/bin/pytest tests/benchmarks --benchmark-enable --benchmark-only --benchmark-json figures.json
.venv/bin/python tests/benchmarks/table.py figures.json
"""

import json
import sys
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any


def rows(told: Mapping[str, Any]) -> Iterator[tuple[str, str, str]]:
    """Give what was done, the median time of it, and all that stands beside it."""
    for benchmark in told["benchmarks"]:
        done = benchmark["name"].removeprefix("test_").replace("_", " ")
        beside = "; ".join(f"{name}: {value}" for name, value in benchmark["extra_info"].items())
        yield done, f"{benchmark['stats']['median'] * 1000:.1f} ms", beside


def table(told: Mapping[str, Any]) -> str:
    """Lay the figures out in Markdown."""
    lines = ["| what | median | beside it |", "|---|---|---|"]
    return "\n".join([*lines, *(f"| {' | '.join(row)} |" for row in rows(told))])


if __name__ == "__main__":
    print(table(json.loads(Path(sys.argv[1]).read_text(encoding="utf-8"))))
