"""How long rigc takes, against its budgets: one table, of one run or of two revisions in pairs.

    python3 -m venv /tmp/bare && /tmp/bare/bin/pip install -q . && cd tests/bench && /tmp/bare/bin/python speed.py
    python speed.py --write             # a column more in speed.md
    python speed.py --against main      # the working tree beside a revision, row by row in turn
    python speed.py --only check --rounds 9

Measured is processor time (user and system) of whole processes, the least of some rounds, which other work on the machine lengthens
least; it is told in floors, a floor being a process that only imports click, lark, networkx and pint with our unit file. Each side has a
cache folder and compiled modules of its own. `--jobs 2` alone is measured by the clock. Exit code 1 where a budget is exceeded.
"""

from __future__ import annotations

import argparse
import os
import platform
import re
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from itertools import count
from pathlib import Path
from typing import NamedTuple

sys.path.insert(0, str(Path(__file__).parent.parent))

from many_units import many_units
from speed_rigs import ROOT, board, crowded, shop

TABLE = Path(__file__).parent / "speed.md"
FLOOR = "import click, lark, networkx, pint; from rigc.model.units.quantities import registry; registry()"
HOOK = ".ci/states.py"
MADE_READY = f"""
import runpy, sys, types
builder = types.ModuleType("hatchling.builders.hooks.plugin.interface")
builder.BuildHookInterface = type("BuildHookInterface", (), {{"__class_getitem__": classmethod(lambda cls, _: cls)}})
sys.modules[builder.__name__] = builder
hook = runpy.run_path({HOOK!r})["States"]()
hook.root = "."
hook.initialize("", {{}})
"""
"""What an installed rigc bears and git does not: a revision's states, and its templates as code. Made without the builder, which need not be here."""
FOUR = "wiring-sheet,power-table,cable-list,mounting-strips"
TOURING = "examples/long-haul/board.rig"
RIGS = 60
CROWDS = 10
EDITS = 200


