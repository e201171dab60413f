"""The command ``foldmath``: takes words from the shell, gives pages, traces and verdicts.

Only this room prints, and only here errors become one message and an exit code.
"""

import sys

from foldmath.cli.arguments import COMMANDS, FIRST_STEPS, parser, refuse_unknown
from foldmath.cli.terminal.speaking import spoken, tell_error
from foldmath.phrases import phrase

INTERRUPTED = 130
"""The usual exit code after Ctrl-C: 128 and the signal's number."""


def main(words: list[str] | None = None) -> int:
    """Run one command.

    Returns:
        0 if all went well; 1 if something the user can mend was refused, or a claim is false; 2 if the
        command, or a claim in it, could not be read; 74 if the machine failed it.
    """
    words = sys.argv[1:] if words is None else words
    if words and not words[0].startswith("-") and words[0] not in COMMANDS:
        refuse_unknown(words[0])
    arguments = parser(words).parse_args(words)
    if arguments.command is None:
        print(spoken(FIRST_STEPS))
        return 0
    from foldmath.errors import FoldmathError, SurroundingsFailed

    try:
        code: int = arguments.door(arguments)
    except FoldmathError as error:
        return tell_error(error)
    except (OSError, MemoryError) as error:
        # Files that the user named are refused where they are read; what is left is the machine's.
        return tell_error(SurroundingsFailed.by(error))
    except KeyboardInterrupt:
        print(spoken(phrase("stopped; files already written are complete")), file=sys.stderr)
        return INTERRUPTED
    return code
