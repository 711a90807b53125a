"""The little language in which formulas are declared, and its three readings: a value, words, a spreadsheet formula.

An expression is written like `ceil(need_height / pitch)`: names, numbers, + − × ÷, comparisons, and the functions
`ceil`, `floor`, `max`, `min`, `choose(condition, then, otherwise)`, `longest_up_to(limit, family)` and `total(family)`.
Law: all three readings come from the one parsed tree, so they cannot drift apart.

`ceil` and `floor` forgive 1e-9, so that noise in the last binary digit never costs a whole hole row.
"""

import ast
import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cached_property

TOLERANCE = 1e-9
_TOLERANCE_TEXT = "0.000000001"

_OPERATORS: dict[type[ast.operator], tuple[str, str, int, Callable[[float, float], float]]] = {
    ast.Add: ("+", "+", 1, lambda a, b: a + b),
    ast.Sub: ("−", "-", 1, lambda a, b: a - b),
    ast.Mult: ("×", "*", 2, lambda a, b: a * b),
    ast.Div: ("÷", "/", 2, lambda a, b: a / b),
}
_COMPARISONS: dict[type[ast.cmpop], tuple[str, Callable[[float, float], bool]]] = {
    ast.Lt: ("<", lambda a, b: a < b),
    ast.LtE: ("<=", lambda a, b: a <= b),
    ast.Gt: (">", lambda a, b: a > b),
    ast.GtE: (">=", lambda a, b: a >= b),
    ast.Eq: ("=", lambda a, b: a == b),
}


def round_up(value: float) -> float:
    """The least whole number that is not under `value`, forgiving 1e-9."""
    return float(math.ceil(value - TOLERANCE))


def round_down(value: float) -> float:
    """The greatest whole number that is not over `value`, forgiving 1e-9."""
    return float(math.floor(value + TOLERANCE))


@dataclass(frozen=True)
class Scope:
    """What the names of an expression mean at one place: values, words and spreadsheet names.

    `families` holds the values of each list input, `family_cells` the spreadsheet names of its members.
    """

    values: Mapping[str, float]
    families: Mapping[str, tuple[float, ...]]
    word: Callable[[str], str]
    """Name → its label with its value, e.g. “pitch 32”."""
    number: Callable[[float], str]
    cell: Callable[[str], str]
    family_cells: Callable[[str], tuple[str, ...]]


class Expression:
    """One parsed expression. ValueError where the text uses anything outside the little language."""

    def __init__(self, text: str) -> None:
        self.text = text
        self._tree = ast.parse(text, mode="eval").body
        self.names  # noqa: B018  # reads the whole tree once, so that a bad declaration fails when it is made

    @cached_property
    def names(self) -> tuple[str, ...]:
        """The names that the expression reads, in reading order, each once."""
        found: dict[str, int] = {}
        functions = set(_FUNCTIONS)
        for node in ast.walk(self._tree):
            if isinstance(node, ast.Name):
                if node.id not in functions:
                    found[node.id] = min(node.col_offset, found.get(node.id, node.col_offset))
            elif not isinstance(node, _ALLOWED):
                raise ValueError(f"{type(node).__name__} is not part of the formula language: {self.text}")
        return tuple(sorted(found, key=found.__getitem__))

    def evaluate(self, scope: Scope) -> float:
        """The value; KeyError where a name has none, ZeroDivisionError as in arithmetic."""
        return _evaluate(self._tree, scope)

    def words(self, scope: Scope) -> str:
        """The expression with every name as label and value; of a choice only the branch that was taken."""
        return _words(self._tree, scope, 0)

    def spreadsheet(self, scope: Scope) -> str:
        """The formula text, without the leading `=`, over the cell names that `scope` gives."""
        return _spreadsheet(self._tree, scope, 0)


_ALLOWED = (
    ast.BinOp, ast.UnaryOp, ast.USub, ast.Compare, ast.Call, ast.Constant, ast.Load,
    *_OPERATORS, *_COMPARISONS,
)  # fmt: skip


