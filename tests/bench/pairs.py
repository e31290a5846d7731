"""What two revisions of rigc cost on the same rigs, in pairs within one run: processor time of whole processes, one after the other.

    python tests/bench/pairs.py BASE [--rounds 7] [--only check]

BASE is a revision that git knows; it is compared with the working tree, by the Python that runs this, on the examples of BASE.
Each side has its own cache folder and compiled modules. A row tells the least processor time (user and system) of each side, which
other work on the machine lengthens least, and the median of the ratios of the pairs.
`fresh` rows begin without rigc's cache but with the grammar's tables, `edited` rows after a comment was added to the rig.
"""

from __future__ import annotations

import argparse
import os
import shutil
import statistics
import subprocess
import sys
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path

from cold import FOUR, many_units

ROOT = Path(__file__).parent.parent.parent


class Side:
    """One revision: where its code lies, and its own cache."""

    def __init__(self, code: Path, cache: Path, rigs: Path) -> None:
        self.code = code
        self.rigs = rigs
        self.cache = cache
        outside = {name: value for name, value in os.environ.items() if not name.startswith(("PYTHON", "RIGC"))}
        self.environment = {**outside, "PYTHONPATH": str(code), "XDG_CACHE_HOME": str(cache)}
        subprocess.run([sys.executable, "-m", "compileall", "-q", str(code / "rigc")], check=True, env=self.environment)

    def forget(self) -> None:
        """Only the tables of the grammar stay in the cache: no revision makes them in less than a second."""
        for kept in (self.cache / "rigc").glob("*"):
            if not kept.name.startswith("tables"):
                shutil.rmtree(kept) if kept.is_dir() else kept.unlink()

    def seconds(self, arguments: list[str]) -> float:
        """Processor time of one run. Raises where rigc itself fails."""
        command = [sys.executable, "-m", "rigc", *arguments]
        running = subprocess.Popen(
            command, cwd=self.rigs, env=self.environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
        )
        _, status, used = os.wait4(running.pid, 0)
        running.returncode = os.waitstatus_to_exitcode(status)
        if running.returncode not in (0, 1):
            raise SystemExit(f"{' '.join(command)}: exit code {running.returncode}")
        return used.ru_utime + used.ru_stime


def rows(side: Side, numbers: Iterator[int]) -> dict[str, Callable[[], float]]:
    """What is measured, by its name."""

    def edited(rig: str) -> float:
        path = side.rigs / rig
        path.write_text(f"{path.read_text('utf-8')}# {next(numbers)}\n", "utf-8")
        return side.seconds(["check", rig])

    def fresh(rig: str) -> float:
        side.forget()
        return side.seconds(["check", rig])

    boards = sorted(path.relative_to(side.rigs).as_posix() for path in side.rigs.glob("examples/*/board.rig"))
    touring = "examples/long-haul/board.rig"
    found: dict[str, Callable[[], float]] = {
        f"check {board.split('/')[1]}": _run(side, ["check", board]) for board in boards
    }
    found["edited check long-haul"] = lambda: edited(touring)
    found["fresh check long-haul"] = lambda: fresh(touring)
    found["fresh check tide-line"] = lambda: fresh("examples/tide-line/board.rig")
    found["build four long-haul"] = _run(side, ["-q", "build", touring, "--sheet", FOUR, "-o", "four"])
    found["build all long-haul"] = _run(side, ["-q", "build", touring, "-o", "all"])
    found["why tern long-haul"] = _run(side, ["why", "mill8.load", touring])
    found["check 100 units"] = _run(side, ["check", "100.rig"])
    found["check 1000 units"] = _run(side, ["check", "1000.rig"])
    found["explain"] = _run(side, ["explain"])
    return found


def _run(side: Side, arguments: list[str]) -> Callable[[], float]:
    return lambda: side.seconds(arguments)


def main() -> int:
    """Measures and prints."""
    asked = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    asked.add_argument("base")
    asked.add_argument("--rounds", type=int, default=7)
    asked.add_argument("--only", default="", help="rows whose names hold this")
    given = asked.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        report(Path(folder), given.base, given.rounds, given.only)
    return 0


def report(folder: Path, base: str, rounds: int, only: str) -> None:
    """Prints the table."""
    archive = subprocess.run(["git", "-C", str(ROOT), "archive", base], check=True, stdout=subprocess.PIPE).stdout
    (folder / "base").mkdir()
    subprocess.run(["tar", "-x", "-C", str(folder / "base")], input=archive, check=True)
    sides = []
    for name, code in (("old", folder / "base"), ("new", ROOT)):
        rigs = folder / f"{name}-rigs"
        shutil.copytree(folder / "base" / "examples", rigs / "examples")
        for count in (100, 1000):
            (rigs / f"{count}.rig").write_text(many_units(count), "utf-8")
        sides.append(Side(code, folder / f"{name}-cache", rigs))
    numbers = [iter(range(10**6)) for _ in sides]
    old, new = (rows(side, each) for side, each in zip(sides, numbers, strict=True))
    print(f"{'':24}{base[:12]:>12}{'now':>12}{'ratio':>8}")
    for name in old:
        if only not in name:
            continue
        old[name](), new[name]()  # the first of each fills its cache
        pairs = [(old[name](), new[name]()) for _ in range(3 if "1000" in name else rounds)]
        least = [min(each) for each in zip(*pairs, strict=True)]
        ratio = statistics.median(after / before for before, after in pairs)
        print(f"{name:24}{least[0] * 1000:9.0f} ms{least[1] * 1000:9.0f} ms{ratio:8.2f}", flush=True)


if __name__ == "__main__":
    sys.exit(main())
