"""`baywright`, or `python -m baywright`: opens the window, or does one job without it."""

import signal
import sys
from collections.abc import Sequence

from baywright.bootstrap import demo_file, open_window


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs the program; returns its exit code."""
    given = list(sys.argv[1:] if arguments is None else arguments)
    # Loading takes a second or so; Ctrl-C then ends the process at once, not with a library's half-loaded complaint.
    on_interrupt = signal.getsignal(signal.SIGINT)
    if on_interrupt is signal.default_int_handler:
        signal.signal(signal.SIGINT, signal.SIG_DFL)
    from baywright.cli.main import Surroundings, run

    if on_interrupt is signal.default_int_handler:
        signal.signal(signal.SIGINT, signal.default_int_handler)
    return run(_in_full(given), Surroundings(open_window=open_window, demo_file=demo_file))


def _in_full(given: list[str]) -> list[str]:
    """The short forms of the start command as sub-commands: a bare file, `--demo`, `--demo --headless`."""
    if "--headless" in given:
        return ["workbook", *(argument for argument in given if argument != "--headless")]
    if given[:1] == ["--demo"] or (len(given) == 1 and given[0].endswith(".baywright")):
        return ["open", *given]
    return given


if __name__ == "__main__":
    sys.exit(main())
