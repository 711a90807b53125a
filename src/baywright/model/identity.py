"""New ids that are free, short and the same on every run (no clock, no chance)."""

import re
from collections.abc import Collection, Iterator
from itertools import count


def next_id(prefix: str, taken: Collection[str]) -> str:
    """The first of `prefix-1`, `prefix-2`, … after the highest number that `taken` holds for that prefix."""
    return next(free_ids(prefix, taken))


def free_ids(prefix: str, taken: Collection[str]) -> Iterator[str]:
    """`next_id` and those after it, without end; `taken` is read once."""
    pattern = re.compile(rf"{re.escape(prefix)}-([0-9]+)")
    numbers = [int(match[1]) for match in map(pattern.fullmatch, taken) if match]
    return (f"{prefix}-{number}" for number in count(max(numbers, default=0) + 1))


def id_from_name(name: str, prefix: str, taken: Collection[str]) -> str:
    """An id that reads like `name` (“Euro 120” → `euro-120`), or a numbered one where that is taken or empty."""
    words = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")[:48]
    candidate = words if words[:1].isalpha() else f"{prefix}-{words}".strip("-")
    if candidate not in taken and candidate != prefix:
        return candidate
    return next_id(candidate, taken)
