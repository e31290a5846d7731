"""Bends the analysis in one place at a time, and counts how often a test notices.

    python tests/bench/mutants.py 15 [SEED] [ROOM ...] [keep]

A mutant is one comparison, constant or sign of a module of `rigc/analysis/<room>/` that is another; so many a room are drawn by the seed.
Each is judged by what is quick first: the cases of the room's rules (of a check its own), the tests of whole boards (`WHOLE`), the folders of
small rigs, the cases of all other rules, what the documents of the examples say, then the mends of the room's cases, `tests/analysis/<room>`,
and the test files that name something of the module; of cases and rigs by those alone that run the function that holds it. A mutant that
these do not notice survives, and is printed to be read; others of the suite may notice it all the same. `keep` adds the counts to
`mutants.md` beside this file.

A mutant lives in a process forked for it, in which the functions and values of the loaded module are exchanged: all is read once.
"""

from __future__ import annotations

import ast
import contextlib
import functools
import gc
import importlib
import json
import os
import random
import re
import resource
import sys
from collections.abc import Callable, Iterator, Sequence
from datetime import date
from pathlib import Path
from types import CodeType, FunctionType
from typing import Any

HERE = Path(__file__).parent.parent
ROOT = HERE.parent
sys.path[:0] = [str(HERE), str(ROOT)]

from cases import READER, Expected, proved, told  # noqa: E402
from folder_rigs import RIGS  # noqa: E402

from rigc.analysis.reasoning import Reasoning  # noqa: E402
from rigc.compile import Compiled, Read, compile_rig, read_rig  # noqa: E402
from rigc.discover import nested  # noqa: E402
from rigc.files.disk import Disk  # noqa: E402
from rigc.output.formats import document_renderer  # noqa: E402
from rigc.output.layout import STANDARD  # noqa: E402
from rigc.reports.drawings.means.labelling import Ground  # noqa: E402

ANALYSIS = ROOT / "rigc" / "analysis"
CASES = HERE / "analysis" / "checks" / "cases"
TABLE = Path(__file__).with_suffix(".md")
MOST_S = 90
LATE = "out of time"
MOST_CASES = 40
MOST_FILES = 6
QUICK = {
    "laying": ("objective", "wished", "wishes_met", "fit", "layout", "conflicts", "crossed", "packing"),
    "revision": ("comparison", "lead_fits", "lead_steps", "fittings", "reuse", "swap_feeds", "swap_room"),
}
"""Of rooms whose tests take minutes, the quick ones that judge; beside them those that name something of the module, but for these."""
SLOW = ("comparison_random", "long_haul_rework", "no_rule_broken", "rigs_from_scratch", "search")
WHOLE: dict[str, tuple[str, ...]] = {
    "laying": ("analysis/laying/test_same_boards.py", "analysis/laying/test_same_places.py"),
    "revision": ("analysis/revision/test_small_pairs.py", "analysis/revision/test_many_changes.py"),
}
FOLDERS = "reports/test_small_folders.py"
"""Tests of whole boards, of these rooms, and of whole folders."""
MENDS = ": its mends"
EXAMPLES = tuple(sorted((ROOT / "examples").glob("*/board.rig")))
EVERY_CASE = tuple(sorted(CASES.glob("*/*.rig")))
SMALL = RIGS
"""The small rigs whose folders `FOLDERS` asserts."""
_COMPARED: dict[type[ast.cmpop], type[ast.cmpop]] = {
    ast.Lt: ast.LtE, ast.LtE: ast.Lt, ast.Gt: ast.GtE, ast.GtE: ast.Gt, ast.Eq: ast.NotEq, ast.NotEq: ast.Eq,
    ast.In: ast.NotIn, ast.NotIn: ast.In, ast.Is: ast.IsNot, ast.IsNot: ast.Is,
}  # fmt: skip
_RECKONED: dict[type[ast.operator], type[ast.operator]] = {
    ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult,
}  # fmt: skip


class Mutant:
    """One place of a module, by its number among the module's places, and in words; `within` is the function that holds it, by the module
    and the function's first line, empty for what is run when the module is read."""

    def __init__(self, path: Path, number: int, words: str, within: str) -> None:
        self.path, self.number, self.words, self.within = path, number, words, within

    @property
    def module(self) -> str:
        """The module's name."""
        return ".".join(self.path.relative_to(ROOT).with_suffix("").parts)


def places(tree: ast.Module) -> Iterator[tuple[ast.AST, int, str]]:
    """Each comparison, constant and sign that may be another: its node, which of its operators, and what is done.

    An `assert`, `strict=True` of a `zip` and the size of a cache compute nothing, so they are left out.
    """
    asserts = {id(each) for node in ast.walk(tree) if isinstance(node, ast.Assert) for each in ast.walk(node)}
    given = [each for each in ast.walk(tree) if isinstance(each, ast.keyword) and each.arg in ("strict", "maxsize")]
    asserts |= {id(each) for keyword in given for each in ast.walk(keyword.value)}
    for node in ast.walk(tree):
        if id(node) in asserts:
            continue
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


