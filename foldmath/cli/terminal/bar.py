"""A bar that says how much of a long command is done, how much is left, and for how long.

It is drawn where someone looks on, and nowhere else.
"""

import sys
from collections.abc import Callable
from types import TracebackType
from typing import Self

FORMAT = "{desc}: {percentage:3.0f} %|{bar}| {n_fmt}/{total_fmt}  {elapsed} < {remaining}"


class Bar:
    """Counts pupils' pages. Use it in a ``with`` block.

    Args:
        total: how many there will be.
    """

    def __init__(self, total: int) -> None:
        # Imported here, since only long commands need it.
        from tqdm import tqdm

        # Without the thread that looks after bars that stand still: processes are forked meanwhile.
        tqdm.monitor_interval = 0
        self._bar = tqdm(
            total=total, file=sys.stderr, disable=None, leave=False, bar_format=FORMAT, smoothing=0.1
        )

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._bar.close()

    def of(self, name: str) -> Callable[[int], None]:
        """Give what is told how much of a part, such as a class, is done."""
        done = 0

        def report_ready(ready: int) -> None:
            nonlocal done
            self._bar.set_description_str(name, refresh=False)
            self._bar.update(ready - done)
            done = ready

        return report_ready

    def pass_over(self, count: int) -> None:
        """Count what will not be done."""
        self._bar.update(count)

    def tell(self, telling: Callable[[], None]) -> None:
        """Have something said above the bar."""
        with self._bar.external_write_mode(file=sys.stdout):
            telling()