def _evaluate(node: ast.expr, scope: Scope) -> float:
    match node:
        case ast.Constant(value=int() | float() as number):
            return float(number)
        case ast.Name(id=name):
            return scope.values[name]
        case ast.UnaryOp(operand=operand):
            return -_evaluate(operand, scope)
        case ast.BinOp(left=left, op=operator, right=right):
            return _OPERATORS[type(operator)][3](_evaluate(left, scope), _evaluate(right, scope))
        case ast.Compare(left=left, ops=[comparison], comparators=[right]):
            return float(_COMPARISONS[type(comparison)][1](_evaluate(left, scope), _evaluate(right, scope)))
        case ast.Call(func=ast.Name(id=name), args=arguments):
            return _FUNCTIONS[name][0](arguments, scope)
    raise ValueError(f"Not part of the formula language: {ast.unparse(node)}")


def _words(node: ast.expr, scope: Scope, outer: int) -> str:
    match node:
        case ast.Constant(value=int() | float() as number):
            return f"{number:g}"
        case ast.Name(id=name):
            return scope.word(name)
        case ast.UnaryOp(operand=operand):
            return f"−{_words(operand, scope, 3)}"
        case ast.BinOp(left=left, op=operator, right=right):
            sign, _, strength, _ = _OPERATORS[type(operator)]
            tight = strength + isinstance(operator, ast.Sub | ast.Div)
            text = f"{_words(left, scope, strength)} {sign} {_words(right, scope, tight)}"
            return f"({text})" if strength < outer else text
        case ast.Compare(left=left, ops=[comparison], comparators=[right]):
            return f"{_words(left, scope, 0)} {_COMPARISONS[type(comparison)][0]} {_words(right, scope, 0)}"
        case ast.Call(func=ast.Name(id=name), args=arguments):
            return _FUNCTIONS[name][1](arguments, scope, outer)
    raise ValueError(f"Not part of the formula language: {ast.unparse(node)}")


def _spreadsheet(node: ast.expr, scope: Scope, outer: int) -> str:
    match node:
        case ast.Constant(value=int() | float() as number):
            return repr(number)
        case ast.Name(id=name):
            return scope.cell(name)
        case ast.UnaryOp(operand=operand):
            return f"-{_spreadsheet(operand, scope, 3)}"
        case ast.BinOp(left=left, op=operator, right=right):
            _, sign, strength, _ = _OPERATORS[type(operator)]
            tight = strength + isinstance(operator, ast.Sub | ast.Div)
            text = f"{_spreadsheet(left, scope, strength)}{sign}{_spreadsheet(right, scope, tight)}"
            return f"({text})" if strength < outer else text
        case ast.Compare(left=left, ops=[comparison], comparators=[right]):
            sign = _COMPARISONS[type(comparison)][0]
            return f"{_spreadsheet(left, scope, 1)}{sign}{_spreadsheet(right, scope, 1)}"
        case ast.Call(func=ast.Name(id=name), args=arguments):
            return _FUNCTIONS[name][2](arguments, scope)
    raise ValueError(f"Not part of the formula language: {ast.unparse(node)}")


def _taken(arguments: list[ast.expr], scope: Scope) -> ast.expr:
    condition, then, otherwise = arguments
    return then if _evaluate(condition, scope) else otherwise


def _family(node: ast.expr) -> str:
    if not isinstance(node, ast.Name):
        raise ValueError("longest_up_to and total take the name of a list of values.")
    return node.id


def _longest(arguments: list[ast.expr], scope: Scope) -> float:
    limit = _evaluate(arguments[0], scope) + TOLERANCE
    return max((length for length in scope.families[_family(arguments[1])] if length <= limit), default=0.0)


def _rounded_words(direction: str, arguments: list[ast.expr], scope: Scope) -> str:
    inner = _words(arguments[0], scope, 0)
    return f"round {direction} ({inner} = {_unrounded(_evaluate(arguments[0], scope))})"


