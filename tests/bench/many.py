"""A whole shop in one command, and as a build engine's graph: `python tests/bench/many.py [RIGS] [JOBS]` (500, and as many as there are cores).

Each rig is the one of the README's walk under a name of its own; all use one file of units. Told are seconds of the clock for the
first build, for one in which nothing changed, for one rig changed, and for the shared file changed.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).parent.parent.parent
RIGC = [sys.executable, "-m", "rigc"]
NINJA = """\
rule rig
  command = {rigc} -q build $in --deps $out.d
  depfile = $out.d
  deps = gcc
"""


def shop(folder: Path, count: int) -> None:
    """The rigs, each in a folder of its own, and a graph of them for ninja."""
    text = "\n".join(re.findall(r"```rig\n(.*?)```", (ROOT / "README.md").read_text("utf-8"), re.DOTALL))
    unit = re.search(r'^unit tern ".*?^}\n', text, re.DOTALL | re.MULTILINE)
    assert unit
    (folder / "rig-root").touch()
    (folder / "units.rig").write_text(f"language 1\n\n{unit[0]}", "utf-8")
    own = text.replace(unit[0], "").replace('use "stock/plugs.rig"', 'use "../units.rig"\nuse "stock/plugs.rig"')
    names = [f"r{number:04}" for number in range(count)]
    for name in names:
        (folder / name).mkdir()
        (folder / name / "board.rig").write_text(own.replace("rig two-step", f"rig {name}"), "utf-8")
    edges = "".join(f"build {name}/documents/folder.html: rig {name}/board.rig\n" for name in names)
    (folder / "build.ninja").write_text(NINJA.format(rigc=" ".join(RIGC)) + edges, "utf-8")


def timed(folder: Path, words: str, *command: str) -> None:
    """Runs a command in the shop and tells how long it took."""
    start = time.perf_counter()
    ran = subprocess.run(
        command, cwd=folder, capture_output=True, text=True, env={**os.environ, "PYTHONPATH": str(ROOT)}
    )
    assert ran.returncode == 0, ran.stdout + ran.stderr
    built = sum(1 for _ in folder.glob("*/documents/folder.html"))
    print(f"{words:48} {time.perf_counter() - start:7.1f} s, {built} folders", flush=True)


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 500
    jobs = sys.argv[2] if len(sys.argv) > 2 else str(os.cpu_count() or 1)
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        shop(folder, count)
        board, units = folder / "r0000/board.rig", folder / "units.rig"
        together = (*RIGC, "-q", "build", ".", "--jobs", jobs)
        timed(folder, f"{count} rigs, rigc build . --jobs {jobs}", *together)
        timed(folder, "the same, nothing changed", *together)
        timed(folder, "rigc check ., the first time", *RIGC, "-q", "check", ".")
        timed(folder, "rigc check ., the second time", *RIGC, "-q", "check", ".")
        if shutil.which("ninja") is None:
            return
        engine = ("ninja", "-j", jobs)
        timed(folder, f"{count} rigs, ninja -j {jobs}", *engine)
        timed(folder, "the same, nothing changed", *engine)
        board.write_text(board.read_text("utf-8") + "# changed\n", "utf-8")
        timed(folder, "one rig changed", *engine)
        units.write_text(units.read_text("utf-8") + "# changed\n", "utf-8")
        timed(folder, "the shared file changed", *engine)


if __name__ == "__main__":
    main()
