"""What a comparison of two revisions costs, as ratios to the floor of cold.py within one run. Run it in the same environment:

    /tmp/bare/bin/python tests/bench/diff.py

Budgets: `diff` of the touring example and a revision of it takes at most 3 floors, of two rigs of 200 units each at most
40, also where every unit differs and every cause must be looked for. All rigs are invented.
"""

from __future__ import annotations

import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from cold import FLOOR, ROOT, TOURING, many_units

TOURING_D = ROOT / "examples" / "long-haul-d" / "board.rig"
ROUNDS = 11
BUDGETS = {"touring": 3.0, "touring, several causes": 3.0, "200 units": 40.0, "200 units, several causes": 40.0}


def main() -> int:
    """Measures and prints; exit code 1 where a budget is exceeded."""
    with tempfile.TemporaryDirectory() as folder:
        return _report(Path(folder))


def _report(folder: Path) -> int:
    rig = [sys.executable, "-m", "rigc", "diff"]
    commands = {"floor": [sys.executable, "-c", FLOOR]}
    commands |= {name: [*rig, *map(str, pair)] for name, pair in _pairs(folder).items()}
    taken: dict[str, list[float]] = {name: [] for name in commands}
    for turn in range(ROUNDS + 1):  # in turn, so that a busy machine slows all of them
        for name, command in commands.items():
            if turn < 4 or not name.startswith("200"):
                taken[name].append(_seconds(command))
    times = {name: statistics.median(each[1:]) for name, each in taken.items()}
    for name, seconds in times.items():
        print(f"{name:28} {seconds * 1000:8.0f} ms  {seconds / times['floor']:6.2f} floors")
    over = [name for name, floors in BUDGETS.items() if times[name] > floors * times["floor"]]
    print(f"over a budget: {', '.join(over)}" if over else "within the budgets")
    return 1 if over else 0


def _pairs(folder: Path) -> dict[str, tuple[Path, Path]]:
    text = TOURING.read_text("utf-8").replace('"../bench/', '"bench/')
    (folder / "bench").mkdir()
    shutil.copy(TOURING.parent.parent / "bench" / "stock.rig", folder / "bench")
    many = many_units(200)
    texts = {
        "old": text,
        "mixed": text.replace("at 580, 325", "at 575, 325").replace("draws 190 mA", "draws 195 mA").replace("lift 23", "lift 25"),
        "many": many,
        "more": many.replace("draws 5 mA", "draws 6 mA"),
        "most": many.replace("x 120 x 55 mm", "x 121 x 55 mm").replace("u7 at 825, 15", "u7 at 824, 15"),
    }  # fmt: skip
    paths = {name: folder / f"{name}.rig" for name in texts}
    for name, path in paths.items():
        path.write_text(texts[name], "utf-8")
    return {
        "touring": (TOURING, TOURING_D),
        "touring, several causes": (paths["old"], paths["mixed"]),
        "200 units": (paths["many"], paths["more"]),
        "200 units, several causes": (paths["many"], paths["most"]),
    }


def _seconds(command: list[str]) -> float:
    start = time.perf_counter()
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    return time.perf_counter() - start


if __name__ == "__main__":
    sys.exit(main())
