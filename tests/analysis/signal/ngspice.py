"""Circuits -> their responses as ngspice, a circuit simulator from outside this project, reckons them."""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Sequence
from pathlib import Path

import pytest

Response = list[tuple[float, float]]
"""Pairs of Hz and the voltage over that of the source."""

needs_ngspice = pytest.mark.skipif(shutil.which("ngspice") is None, reason="ngspice is not installed")


def responses(circuits: Sequence[Sequence[str]], analysis: str, folder: Path) -> list[Response]:
    """Runs one analysis over many circuits. Each is a list of elements as `R1 a b 1k`, driven at node `s`, heard at `w`."""
    cards = ["many circuits side by side"]
    for number, elements in enumerate(circuits):
        cards.append(f"V{number} s{number} 0 DC 0 AC 1")
        for at, element in enumerate(elements):
            name, *nodes, value = element.split()
            ends = " ".join("0" if node == "0" else f"{node}{number}" for node in nodes)
            cards.append(f"{name}_{number}_{at} {ends} {value}")
    heard = " ".join(f"vm(w{number})" for number in range(len(circuits)))
    cards += [".control", "set wr_singlescale", "set numdgt=10", analysis, f"wrdata out.data {heard}", ".endc", ".end"]
    (folder / "circuits.cir").write_text("\n".join(cards) + "\n", "utf-8")
    done = subprocess.run(
        ["ngspice", "-b", "circuits.cir"], cwd=folder, capture_output=True, text=True, timeout=120, check=False
    )
    written = folder / "out.data"
    assert written.exists(), done.stdout + done.stderr
    rows = [[float(word) for word in line.split()] for line in written.read_text("utf-8").splitlines()]
    return [[(row[0], row[1 + number]) for row in rows] for number in range(len(circuits))]
