"""Bends the analysis in one place at a time, and counts how often a test notices.

    python tests/bench/mutants.py 15 [SEED] [ROOM ...] [keep]

A mutant is one comparison, constant or sign of a module of `rigc/analysis/<room>/` that is another; so many a room are drawn by the seed.
Each is judged by the tests that are nearest: first the cases of the room's rules (of a check its own), then `tests/analysis/<room>`, then
the test files that name something of the module. A mutant that these do not notice survives, and is printed to be read; others of the
suite may notice it all the same. `keep` adds the counts to
`mutants.md` beside this file.
"""

from __future__ import annotations

import ast
import contextlib
import importlib.abc
import importlib.machinery
import importlib.util
import os
import random
import re
import resource
import sys
from collections.abc import Iterator, Sequence
from datetime import date
from pathlib import Path
from types import CodeType, ModuleType
from typing import Any

HERE = Path(__file__).parent.parent
ROOT = HERE.parent
sys.path[:0] = [str(HERE), str(ROOT)]

ANALYSIS = ROOT / "rigc" / "analysis"
CASES = HERE / "analysis" / "checks" / "cases"
TABLE = Path(__file__).with_suffix(".md")
MOST_S = 60
LATE = "out of time"
MOST_CASES = 40
MOST_FILES = 6
QUICK = {
    "laying": ("objective", "wished", "wishes_met", "fit", "layout", "conflicts", "crossed", "packing"),
    "revision": ("comparison", "lead_fits", "lead_steps", "fittings", "reuse", "swap_feeds", "swap_room"),
}
"""Of rooms whose tests take minutes, the quick ones that judge."""
_COMPARED: dict[type[ast.cmpop], type[ast.cmpop]] = {
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq,
    ast.In: ast.NotIn, ast.NotIn: ast.In, ast.Is: ast.IsNot, ast.IsNot: ast.Is,
}  # fmt: skip
_RECKONED: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult,
}  # fmt: skip


class Mutant:
    """One place of a module, by its number among the module's places, and in words."""

    def __init__(self, path: Path, number: int, words: str) -> None:
        self.path, self.number, self.words = path, number, words

    @property
    def module(self) -> str:
        """The module's name."""
        return ".".join(self.path.relative_to(ROOT).with_suffix("").parts)


def places(tree: ast.Module) -> Iterator[tuple[ast.AST, int, str]]:
    """Each comparison, constant and sign that may be another: its node, which of its operators, and what is done."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Compare):
            for at, op in enumerate(node.ops):
                if type(op) in _COMPARED:
                    yield node, at, f"{type(op).__name__} -> {_COMPARED[type(op)].__name__}"
        elif isinstance(node, ast.BinOp) and type(node.op) in _RECKONED:
            yield node, 0, f"{type(node.op).__name__} -> {_RECKONED[type(node.op)].__name__}"
        elif isinstance(node, ast.BoolOp):
            yield node, 0, "Or -> And" if isinstance(node.op, ast.Or) else "And -> Or"
        elif isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub | ast.Not):
            yield node, 0, f"no {type(node.op).__name__}"
        elif isinstance(node, ast.Constant) and isinstance(node.value, bool | int | float):
            yield node, 0, f"{node.value} -> {_other(node.value)}"


def bent(text: str, number: int) -> ast.Module:
    """The module with the place of that number bent."""
    tree = ast.parse(text)
    node, at, _ = list(places(tree))[number]
    if isinstance(node, ast.Compare):
        node.ops[at] = _COMPARED[type(node.ops[at])]()
    elif isinstance(node, ast.BinOp):
        node.op = _RECKONED[type(node.op)]()
    elif isinstance(node, ast.BoolOp):
        node.op = ast.And() if isinstance(node.op, ast.Or) else ast.Or()
    elif isinstance(node, ast.Constant):
        node.value = _other(node.value)
    elif isinstance(node, ast.UnaryOp):
        node.op = ast.UAdd() if isinstance(node.op, ast.USub) else ast.Not()
        if isinstance(node.op, ast.Not):
            node.operand = ast.UnaryOp(ast.Not(), node.operand)
    return ast.fix_missing_locations(tree)


def _other(value: Any) -> Any:
    return not value if isinstance(value, bool) else value + 1


class _Bent(importlib.machinery.SourceFileLoader):
    number = 0

    def get_code(self, fullname: str) -> CodeType:
        path = self.get_filename(fullname)
        return compile(bent(Path(path).read_text("utf-8"), self.number), path, "exec")


class _Finder(importlib.abc.MetaPathFinder):
    def __init__(self, mutant: Mutant) -> None:
        self.mutant = mutant

    def find_spec(self, fullname: str, path: Sequence[str] | None, target: ModuleType | None = None) -> Any:  # noqa: ARG002
        if fullname != self.mutant.module:
            return None
        loader = _Bent(fullname, str(self.mutant.path))
        loader.number = self.mutant.number
        return importlib.util.spec_from_file_location(fullname, self.mutant.path, loader=loader)


def drawn(room: str, count: int, seed: int) -> list[Mutant]:
    """So many mutants of a room, the same ones for the same seed."""
    every = []
    for path in sorted((ANALYSIS / room).rglob("*.py")):
        tree = ast.parse(path.read_text("utf-8"))
        every += [
            Mutant(path, number, f"{path.relative_to(ANALYSIS)}:{getattr(node, 'lineno', 0)} {what}")
            for number, (node, _, what) in enumerate(places(tree))
        ]
    return random.Random(f"{room} {seed}").sample(every, min(count, len(every)))


def noticed(room: str, mutant: Mutant | None) -> str:
    """By what the room's tests notice the mutant; empty where nothing does. To be called in a process of its own."""
    if mutant is not None:
        if mutant.module in sys.modules:
            for name in [each for each in sys.modules if each.partition(".")[0] in ("rigc", "cases")]:
                del sys.modules[name]
        sys.meta_path.insert(0, _Finder(mutant))
    from cases import Expected, compiled, proved, told

    for case in _cases(room, mutant):
        try:
            made = compiled(case)
            said = told(proved(case, made, case.parent.name)) if made.results is not None else "errors"
        except Exception as fault:
            return f"{case.parent.name}/{case.stem}: {type(fault).__name__}"
        expected = CASES.parent / "expected" / case.parent.name / f"{case.stem}.{Expected.file_extension}"
        if said != expected.read_text("utf-8"):
            return f"{case.parent.name}/{case.stem}"
    for files in (_own(room), [] if mutant is None else _naming(mutant)):
        import pytest

        words = [*map(str, files), "-x", "-q", "-p", "no:cacheprovider", "-p", "no:xdist"]
        if files and pytest.main(words) not in (0, 5):
            return ", ".join(path.relative_to(HERE).as_posix() for path in files)
    return ""


