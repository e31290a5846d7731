"""Lists the comparisons of the checks on which no case of theirs stands exactly, or those of all rooms on which no quick test does.

    python tests/bench/limits.py [SLUG ...]
    python tests/bench/limits.py everywhere [TEST ...]

Every `<`, `<=`, `>` and `>=` of a module of `rigc/analysis/*/checks/` is counted while all cases are checked: how often the one side was less
than the other, just as much, and more. A limit that a user can meet wants three cases, under it, on it and over it; one that counts things
(`len(...) > 1`) mostly stands on its limit by itself. `everywhere` it is every comparison of `rigc/analysis/`, while the tests of whole folders
and of the analysis run that take no minutes (or those that are given); listed is what none of them stands on, but for what allows a hair.
"""

from __future__ import annotations

import ast
import importlib.abc
import importlib.machinery
import importlib.util
import sys
from collections.abc import Sequence
from pathlib import Path
from types import CodeType, ModuleType
from typing import Any, NamedTuple

HERE = Path(__file__).parent.parent
ROOT = HERE.parent
sys.path[:0] = [str(HERE), str(ROOT)]

CASES = HERE / "analysis" / "checks" / "cases"
ORDERED = (ast.Lt, ast.LtE, ast.Gt, ast.GtE)
HAIR = 1e-5  # what checks allow for binary arithmetic is no other figure


class Compared(NamedTuple):
    """Module, line and text of a comparison; how often its left side was less, as much, and more."""

    module: str
    line: int
    text: str
    seen: list[int]


EVERY: list[Compared] = []


class _Noted(ast.NodeTransformer):
    """Lets each side of a comparison pass by `_side`, which notes them."""

    def __init__(self, module: str) -> None:
        self.module = module

    def visit_Compare(self, node: ast.Compare) -> ast.AST:
        text = ast.unparse(node)
        self.generic_visit(node)
        if any(isinstance(op, ORDERED) for op in node.ops):
            EVERY.append(Compared(self.module, node.lineno, text, [0, 0, 0]))
            node.left = _side(0, node.left)
            node.comparators = [_side(at + 1, each) for at, each in enumerate(node.comparators)]
        return node


def _side(at: int, node: ast.expr) -> ast.expr:
    number = len(EVERY) - 1
    call = ast.Call(ast.Name("_rigc_side", ast.Load()), [ast.Constant(number), ast.Constant(at), node], [])
    return ast.copy_location(call, node)


class _Sides:
    """The side that was noted last, of each comparison by its number."""

    def __init__(self) -> None:
        self.last: dict[int, Any] = {}

    def __call__(self, number: int, at: int, value: Any) -> Any:
        if at:
            left, seen = self.last[number], EVERY[number].seen
            try:
                apart = float(left) - float(value)
            except (TypeError, ValueError):  # days, sets
                apart = (left > value) - (left < value)
            seen[1 if abs(apart) <= HAIR else 2 if apart > 0 else 0] += 1
        self.last[number] = value
        return value


class _Loader(importlib.machinery.SourceFileLoader):
    def get_code(self, fullname: str) -> CodeType:
        path = self.get_filename(fullname)
        tree = _Noted(fullname).visit(ast.parse(Path(path).read_text("utf-8")))
        return compile(ast.fix_missing_locations(tree), path, "exec")

    def exec_module(self, module: ModuleType) -> None:
        vars(module)["_rigc_side"] = SIDES
        super().exec_module(module)


class _Finder(importlib.abc.MetaPathFinder):
    def __init__(self, everywhere: bool) -> None:
        self.everywhere = everywhere

    def find_spec(self, fullname: str, path: Sequence[str] | None, target: ModuleType | None = None) -> Any:
        found = importlib.machinery.PathFinder.find_spec(fullname, path, target)
        if (
            found is None
            or found.origin is None
            or not fullname.startswith("rigc.analysis.")
            or not found.origin.endswith(".py")
            or not (self.everywhere or ".checks." in fullname)
        ):
            return None
        return importlib.util.spec_from_file_location(
            fullname,
            found.origin,
            loader=_Loader(fullname, found.origin),
            submodule_search_locations=found.submodule_search_locations,
        )


SIDES = _Sides()


def quick_tests() -> list[Path]:
    """The tests of whole folders and of the analysis, but for the rooms whose tests take minutes, of which the quick ones."""
    from mutants import FOLDERS, QUICK, WHOLE  # imports what is to be noted

    rooms = [each for each in sorted((HERE / "analysis").iterdir()) if each.is_dir() and each.name not in QUICK]
    own = [HERE / "analysis" / room / f"test_{name}.py" for room, names in QUICK.items() for name in names]
    whole = [HERE / each for each in (FOLDERS, *(file for files in WHOLE.values() for file in files))]
    return [*rooms, *sorted((HERE / "analysis").glob("test_*.py")), *own, *whole]


def run_everywhere(given: Sequence[str]) -> None:
    """Runs the tests and prints each comparison on which none of them stood."""
    import pytest

    sys.meta_path.insert(0, _Finder(everywhere=True))
    pytest.main(["-q", "-p", "no:xdist", "-p", "no:cacheprovider", *(given or map(str, quick_tests()))])
    seen: dict[tuple[str, int, str], list[int]] = {}
    for module, line, text, counts in EVERY:
        had = seen.setdefault((module, line, text), [0, 0, 0])
        had[:] = map(sum, zip(had, counts, strict=True))
    for (module, line, text), counts in sorted(seen.items()):
        if not counts[1] and "HAIR" not in text:
            _tell(Compared(module, line, text, counts))


def _tell(each: Compared) -> None:
    less, same, more = each.seen
    where = f"{each.module.removeprefix('rigc.analysis.')}:{each.line}"
    print(f"{where}: {each.text}: less {less}, as much {same}, more {more}")


def run(slugs: Sequence[str]) -> None:
    """Checks the cases and prints each comparison that lacks one of the three."""
    sys.meta_path.insert(0, _Finder(everywhere=False))
    from cases import compiled

    from rigc.analysis.every_check import all_checks

    all_checks()
    for case in sorted(CASES.glob("*/*.rig")):
        if not slugs or case.parent.name in slugs:
            compiled(case)
    for each in sorted(EVERY):
        if not all(each.seen) and (not slugs or each.module.rpartition(".")[2].replace("_", "-") in slugs):
            _tell(each)


if __name__ == "__main__":
    if sys.argv[1:2] == ["everywhere"]:
        run_everywhere(sys.argv[2:])
    else:
        run(sys.argv[1:])
