"""The crew: the processes that lay out class pages, on this machine or, where it is asked for, on a cluster.

Pages are the same to the byte whoever lays them out.
"""

import gc
import os
from collections.abc import Iterator
from concurrent.futures import Executor
from contextlib import contextmanager

from foldmath.values import frozen
from foldmath.workers import Workers


@frozen
class Crew:
    """Who lays out pages.

    Args:
        executor: takes the work.
        size: how many work at once.
        knows_names: whether pupils' names may be given to it.
    """

    executor: Executor
    size: int
    knows_names: bool = True


def leave_garbage() -> None:
    """Have a process look for no garbage: what it makes for a class is kept, or gone when it is let go.

    Looking through all parts of pages that are kept, again and again, would take a third of its time.
    """
    gc.freeze()
    gc.disable()


@contextmanager
def own_crew(size: int = os.cpu_count() or 1) -> Iterator[Crew]:
    """Have processes of this machine lay out pages.

    Raises:
        SurroundingsFailed: at the end of the block, if one of them was ended from outside.
    """
    with Workers(size, leave_garbage) as workers:
        yield Crew(workers, size)
