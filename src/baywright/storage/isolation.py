"""Work on files that nobody vouches for, in a process of its own that can be stopped.

Laws: the process gets so much memory and so much time and is ended after it; whatever happens in it, the caller sees a
result or a `TableError`.
"""

import contextlib
import multiprocessing
import resource
import warnings
from collections.abc import Callable
from multiprocessing.connection import Connection
from typing import TypeVar

from baywright.storage.trouble import TableError

Answer = TypeVar("Answer")

MOST_SECONDS = 20.0
MOST_MEMORY_BYTES = 1_500_000_000
_END_SECONDS = 2.0


def run_apart(work: Callable[..., Answer], *arguments: object, seconds: float = MOST_SECONDS) -> Answer:
    """`work(*arguments)` in another process. `work` must be a function of a module (the process imports it).

    Raises the `TableError` that `work` raised, or one that says that it took too long or failed.
    """
    context = multiprocessing.get_context("spawn")
    receiver, sender = context.Pipe(duplex=False)
    process = context.Process(target=_work, args=(work, arguments, sender), daemon=True)
    try:
        process.start()
        sender.close()
        if not receiver.poll(seconds):
            raise TableError(f"takes more than {seconds:g} s to read and was given up; save it as CSV and try again.")
        refusal, answer = receiver.recv()
    except (EOFError, OSError):
        raise TableError("is damaged, or too large to be read.") from None
    finally:
        receiver.close()
        _end(process)
    if refusal is not None:
        raise TableError(refusal)
    return answer  # type: ignore[no-any-return]  # what comes out of a pipe has no type


def _end(process: "multiprocessing.process.BaseProcess") -> None:
    if process.pid is None:
        return
    process.join(0.2)
    if process.is_alive():
        process.kill()
        process.join(_END_SECONDS)
    with contextlib.suppress(ValueError):
        process.close()


def _work(work: Callable[..., object], arguments: tuple[object, ...], sender: Connection) -> None:
    """What the process does: limit itself, work, and send (refusal, answer)."""
    warnings.simplefilter("ignore")
    resource.setrlimit(resource.RLIMIT_AS, (MOST_MEMORY_BYTES, MOST_MEMORY_BYTES))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
    try:
        result: tuple[str | None, object] = (None, work(*arguments))
    except TableError as trouble:
        result = (str(trouble), None)
    except MemoryError:
        result = ("is too large to be read.", None)
    except Exception:
        # A damaged workbook shows as any error of the reading library; the person needs to know only that it is.
        result = ("is damaged, or not a workbook.", None)
    sender.send(result)
    sender.close()
