"""Small faults put into a source on purpose: one operator, comparison or number changed, found in its syntax tree.

Left alone are what no test can mind or none should: words, annotations, decorators, assertions, numbers inside
f-strings (Python 3.11 does not say where they stand), and slacks for rounding. A comparison is turned round; whether
its limit belongs to it is tried only beside a whole number, since no design stands on a limit to the last digit.
"""

import ast
from dataclasses import dataclass
from itertools import pairwise

ROUNDING = 1e-5  # numbers below are slacks
OPERATORS = {
    ast.Add: ("+", "-"),
    ast.Sub: ("-", "+"),
    ast.Mult: ("*", "/"),
    ast.Div: ("/", "*"),
    ast.FloorDiv: ("//", "*"),
    ast.Mod: ("%", "*"),
    ast.Pow: ("**", "*"),
    ast.And: ("and", "or"),
    ast.Or: ("or", "and"),
}
TURNED = {
    ast.Lt: ("<", ">="),
    ast.LtE: ("<=", ">"),
    ast.Gt: (">", "<="),
    ast.GtE: (">=", "<"),
    ast.Eq: ("==", "!="),
    ast.NotEq: ("!=", "=="),
    ast.Is: ("is", "is not"),
    ast.IsNot: ("is not", "is"),
    ast.In: ("in", "not in"),
    ast.NotIn: ("not in", "in"),
}
EDGE = {ast.Lt: ("<", "<="), ast.LtE: ("<=", "<"), ast.Gt: (">", ">="), ast.GtE: (">=", ">")}
CALLS = {"min": "max", "max": "min", "any": "all", "all": "any", "floor": "ceil", "ceil": "floor"}


@dataclass(frozen=True)
class Mutant:
    """One change: the characters of the source from `start` to `end` become `new`."""

    path: str  # of the module, from the project's folder
    line: int
    where: str  # the function it stands in, dotted; "" at the top of the module
    names: tuple[str, ...]  # at the top of the module: what the statement defines
    start: int
    end: int
    old: str
    new: str

    def applied(self, source):
        assert source[self.start : self.end] == self.old
        return source[: self.start] + self.new + source[self.end :]

    def shown(self, source):
        """Where it is, what becomes what, and the line as it stands."""
        line = source.splitlines()[self.line - 1].strip()
        return f"{self.path}:{self.line}  {self.old} -> {self.new or 'nothing'}   in   {line}"


def mutants(path, source):
    """Every mutant of a module, in the order of its text."""
    found = []
    _Finder(path, source, found).visit(ast.parse(source))
    return sorted(found, key=lambda mutant: (mutant.start, mutant.new))


class _Finder(ast.NodeVisitor):
    def __init__(self, path, source, found):
        self.path, self.source, self.found = path, source, found
        self.lines = [0]
        for line in source.encode().splitlines(keepends=True):
            self.lines.append(self.lines[-1] + len(line))
        self.where, self.names = [], ()

    def place(self, line, column):
        """Characters before a place that ast gives in lines and bytes."""
        return len(self.source.encode()[: self.lines[line - 1] + column].decode())

    def span(self, node):
        return self.place(node.lineno, node.col_offset), self.place(node.end_lineno, node.end_col_offset)

    def add(self, line, start, end, new):
        where, old = ".".join(self.where), self.source[start:end]
        self.found.append(Mutant(self.path, line, where, self.names, start, end, old, new))

    def between(self, left, right, pair):
        """Change the sign that stands between two nodes, past brackets and comments."""
        old, new = pair
        start, end = self.span(left)[1], self.span(right)[0]
        gap = self.source[start:end]
        if "#" not in gap and gap.count(old) == 1:
            at = start + gap.index(old)
            self.add(left.end_lineno, at, at + len(old), new)

    # What is walked, and what is left alone

    def visit_FunctionDef(self, node):
        self.where.append(node.name)
        names, self.names = self.names, ()
        for part in [*node.args.defaults, *filter(None, node.args.kw_defaults), *node.body]:
            self.visit(part)
        self.names = names
        self.where.pop()

    def visit_ClassDef(self, node):
        self.where.append(node.name)
        for part in node.body:
            self.visit(part)
        self.where.pop()

    def visit_Lambda(self, node):
        for part in [*node.args.defaults, *filter(None, node.args.kw_defaults), node.body]:
            self.visit(part)

    def visit_Assign(self, node):
        if not self.where:
            self.names = tuple(
                name.id for each in node.targets for name in ast.walk(each) if isinstance(name, ast.Name)
            )
        for target in node.targets:
            self.visit(target)
        self.visit(node.value)
        if not self.where:
            self.names = ()

    def visit_AnnAssign(self, node):
        if not self.where and isinstance(node.target, ast.Name):
            self.names = (node.target.id,)
        if node.value:
            self.visit(node.value)
        if not self.where:
            self.names = ()

    def visit_JoinedStr(self, node):
        pass

    def visit_Assert(self, node):
        pass

    # What is changed

    def visit_BinOp(self, node):
        words = any(
            isinstance(side, ast.JoinedStr | ast.Constant) and _is_text(side) for side in (node.left, node.right)
        )
        if type(node.op) in OPERATORS and not words:
            self.between(node.left, node.right, OPERATORS[type(node.op)])
        self.generic_visit(node)

    def visit_BoolOp(self, node):
        for left, right in pairwise(node.values):
            self.between(left, right, OPERATORS[type(node.op)])
        self.generic_visit(node)

    def visit_Compare(self, node):
        sides = [node.left, *node.comparators]
        for left, sign, right in zip(sides, node.ops, sides[1:]):
            self.between(left, right, TURNED[type(sign)])
            if type(sign) in EDGE and any(_is_whole(side) for side in (left, right)):
                self.between(left, right, EDGE[type(sign)])
        self.generic_visit(node)

    def visit_UnaryOp(self, node):
        if isinstance(node.op, ast.Not | ast.USub):
            start = self.span(node)[0]
            self.add(node.lineno, start, start + (3 if isinstance(node.op, ast.Not) else 1), "")
        self.generic_visit(node)

    def visit_Call(self, node):
        if isinstance(node.func, ast.Name) and node.func.id in CALLS:
            self.add(node.lineno, *self.span(node.func), CALLS[node.func.id])
        self.generic_visit(node)

    def visit_Constant(self, node):
        value = node.value
        if isinstance(value, bool):
            self.add(node.lineno, *self.span(node), str(not value))
        elif isinstance(value, int):
            self.add(node.lineno, *self.span(node), str(value + 1))
        elif isinstance(value, float) and abs(value) >= ROUNDING:
            for factor in (2, 0.5):
                self.add(node.lineno, *self.span(node), repr(value * factor))


def _is_text(node):
    return isinstance(node, ast.JoinedStr) or isinstance(node.value, str)


def _is_whole(node):
    return isinstance(node, ast.Constant) and isinstance(node.value, int) and not isinstance(node.value, bool)
