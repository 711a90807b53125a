"""The formula language: three readings of one tree."""

import pytest

from baywright.workings.expression import Expression, Scope

VALUES = {"need": 157.0, "pitch": 32.0, "own": 0.0, "a": 3.0, "b": 2.0}


def scope(**values: float) -> Scope:
    all_values = {**VALUES, **values}
    return Scope(
        values=all_values,
        families={"length": (250.0, 300.0, 350.0)},
        word=lambda name: f"{name} {all_values[name]:g}",
        number=lambda value: f"{value:g}",
        cell=lambda name: f"c_{name}",
        family_cells=lambda name: tuple(f"c_{name}_{i}" for i in (1, 2, 3)),
    )


@pytest.mark.parametrize(
    ("text", "value", "words", "cells"),
    [
        ("a + 2 * b", 7, "a 3 + 2 × b 2", "c_a+2*c_b"),
        ("(a + 2) * b", 10, "(a 3 + 2) × b 2", "(c_a+2)*c_b"),
        ("a - (b - 1)", 2, "a 3 − (b 2 − 1)", "c_a-(c_b-1)"),
        ("a / (b * 4)", 0.375, "a 3 ÷ (b 2 × 4)", "c_a/(c_b*4)"),
        ("max(0, a - b)", 1, "a 3 − b 2, at least 0", "MAX(0,c_a-c_b)"),
        ("2 * max(0, a - b)", 2, "2 × (a 3 − b 2, at least 0)", "2*MAX(0,c_a-c_b)"),
        ("max(a, b + 2)", 4, "the greater of (a 3) and (b 2 + 2)", "MAX(c_a,c_b+2)"),
        ("-(a + b)", -5, "−(a 3 + b 2)", "-(c_a+c_b)"),
        ("choose(own, a + b, a)", 3, "a 3", "IF(c_own,c_a+c_b,c_a)"),
        ("2 * choose(own == 0, a + b, a)", 10, "2 × (a 3 + b 2)", "2*IF(c_own=0,c_a+c_b,c_a)"),
    ],
)
def test_one_tree_gives_value_words_and_cells(text: str, value: float, words: str, cells: str) -> None:
    expression = Expression(text)
    assert expression.evaluate(scope()) == value
    assert expression.words(scope()) == words
    assert expression.spreadsheet(scope()) == cells


def test_rounding_up_shows_what_was_rounded() -> None:
    expression = Expression("ceil(need / pitch)")
    assert expression.evaluate(scope()) == 5
    assert expression.words(scope()) == "round up (need 157 ÷ pitch 32 = 4.906)"


def test_what_is_rounded_never_looks_whole_where_it_is_not() -> None:
    words = Expression("ceil(need / pitch)").words
    assert words(scope(need=160.001)) == "round up (need 160.001 ÷ pitch 32 = 5.00003)"
    assert words(scope(need=160.0)).endswith("= 5)")
    assert words(scope(need=160.0 + 1e-10)).endswith("= 5)")


@pytest.mark.parametrize(("need", "rows"), [(160.0, 5), (160.0 + 1e-10, 5), (160.001, 6), (-1.0, 0), (0.0, 0)])
def test_noise_in_the_last_digit_never_costs_a_row(need: float, rows: int) -> None:
    assert Expression("ceil(need / pitch)").evaluate(scope(need=need)) == rows


@pytest.mark.parametrize(("limit", "longest"), [(349.0, 300), (350.0, 350), (249.0, 0), (1000.0, 350)])
def test_longest_up_to(limit: float, longest: float) -> None:
    assert Expression("longest_up_to(a, length)").evaluate(scope(a=limit)) == longest


def test_names_come_in_reading_order_without_the_functions() -> None:
    assert Expression("max(b, choose(own, a, ceil(need / pitch)))").names == ("b", "own", "a", "need", "pitch")


@pytest.mark.parametrize("text", ["a ** b", "a if own else b", "[a]", "a.b", "'text'", "lambda: 1"])
def test_anything_else_is_refused_when_it_is_declared(text: str) -> None:
    with pytest.raises(ValueError, match="formula language"):
        Expression(text).evaluate(scope())


def test_a_missing_name_is_a_key_error() -> None:
    with pytest.raises(KeyError):
        Expression("unknown + 1").evaluate(scope())