def _own(room: str) -> list[Path]:
    """The room's own tests: its folder, or the quick files of it."""
    own = HERE / "analysis" / room
    if room in QUICK:
        return [own / f"test_{name}.py" for name in QUICK[room]]
    return [own] if own.is_dir() else []


def _naming(mutant: Mutant) -> list[Path]:
    """Test files outside the room's own that name the module, or a class or a public function of it; those that import it first."""
    tree = ast.parse(mutant.path.read_text("utf-8"))
    names = [
        each.name for each in tree.body if isinstance(each, ast.ClassDef | ast.FunctionDef) and each.name[0] != "_"
    ]
    word = re.compile(rf"\b({'|'.join((mutant.path.stem, *names))})\b")
    room = HERE / "analysis" / mutant.path.relative_to(ANALYSIS).parts[0]
    texts = {path: path.read_text("utf-8") for path in sorted(HERE.rglob("test_*.py")) if room not in path.parents}
    found = [path for path, text in texts.items() if word.search(text)]
    return sorted(found, key=lambda path: mutant.module not in texts[path])[:MOST_FILES]


def _cases(room: str, mutant: Mutant | None) -> list[Path]:
    rules = [path.stem.replace("_", "-") for path in sorted((ANALYSIS / room / "checks").glob("[a-z]*.py"))]
    own = mutant.path.stem.replace("_", "-") if mutant is not None else ""
    found = [case for rule in ([own] if own in rules else rules) for case in sorted((CASES / rule).glob("*.rig"))]
    dice = random.Random(room)
    return found if len(found) <= MOST_CASES else dice.sample(found, MOST_CASES)


def judged(room: str, mutant: Mutant | None) -> str:
    """As `noticed`, in a process of its own; `LATE` beyond so many seconds of processor time, which may be the tests' own."""
    reads, writes = os.pipe()
    child = os.fork()
    if child == 0:
        resource.setrlimit(resource.RLIMIT_CPU, (MOST_S, MOST_S + 5))
        with (
            Path(os.devnull).open("w") as nowhere,
            contextlib.redirect_stdout(nowhere),
            contextlib.redirect_stderr(nowhere),
        ):
            os.dup2(nowhere.fileno(), 1)
            os.dup2(nowhere.fileno(), 2)
            try:
                said = noticed(room, mutant)
            except BaseException as fault:
                said = f"raised {type(fault).__name__}"
        os.write(writes, said.encode()[:1000])
        os._exit(0)
    os.close(writes)
    with os.fdopen(reads, "rb") as answers:
        said = answers.read().decode()
    _, status = os.waitpid(child, 0)
    return said if os.WIFEXITED(status) else LATE


def run(count: int, seed: int, rooms: Sequence[str], keep: bool) -> None:
    """Judges so many mutants of each room."""
    import hypothesis
    import pytest
    from cases import READER

    assert READER.grammar and hypothesis and pytest, "what each process needs is loaded once, before they are forked"
    for room in rooms:
        before = judged(room, None)
        if before:
            print(f"{room}: not judged, for its tests fail as it is: {before}", flush=True)
            continue
        mutants = drawn(room, count, seed)
        killed = 0
        for mutant in mutants:
            said = judged(room, mutant)
            dead = said not in ("", LATE)
            killed += dead
            print(f"{'killed  ' if dead else 'SURVIVED'} {mutant.words}: {said}", flush=True)
        print(f"{room}: {killed} of {len(mutants)} noticed", flush=True)
        if keep:
            with TABLE.open("a", encoding="utf-8") as table:
                table.write(
                    f"| {date.today()} | {room} | {len(mutants)} | {killed} | {killed / len(mutants):.0%} | {seed} |\n"
                )


if __name__ == "__main__":
    given = sys.argv[1:]
    numbers = [int(word) for word in given if word.isdigit()]
    every = sorted(path.name for path in ANALYSIS.iterdir() if path.is_dir() and path.name != "__pycache__")
    named = [word for word in given if word in every] or every
    run(numbers[0] if numbers else 15, numbers[1] if len(numbers) > 1 else 1, named, "keep" in given)
