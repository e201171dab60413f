"""The command ``foldmath``: takes words from the shell, gives pages, traces and verdicts.

Only this room prints, and only here errors become one message and an exit code.
"""

import os
import sys
from typing import TYPE_CHECKING

from foldmath.cli.arguments import FIRST_STEPS, parser
from foldmath.words.languages import terminal_language

if TYPE_CHECKING:
    from foldmath.errors import FoldmathError

INTERRUPTED = 130
"""The usual exit code after Ctrl-C: 128 and the signal's number."""


def main(words: list[str] | None = None) -> int:
    """Run one command.

    Returns:
        0 if all went well; 1 if something the user can mend was refused, or a claim is false; 2 if the
        command, or a claim in it, could not be read; 74 if the machine failed it.
    """
    arguments = parser().parse_args(words)
    if arguments.command is None:
        print(FIRST_STEPS)
        return 0
    from foldmath.errors import FoldmathError, SurroundingsFailed

    try:
        code: int = arguments.door(arguments)
    except FoldmathError as error:
        return _told(error)
    except (OSError, MemoryError) as error:
        # Files that the user named are refused where they are read; what is left is the machine's.
        return _told(SurroundingsFailed.by(error))
    except KeyboardInterrupt:
        print("stopped; files already written are whole", file=sys.stderr)
        return INTERRUPTED
    return code


def _told(error: "FoldmathError") -> int:
    """Say what is wrong, and give its exit code."""
    from foldmath.words.saying import say_error

    print(say_error(error, terminal_language(os.environ)), file=sys.stderr)
    return error.exit_code