class Side:
    """One revision: where its code lies, and its own rigs and cache."""

    def __init__(self, code: Path, folder: Path) -> None:
        self.code = code
        self.rigs = folder / "rigs"
        self.cache = folder / "cache"
        self.numbers = count()
        self.environment = {
            **{name: value for name, value in os.environ.items() if not name.startswith(("PYTHON", "RIGC"))},
            "PYTHONPATH": str(code),
            "XDG_CACHE_HOME": str(self.cache),
        }
        self.most_kb = 0
        self.floor = 0.0
        self.editor: tuple[float, ...] = ()
        shutil.copytree(code / "examples", self.rigs / "examples")
        (self.rigs / "rig-root").touch()
        if (code / HOOK).exists():
            subprocess.run([sys.executable, "-c", MADE_READY], cwd=code, check=True, env=self.environment)
        subprocess.run([sys.executable, "-m", "compileall", "-q", str(code / "rigc")], check=True, env=self.environment)

    def rig(self, name: str, text: str) -> str:
        """The path of a rig of that text, written if it is not there."""
        if not (self.rigs / name).exists():
            (self.rigs / name).write_text(text, "utf-8")
        return name

    def run(self, *arguments: str, clock: bool = False, cache: bool = True) -> float:
        """Seconds of one run. Raises where rigc itself fails."""
        environment = self.environment if cache else {**self.environment, "XDG_CACHE_HOME": "/dev/null/none"}
        begun = time.perf_counter()
        running = subprocess.Popen(
            [sys.executable, *arguments],
            cwd=self.rigs,
            env=environment,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        _, status, used = os.wait4(running.pid, 0)
        running.returncode = os.waitstatus_to_exitcode(status)
        if running.returncode not in (0, 1):
            raise SystemExit(f"{arguments}: exit code {running.returncode}")
        self.most_kb = used.ru_maxrss
        return time.perf_counter() - begun if clock else used.ru_utime + used.ru_stime

    def rigc(self, *arguments: str, **how: bool) -> float:
        """Seconds of one run of rigc."""
        return self.run("-m", "rigc", *arguments, **how)

    def floors(self, *arguments: str, **how: bool) -> float:
        """One run of rigc, in floors."""
        return self.rigc(*arguments, **how) / self.floor

    def edited(self, rig: str, old: str = "", new: str = "") -> str:
        """The rig after an edit of one line: a remark more, or the first `old` with a number of its own in place of `{}` in `new`."""
        path = self.rigs / rig
        number = next(self.numbers)
        text = path.read_text("utf-8")
        path.write_text(re.sub(old, new.format(number), text, count=1) if old else f"{text}# {number}\n", "utf-8")
        return rig


class Row(NamedTuple):
    """What is measured, the most that it may be, in what, and in how many rounds at most."""

    name: str
    budget: float | None
    unit: str
    measure: Callable[[Side], float]
    rounds: int = 99


def _documents(side: Side, rig: str, *more: str, cache: bool = True) -> float:
    return side.floors("-q", "build", rig, *more, "-o", f"out{next(side.numbers)}", cache=cache)


def _number_changed(side: Side) -> str:
    return side.edited(TOURING, r"mass \d+ g", "mass 3{:02} g")


def _growth(side: Side, counts: tuple[int, int], word: str) -> float:
    """How many times as long as the one of few units the one of many takes, each above a rig of one unit: rigc starts in less than the
    floor, which loads what it no longer does, so that above that few units would cost nearly nothing. Nothing is kept of any."""
    one, few, many = (
        side.rig(f"{word}{each}.rig", many_units(each).replace("bypass buffered", f"bypass {word}"))
        for each in (1, *counts)
    )

    def taken(rig: str, times: int) -> float:
        return min(side.rigc("-q", "check", rig, cache=False) for _ in range(times))

    start = taken(one, 3)
    return (taken(many, 1) - start) / (taken(few, 3) - start)


def _crowd(side: Side) -> float:
    return max(
        side.floors("-q", "check", side.edited(side.rig(f"crowd{seed}.rig", crowded(seed)))) for seed in range(CROWDS)
    )


def _routing(side: Side, units: int) -> float:
    def told(drops: bool) -> float:
        rig = side.rig(f"board{units}{drops}.rig", board(units, drops))
        return side.floors("-q", "check", side.edited(rig))

    return told(True) - told(False)


def _left_open(side: Side) -> float:
    """What leaving all units of the touring rig without a stated outlet adds; stated leads would state the outlets too."""
    text = (side.rigs / TOURING).read_text("utf-8").replace('"../', '"examples/')
    block = re.compile(r"^power \{.*?^\}$", re.DOTALL | re.MULTILINE)
    opened = re.sub(r"^  D\d+ .*\n", "", block.sub("power {\n  others from mill8, weir8\n}", text), flags=re.MULTILINE)
    rigs = side.rig("opened.rig", opened), side.rig("stated.rig", text)
    more, less = (side.floors("-q", "check", side.edited(rig)) for rig in rigs)
    return more - less


def _editor(side: Side, which: int) -> float:
    if not side.editor:
        told = subprocess.run(
            [sys.executable, __file__, "--editor"], cwd=side.rigs, env=side.environment, check=True, capture_output=True
        )
        side.editor = tuple(map(float, told.stdout.split()))
    return side.editor[which]


def _shop(side: Side, command: str, *more: str, again: bool = False, clock: bool = False) -> float:
    """A whole shop, a rig; seconds by the clock."""
    folder = side.rigs / "shop"
    if not folder.exists():
        folder.mkdir()
        shop(folder, RIGS)
    if not again:
        shutil.rmtree(side.cache / "rigc", ignore_errors=True)
        for documents in folder.glob("*/documents"):
            shutil.rmtree(documents)
        side.rigc("-q", "check", TOURING)  # makes the tables
    taken = side.rigc("-q", command, "shop", *more, clock=clock)
    return taken if clock else taken / RIGS / side.floor


def _jobs(side: Side) -> float:
    return 2 * _shop(side, "build", "--jobs", "2", clock=True) / _shop(side, "build", "--jobs", "1", clock=True)


def _memory(side: Side) -> float:
    side.rigc("-q", "check", side.edited(side.rig("units5000.rig", many_units(5000))))
    return side.most_kb / 1024


ROWS = (
    Row("check, nothing changed", 0.35, "floors", lambda side: side.floors("check", TOURING)),
    Row("check, a remark added", 1.2, "floors", lambda side: side.floors("check", side.edited(TOURING))),
    Row(
        "check, a number changed",
        1.2,
        "floors",
        lambda side: side.floors("check", _number_changed(side)),
    ),
    Row("check, nothing kept", 1.8, "floors", lambda side: side.floors("check", TOURING, cache=False), 3),
    Row("four documents", 1.6, "floors", lambda side: _documents(side, TOURING, "--sheet", FOUR)),
    Row("the folder", 3, "floors", lambda side: _documents(side, TOURING)),
    Row("the folder, a number changed", 3, "floors", lambda side: _documents(side, _number_changed(side))),
    Row("the folder, nothing kept", 4, "floors", lambda side: _documents(side, TOURING, cache=False), 3),
    Row("the folder, nothing changed", 0.5, "floors", lambda side: side.floors("-q", "build", TOURING, "-o", "same")),
    Row("the folder of a rig that follows another", 4, "floors", lambda side: _documents(side, "examples/long-haul-d/board.rig")),
    Row("diff of the touring rig and its revision", 3, "floors", lambda side: side.floors("diff", TOURING, "examples/long-haul-d/board.rig")),
    Row("editor: all findings after an edit, in the middle", 50, "ms", lambda side: _editor(side, 0), 1),
    Row("editor: all findings after an edit, at worst", 120, "ms", lambda side: _editor(side, 1), 1),
    Row("editor: first answer after an edit, in the middle", 50, "ms", lambda side: _editor(side, 2), 1),
    Row("editor: places that would mend them, sought when these are told, at worst", None, "ms", lambda side: _editor(side, 3), 1),
    Row("leaving 18 outlets open adds", 0.25, "floors", _left_open, 5),
    Row(f"60 units on 80 outlets, the worst of {CROWDS} dealt rigs", 8, "floors", _crowd, 1),
    Row("routing 18 units adds", 0.5, "floors", lambda side: _routing(side, 18), 5),
    Row("routing 60 units adds", 4, "floors", lambda side: _routing(side, 60), 3),
    Row("1,000 units over 100, above one unit", 11, "times", lambda side: _growth(side, (100, 1000), "buffered"), 2),
    Row("a row of 500 true-bypass units over 250, above one unit", 2.5, "times", lambda side: _growth(side, (250, 500), "true"), 2),
    Row("5,000 units", 40, "floors", lambda side: side.floors("-q", "check", side.edited(side.rig("units5000.rig", many_units(5000)))), 2),
    Row("5,000 units, memory", 1000, "MB", _memory, 1),
    Row(f"{RIGS} rigs, a rig: first build", None, "floors", lambda side: _shop(side, "build"), 1),
    Row(f"{RIGS} rigs, a rig: build again", None, "floors", lambda side: _shop(side, "build", again=True), 1),
    Row(f"{RIGS} rigs, a rig: first check", None, "floors", lambda side: _shop(side, "check"), 1),
    Row(f"{RIGS} rigs, a rig: check again", None, "floors", lambda side: _shop(side, "check", again=True), 1),
    Row(f"{RIGS} rigs, --jobs 2 over half of --jobs 1, by the clock", 1.15, "times", _jobs, 1),
)  # fmt: skip


def measured(sides: list[Side], rounds: int, only: str) -> Iterator[tuple[Row, list[float], float]]:
    """Row by row the least of each side, and the median ratio of the last to the first, measured in turn."""
    for row in ROWS:
        if not re.search(only, row.name):
            continue
        pairs = []
        if row.rounds > 1:
            for side in sides:
                row.measure(side)  # fills its cache
        for _ in range(min(rounds, row.rounds)):
            for side in sides:
                side.floor = min(side.floor, side.run("-c", FLOOR))
            pairs.append([row.measure(side) for side in sides])
        least = [min(each) for each in zip(*pairs, strict=True)]
        yield row, least, statistics.median(each[-1] / each[0] for each in pairs if each[0]) if pairs else 0.0


def main() -> int:
    """Measures and prints."""
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asked.add_argument("--against", help="a revision that git knows")
    asked.add_argument("--rounds", type=int, default=5)
    asked.add_argument("--only", default="", help="rows in whose names this expression is found")
    asked.add_argument("--write", action="store_true", help="a column more in speed.md")
    asked.add_argument("--editor", action="store_true", help=argparse.SUPPRESS)
    given = asked.parse_args()
    if given.editor:
        return editor()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        sides = [Side(ROOT, folder / "new")]
        if given.against:
            archive = subprocess.run(
                ["git", "-C", str(ROOT), "archive", given.against], check=True, stdout=subprocess.PIPE
            ).stdout
            (folder / "code").mkdir()
            subprocess.run(["tar", "-x", "-C", str(folder / "code")], input=archive, check=True)
            sides.insert(0, Side(folder / "code", folder / "old"))
        for side in sides:
            side.floor = min(side.run("-c", FLOOR) for _ in range(5))
        print(f"floor {sides[-1].floor * 1000:.0f} ms")
        found: list[dict[str, float]] = [{} for _ in sides]
        for row, least, ratio in measured(sides, given.rounds, given.only):
            for values, value in zip(found, least, strict=True):
                values[row.name] = value
            over = row.budget is not None and least[-1] > row.budget
            told = "".join(f"{value:9.2f}" for value in least)
            budget = "-" if row.budget is None else f"{row.budget:g}"
            more = f"  ratio {ratio:.2f}" if given.against else ""
            print(f"{row.name:58}{told} {row.unit:6} budget {budget:>5}{more}{'  OVER' if over else ''}", flush=True)
    if given.write:
        for side, revision, values in zip(sides, [given.against, "HEAD"][-len(sides) :], found, strict=True):
            write(values, revision, side.floor)
    return 1 if any(row.budget is not None and found[-1].get(row.name, 0) > row.budget for row in ROWS) else 0


def write(found: dict[str, float], revision: str, floor: float) -> None:
    """A column more in the table, or cells more in that of the same revision and day."""
    short = subprocess.run(
        ["git", "-C", str(ROOT), "rev-parse", "--short=8", revision], check=True, capture_output=True, text=True
    ).stdout.strip()
    day = f"{short}, {datetime.now(UTC).date()}"
    columns, kept = _table()
    at = next((number for number, head in enumerate(columns) if head.startswith(day)), len(columns))
    if at == len(columns):
        columns.append(f"{day}, {_processor()}, floor {floor * 1000:.0f} ms")
    lines = [
        "# How long rigc takes", "",
        "Written by `speed.py --write`, which tells what is measured; a figure over its budget is bold. Columns: revision, day, machine, floor.", "",
        f"| what | budget | {' | '.join(columns)} |", f"| --- | ---{' | ---' * len(columns)} |",
    ]  # fmt: skip
    for row in ROWS:
        cells = [*kept.get(row.name, []), *["-"] * len(columns)][: len(columns)]
        value = found.get(row.name)
        if value is not None:
            told = f"{value:.0f}" if value >= 100 else f"{value:.2f}"
            cells[at] = f"**{told}**" if row.budget is not None and value > row.budget else told
        budget = f"{row.budget:g} {row.unit}" if row.budget is not None else f"- {row.unit}"
        lines.append(f"| {row.name} | {budget} | {' | '.join(cells)} |")
    TABLE.write_text("\n".join([*lines, ""]), "utf-8")


def _table() -> tuple[list[str], dict[str, list[str]]]:
    """The columns of the table as it stands, and the cells of each row."""
    if not TABLE.exists():
        return [], {}
    rows = [line[2:-2].split(" | ") for line in TABLE.read_text("utf-8").splitlines() if line.startswith("| ")]
    return rows[0][2:], {cells[0]: cells[2:] for cells in rows[2:]}


def _processor() -> str:
    try:
        told = re.search(r"model name\s*: (.*)", Path("/proc/cpuinfo").read_text("utf-8"))
    except OSError:
        told = None
    name = told[1] if told else platform.machine()
    return f"{os.cpu_count()} cores {' '.join(name.split())}, Python {platform.python_version()}"


def editor() -> int:
    """In a process of its own: milliseconds of processor time after each of some random edits of the touring rig, which is put back after it."""
    import random

    from rigc.editor import rubbish
    from rigc.editor.session import Session
    from rigc.files.reader import CachedReader

    rubbish.seldom()
    reader = CachedReader()
    session, path, dice = Session(reader), Path(TOURING).resolve(), random.Random(14)
    text = path.read_text("utf-8")
    session.put(path, text)
    session.check(path)
    reader.ready()  # as the server does when the first findings are told
    first, every, sought = [], [], []
    for _ in range(EDITS):
        way = dice.randrange(3)
        if way == 0:  # another digit
            at = dice.choice(list(re.finditer(r"\d", text))).start()
            changed = f"{text[:at]}{dice.randrange(10)}{text[at + 1 :]}"
        else:  # a remark, or the beginning of a line
            at = dice.choice([found.end() for found in re.finditer(r"\n", text)])
            changed = f"{text[:at]}{'# a remark' if way == 1 else '  dr'}\n{text[at:]}"
        session.put(path, changed)
        begun = time.process_time()
        session.findings(path)
        first.append((time.process_time() - begun) * 1000)
        checked = session.check(path)
        every.append((time.process_time() - begun) * 1000)
        if way == 0:
            begun = time.process_time()
            checked.trials()
            sought.append((time.process_time() - begun) * 1000)
        rubbish.tidy()
    print(statistics.median(every), max(every), statistics.median(first), max(sought))
    return 0


if __name__ == "__main__":
    sys.exit(main())
