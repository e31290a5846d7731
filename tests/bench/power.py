"""What the choice of outlets costs, as ratios to the floor of cold.py within one run. Run it in the same environment:

    /tmp/bare/bin/python tests/bench/power.py

Budgets: leaving all 18 units of the touring example open adds at most 0.25 floors to a cold `check`; a cold `check` of
60 units on 80 outlets of 8 supplies takes at most 8 floors, each of 100 random rigs. It also tells for how many of these
the choice was proved best (or proved impossible). All rigs are invented.
"""

from __future__ import annotations

import re
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from random import Random

from cold import FLOOR, TOURING

ROUNDS = 15
RIGS = 100
ASK = """
import sys
from pathlib import Path
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.compile import compile_rig
from rigc.files.disk import Disk
from rigc.files.reader import CachedReader
for path in sys.argv[1:]:
    disk = Disk(Path(path))
    made = compile_rig(disk, disk.name, CachedReader())
    power = made.results.get(PowerAssignment)
    print(path, power.proved, power.steps, len(power.unfed), power.objective.warnings)
"""


def main() -> int:
    """Measures and prints; exit code 1 where a budget is exceeded."""
    with tempfile.TemporaryDirectory() as folder:
        floor = _median([sys.executable, "-c", FLOOR], ROUNDS)
        added = _touring(Path(folder), floor)
        worst = _random(Path(folder), floor)
    good = added <= 0.25 and worst <= 8
    print("within the budgets" if good else "over a budget")
    return 0 if good else 1


def _touring(folder: Path, floor: float) -> float:
    text = TOURING.read_text("utf-8")
    shutil.copytree(TOURING.parent.parent / "bench", folder / "bench")
    (folder / "rig-root").touch()
    feeds = re.compile(r"^power \{.*?^\}$", re.DOTALL | re.MULTILINE)
    assert feeds.search(text), "the touring rig states no feeds"
    stated, left = folder / "stated" / "board.rig", folder / "left" / "board.rig"
    leads = re.compile(r"^  D\d+ .*\n", re.MULTILINE)  # stated leads would state the outlets too
    opened = leads.sub("", feeds.sub("power {\n  others from mill8, weir8\n}", text))
    for path, told in ((stated, text), (left, opened)):
        path.parent.mkdir()
        path.write_text(told, "utf-8")
    command = [sys.executable, "-m", "rigc", "-q", "check"]
    taken = [[], []]  # type: list[list[float]]
    for _ in range(ROUNDS):
        for at, path in enumerate((stated, left)):
            taken[at].append(_seconds([*command, str(path)]))
    added = (statistics.median(taken[1]) - statistics.median(taken[0])) / floor
    print(f"floor {floor * 1000:.0f} ms; leaving 18 units open adds {added:.2f} floors to check")
    return added


def _random(folder: Path, floor: float) -> float:
    paths = []
    for seed in range(RIGS):
        paths.append(folder / f"random{seed}.rig")
        paths[-1].write_text(crowded(seed), "utf-8")
    told = subprocess.run([sys.executable, "-c", ASK, *map(str, paths)], capture_output=True, text=True, check=True)
    rows = [line.split() for line in told.stdout.splitlines()]
    proved = sum(row[1] == "True" for row in rows)
    hardest = max(rows, key=lambda row: int(row[2]))
    times = [_seconds([sys.executable, "-m", "rigc", "-q", "check", str(path)]) for path in paths]
    print(
        f"60 units on 80 outlets: check takes {statistics.median(times) / floor:.2f} floors in the middle, "
        f"{max(times) / floor:.2f} at most; {proved} of {RIGS} proved, most steps {hardest[2]}, "
        f"{sum(row[3] != '0' for row in rows)} without a way for all"
    )
    return max(times) / floor


def crowded(seed: int) -> str:
    """An invented rig of 60 units, 80 outlets and 8 supplies, placed, with nothing stated of who stands where."""
    chance = Random(seed)
    lines = ["language 1", 'rig crowd "Crowd (invented)" {', "  revision A 2026-03-02", "  class touring", "}"]
    for supply in range(8):
        lines += [
            f"supply s{supply} {{", "  body 250 x 80 x 45 mm", "  switch-mode", "  mains 100..240 V 50..60 Hz",
            f"  ceiling {chance.choice((12, 18, 25))} W", "  connector barrel 5.5 x 2.1 mm", "  polarity centre-negative",
        ]  # fmt: skip
        for outlet in range(10):
            rating = chance.choice(("100", "100", "250", "500"))
            more = " or 12 V dc 200 mA or 18 V dc 120 mA" if chance.random() < 0.25 else ""
            common = "common pair" if outlet > 7 else "isolated"
            lines.append(f"  outlet o{outlet} 9 V dc {rating} mA{more} {common} front {10 + 24 * outlet} mm up 20 mm")
        lines.append("}")
    for unit in range(60):
        volts = chance.choice((9,) * 9 + (12, 18))
        lines += [
            f"unit u{unit} {{", "  body 70 x 120 x 55 mm", "  input in ts 1 Mohm right 80 mm", "  output out ts 1 kohm left 80 mm",
            "  inlet dc barrel 5.5 x 2.1 mm rear 35 mm up 30 mm", f"  needs {volts} V dc", "  polarity centre-negative",
            f"  draws {chance.choice((5, 8, 15, 30, 60, 75, 90) if volts == 9 else (20, 60, 90))} mA",
            f"  ground {'positive' if chance.random() < 0.04 else 'negative'}", f"  {chance.choice(('analogue', 'digital', 'analogue'))}", "}",
        ]  # fmt: skip
    lines += ["chain " + " ->\n  ".join(f"u{unit}" for unit in range(60)), "power {"]
    lines += [
        "  others from " + ", ".join(f"s{supply}" for supply in range(8)),
        f"  spare {chance.choice((1, 4, 8))}",
        "}",
    ]
    lines += ["deck wall {", "  size 1200 x 1400 mm", "  clearance 70 mm", "}", "place {"]
    lines += [f"  u{unit} at {20 + 110 * (unit % 10)}, {15 + 150 * (unit // 10)} mm" for unit in range(60)]
    lines += [f"  s{supply} under at {30 + 290 * (supply % 4)}, {100 + 400 * (supply // 4)} mm" for supply in range(8)]
    return "\n".join([*lines, "}", ""])


def _median(command: list[str], rounds: int) -> float:
    return statistics.median(_seconds(command) for _ in range(rounds))


def _seconds(command: list[str]) -> float:
    start = time.perf_counter()
    subprocess.run(command, check=False, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    return time.perf_counter() - start


if __name__ == "__main__":
    sys.exit(main())
