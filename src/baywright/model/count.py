"""Counted things in words."""


def count_words(count: int, one: str, many: str = "") -> str:
    """“1 box”, “3 boxes”: a number with the fitting word; the plural is made with s where none is given."""
    return f"{count:,} {one if count == 1 else many or one + 's'}"