def functions(tree: ast.Module) -> dict[int, int]:
    """The first line of the outermost function that holds a node, by the node's id."""
    found: dict[int, int] = {}
    for each in ast.walk(tree):  # the outer ones first
        if isinstance(each, ast.FunctionDef):
            first = min([each.lineno, *(line.lineno for line in each.decorator_list)])
            for node in (one for part in each.body for one in ast.walk(part)):
                found.setdefault(id(node), first)
    return found


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


def bend(mutant: Mutant) -> int:
    """Exchanges in this process what the mutant has otherwise; returns how many functions and values that are."""
    text, name = mutant.path.read_text("utf-8"), str(mutant.path)
    made = compile(bent(text, mutant.number), name, "exec")
    before, now = _codes(compile(text, name, "exec")), _codes(made)
    changed = {key: code for key, code in now.items() if before.get(key) != code}
    count = 0
    for each in gc.get_objects():
        if isinstance(each, FunctionType) and each.__code__.co_filename == name:
            code = changed.get((each.__code__.co_qualname, each.__code__.co_firstlineno))
            if code is not None:
                each.__code__ = code
                count += 1
    scope = {"__name__": mutant.module, "__file__": name}
    exec(made, scope)
    for key, value in scope.items():
        old = vars(sys.modules[mutant.module]).get(key)
        if key[:2] != "__" and old is not None and getattr(value, "__module__", mutant.module) == mutant.module:
            count += _exchanged(key, value, old)
    for each in kept_answers():
        each.cache_clear()
    return count


def _codes(code: CodeType) -> dict[tuple[str, int], CodeType]:
    """The codes of a module's functions, by their names and lines."""
    found = {}
    for each in code.co_consts:
        if isinstance(each, CodeType):
            found[each.co_qualname, each.co_firstlineno] = each
            found.update(_codes(each))
    return found


def _exchanged(key: str, value: Any, old: Any) -> int:
    """Puts a bent value of a module in the place of the old one, in whichever module that is; so the fields of classes, and defaults."""
    if isinstance(value, type):
        plain = [(name, one) for name, one in vars(value).items() if name[:2] != "__" and name in vars(old)]
        return sum(_exchanged_in_class(old, name, one) for name, one in plain)
    if isinstance(value, FunctionType):
        return _exchanged_defaults(value, old)
    if repr(value) == repr(old) or " at 0x" in repr(value):
        return 0
    for module in [each for name, each in sys.modules.items() if name.partition(".")[0] == "rigc"]:
        if vars(module).get(key) is old:
            setattr(module, key, value)
    return 1


def _exchanged_in_class(owner: Any, name: str, value: Any) -> int:
    old = vars(owner)[name]
    if isinstance(value, FunctionType):
        return _exchanged_defaults(value, old)
    if not isinstance(value, bool | int | float | tuple) or repr(value) == repr(old):
        return 0
    setattr(owner, name, value)
    if name in getattr(owner, "DEFAULTS", {}):
        owner.DEFAULTS[name] = value
    return 1


def _exchanged_defaults(value: FunctionType, old: Any) -> int:
    function = getattr(old, "__wrapped__", old)
    if not isinstance(function, FunctionType) or repr(value.__defaults__) == repr(function.__defaults__):
        return 0
    function.__defaults__ = value.__defaults__
    return 1


def drawn(room: str, count: int, seed: int) -> list[Mutant]:
    """So many mutants of a room, the same ones for the same seed."""
    every = []
    for path in sorted((ANALYSIS / room).rglob("*.py")):
        tree = ast.parse(path.read_text("utf-8"))
        first = functions(tree)
        every += [
            Mutant(
                path,
                number,
                f"{path.relative_to(ANALYSIS)}:{getattr(node, 'lineno', 0)} {what}",
                f"{path}:{first[id(node)]}" if id(node) in first else "",
            )
            for number, (node, _, what) in enumerate(places(tree))
        ]
    return random.Random(f"{room} {seed}").sample(every, min(count, len(every)))