def _unrounded(value: float) -> str:
    """Four digits, or as many more as it takes to tell the value from the whole number beside it."""
    is_whole = abs(value - round(value)) <= TOLERANCE
    shown = (f"{value:.{digits}g}" for digits in (4, 6, 9, 12))
    return next((text for text in shown if float(text).is_integer() == is_whole), f"{value:.4g}")


def _greater_words(arguments: list[ast.expr], scope: Scope, outer: int) -> str:
    """“x, at least 0” where one side is a bare number, which mostly only guards against a negative length."""
    first, *rest = arguments
    if isinstance(first, ast.Constant) and len(rest) == 1:
        text = f"{_words(rest[0], scope, 0)}, at least {_words(first, scope, 0)}"
        return f"({text})" if outer else text
    return f"the greater of ({_joined(arguments, lambda x: _words(x, scope, 0), ') and (')})"


def _longest_words(arguments: list[ast.expr], scope: Scope) -> str:
    lengths = ", ".join(scope.number(length) for length in scope.families[_family(arguments[1])])
    limit = scope.number(_evaluate(arguments[0], scope))
    return f"longest of {lengths} that is at most {_words(arguments[0], scope, 0)} ({limit})"


def _longest_spreadsheet(arguments: list[ast.expr], scope: Scope) -> str:
    limit = _spreadsheet(arguments[0], scope, 1)
    choices = [f"IF({cell}<={limit}+{_TOLERANCE_TEXT},{cell},0)" for cell in scope.family_cells(_family(arguments[1]))]
    return f"MAX(0,{','.join(choices)})"


def _joined(arguments: list[ast.expr], read: Callable[[ast.expr], str], separator: str) -> str:
    return separator.join(read(argument) for argument in arguments)


_Reading = tuple[
    Callable[[list[ast.expr], Scope], float],
    Callable[[list[ast.expr], Scope, int], str],
    Callable[[list[ast.expr], Scope], str],
]

_FUNCTIONS: dict[str, _Reading] = {
    "ceil": (
        lambda a, s: round_up(_evaluate(a[0], s)),
        lambda a, s, _: _rounded_words("up", a, s),
        lambda a, s: f"(-INT(-({_spreadsheet(a[0], s, 1)}-{_TOLERANCE_TEXT})))",
    ),
    "floor": (
        lambda a, s: round_down(_evaluate(a[0], s)),
        lambda a, s, _: _rounded_words("down", a, s),
        lambda a, s: f"INT({_spreadsheet(a[0], s, 1)}+{_TOLERANCE_TEXT})",
    ),
    "max": (
        lambda a, s: max(_evaluate(x, s) for x in a),
        _greater_words,
        lambda a, s: f"MAX({_joined(a, lambda x: _spreadsheet(x, s, 0), ',')})",
    ),
    "min": (
        lambda a, s: min(_evaluate(x, s) for x in a),
        lambda a, s, _: f"the smaller of ({_joined(a, lambda x: _words(x, s, 0), ') and (')})",
        lambda a, s: f"MIN({_joined(a, lambda x: _spreadsheet(x, s, 0), ',')})",
    ),
    "choose": (
        lambda a, s: _evaluate(_taken(a, s), s),
        lambda a, s, outer: _words(_taken(a, s), s, outer),
        lambda a, s: f"IF({_joined(a, lambda x: _spreadsheet(x, s, 0), ',')})",
    ),
    "total": (
        lambda a, s: sum(s.families[_family(a[0])]),
        lambda a, s, _: " + ".join(s.number(value) for value in s.families[_family(a[0])]) or "0",
        lambda a, s: f"({'+'.join(s.family_cells(_family(a[0]))) or '0'})",
    ),
    "longest_up_to": (_longest, lambda a, s, _: _longest_words(a, s), _longest_spreadsheet),
}