class Sound:
    """What is told where nothing is bent, the rigs as they were read, and which functions each runs: by these the mutants are judged."""

    def __init__(self) -> None:
        self.read: dict[Path, Read] = {}
        for path in (*EVERY_CASE, *EXAMPLES, *SMALL):
            disk = Disk(path, root=ROOT)
            self.read[path] = read_rig(disk, disk.name, READER)
        made = json.loads(in_a_fork(self._all_told))
        self.told: dict[str, str] = made["told"]
        self.run = {name: frozenset(made["ran"][name]) for name in made["ran"]}

    def reaches(self, path: Path, mutant: Mutant) -> bool:
        """Whether the rig runs the function that holds the mutant."""
        return not mutant.within or mutant.within in self.run[str(path)]

    def compiled(self, path: Path) -> Compiled:
        """The rig, computed anew from what was read."""
        disk = Disk(path, root=ROOT)
        return compile_rig(disk, disk.name, READER, read=self.read[path])

    def of_case(self, path: Path) -> str:
        """What its own rule tells of a case, with all mends untried."""
        try:
            every = [one for each in self.compiled(path).findings for one in (each, *each.follow)]
            said: str = told(tuple(one for one in every if one.kind.name == path.parent.name))
        except Exception as fault:
            said = type(fault).__name__
        return said

    def of_example(self, path: Path) -> str:
        """What the sheets of an example say, wherever the names in its drawings stand."""
        try:
            return _documents(self.compiled(path))
        except Exception as fault:
            return type(fault).__name__

    def of_small(self, path: Path) -> str:
        """What is found on a small rig, what its sheets say, and how its figures came about: as `test_small_folders.py` asserts it."""
        try:
            made = self.compiled(path)
            assert made.results is not None
            reasons = Reasoning(made.results).by_name.values()
            figures = "".join(f"{each.name} {each.value} {each.formula} {each.rule} {each.source}" for each in reasons)
            said: str = told(made.findings) + figures + _documents(made)
        except Exception as fault:
            said = type(fault).__name__
        return said

    def _all_told(self) -> str:
        caches = kept_answers()
        told: dict[str, str] = {}
        ran: dict[str, list[str]] = {}
        for paths, question in ((EVERY_CASE, self.of_case), (EXAMPLES, self.of_example), (SMALL, self.of_small)):
            for path in paths:
                for each in caches:
                    each.cache_clear()
                with noted() as codes:
                    told[str(path)] = question(path)
                ran[str(path)] = [
                    f"{code.co_filename}:{code.co_firstlineno}"
                    for code in codes.values()
                    if code.co_filename.startswith(str(ANALYSIS))
                ]
        return json.dumps({"told": told, "ran": ran})


def _documents(made: Compiled) -> str:
    setattr(Ground, "_placed", lambda _, wishes: tuple(next(iter(each.choices()), None) for each in wishes))  # noqa: B010
    return "".join(document_renderer("md")((each,), STANDARD) for each in made.documents())


@contextlib.contextmanager
def noted() -> Iterator[dict[int, CodeType]]:
    """The code of each function that is run meanwhile."""
    codes: dict[int, CodeType] = {}

    def note(frame: Any, *_: object) -> None:
        codes[id(frame.f_code)] = frame.f_code

    sys.settrace(note)
    try:
        yield codes
    finally:
        sys.settrace(None)


def kept_answers() -> list[Any]:
    """The functions that keep what they have answered."""
    every = (each for each in gc.get_objects() if isinstance(each, functools._lru_cache_wrapper))
    return [each for each in every if each.__module__.startswith(("rigc.analysis", "rigc.reports"))]


def noticed(room: str, mutant: Mutant, sound: Sound) -> str:
    """By what of the tests the mutant is noticed; empty where nothing does. To be called in a process of its own."""
    if not bend(mutant):
        return ""
    near = [case for case in _cases(room, mutant) if sound.reaches(case, mutant)]
    for case in near:
        if sound.of_case(case) != sound.told[str(case)]:
            return f"{case.parent.name}/{case.stem}"
    for file in WHOLE.get(room, ()):
        if _fails([HERE / file]):
            return file
    for path in SMALL:
        if sound.reaches(path, mutant) and sound.of_small(path) != sound.told[str(path)]:
            return f"folder of {path.stem}"
    for case in EVERY_CASE:
        if case not in near and sound.reaches(case, mutant) and sound.of_case(case) != sound.told[str(case)]:
            return f"{case.parent.name}/{case.stem}"
    for path in EXAMPLES:
        if sound.reaches(path, mutant) and sound.of_example(path) != sound.told[str(path)]:
            return f"documents of {path.parent.name}"
    for case in near:
        if _other_mends(case, sound):
            return f"{case.parent.name}/{case.stem}{MENDS}"
    for files in (_own(room), _naming(room, mutant)):
        if _fails(files):
            return ", ".join(path.relative_to(HERE).as_posix() for path in files)
    return ""


def _other_mends(case: Path, sound: Sound) -> bool:
    """Whether the expectation of a case has other mends, or none."""
    expected = CASES.parent / "expected" / case.parent.name / f"{case.stem}.{Expected.file_extension}"
    said: str = told(proved(case, sound.compiled(case), case.parent.name))
    return said != expected.read_text("utf-8")


def _fails(files: Sequence[Path]) -> bool:
    import pytest

    words = [*map(str, files), "-x", "-q", "-p", "no:cacheprovider", "-p", "no:xdist"]
    return bool(files) and pytest.main(words) not in (0, 5)


def _own(room: str) -> list[Path]:
    """The room's own tests: its folder, or the quick files of it."""
    own = HERE / "analysis" / room
    if room in QUICK:
        return [own / f"test_{name}.py" for name in QUICK[room]]
    return [own] if own.is_dir() else []


def _naming(room: str, mutant: Mutant) -> list[Path]:
    """Other test files that name the module, or a class or a public function of it; those that import it first."""
    tree = ast.parse(mutant.path.read_text("utf-8"))
    names = [
        each.name for each in tree.body if isinstance(each, ast.ClassDef | ast.FunctionDef) and each.name[0] != "_"
    ]
    word = re.compile(rf"\b({'|'.join((mutant.path.stem, *names))})\b")
    shown = {*_own(room), *(HERE / "analysis" / room / f"test_{name}.py" for name in SLOW)}
    shown |= set() if room in QUICK else {*(HERE / "analysis" / room).rglob("test_*.py")}
    texts = {path: path.read_text("utf-8") for path in sorted(HERE.rglob("test_*.py")) if path not in shown}
    found = [path for path, text in texts.items() if word.search(text)]
    return sorted(found, key=lambda path: mutant.module not in texts[path])[:MOST_FILES]


def _cases(room: str, mutant: Mutant) -> list[Path]:
    rules = [path.stem.replace("_", "-") for path in sorted((ANALYSIS / room / "checks").glob("[a-z]*.py"))]
    own = mutant.path.stem.replace("_", "-")
    found = [case for rule in ([own] if own in rules else rules) for case in sorted((CASES / rule).glob("*.rig"))]
    dice = random.Random(room)
    return found if len(found) <= MOST_CASES else dice.sample(found, MOST_CASES)


def fails_as_it_is(said: str, sound: Sound) -> bool:
    """Whether what noticed a mutant fails where nothing is bent, too."""
    if said.endswith(MENDS):
        return _other_mends(CASES / f"{said.removesuffix(MENDS)}.rig", sound)
    return said.endswith(".py") and _fails([HERE / name for name in said.split(", ")])


def judged(room: str, mutant: Mutant, sound: Sound) -> str:
    """As `noticed`, in a process of its own; `LATE` beyond so many seconds of processor time, which may be the tests' own."""
    return in_a_fork(lambda: noticed(room, mutant, sound), MOST_S)


def in_a_fork(question: Callable[[], str], most_s: int = 600) -> str:
    """What the question gives in a process of its own, which prints nothing; `LATE` beyond so many seconds of processor time."""
    reads, writes = os.pipe()
    child = os.fork()
    if child == 0:
        resource.setrlimit(resource.RLIMIT_CPU, (most_s, most_s + 5))
        with (
            Path(os.devnull).open("w") as nowhere,
            contextlib.redirect_stdout(nowhere),
            contextlib.redirect_stderr(nowhere),
        ):
            os.dup2(nowhere.fileno(), 1)
            os.dup2(nowhere.fileno(), 2)
            try:
                said = question()
            except BaseException as fault:
                said = f"raised {type(fault).__name__}"
        with os.fdopen(writes, "wb") as answers:
            answers.write(said.encode("utf-8", "surrogatepass"))
        os._exit(0)
    os.close(writes)
    with os.fdopen(reads, "rb") as answers:
        said = answers.read().decode("utf-8", "surrogatepass")
    _, status = os.waitpid(child, 0)
    return said if os.WIFEXITED(status) else LATE


def run(count: int, seed: int, rooms: Sequence[str], keep: bool) -> None:
    """Judges so many mutants of each room."""
    import hypothesis
    import pytest

    assert READER.grammar and hypothesis and pytest, "what each process needs is loaded once, before they are forked"
    for floor in ("analysis", "reports", "output"):
        for name in nested(f"rigc.{floor}"):
            with contextlib.suppress(ImportError):  # what is not installed here
                importlib.import_module(name)
    sound = Sound()
    fails: dict[str, bool] = {}
    for room in rooms:
        mutants = drawn(room, count, seed)
        killed = 0
        for mutant in mutants:
            said = judged(room, mutant, sound)
            if said and said != LATE and said not in fails:
                fails[said] = bool(in_a_fork(lambda said=said: said if fails_as_it_is(said, sound) else ""))  # type: ignore[misc]
            if fails.get(said):
                print(f"{said} fails as it is", flush=True)
                return
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
