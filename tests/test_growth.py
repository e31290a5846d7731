"""What a large rig takes grows with its size and no faster: counted in steps of the interpreter, of which the same text takes always as many.

Of three sizes that are as far apart, the second step from one to the next may take a twentieth more than the first: what grows with the square of the
size takes two thirds more, and what is a tenth of all by then a fifteenth.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from many_units import many_units

from rigc.compile import compile_rig
from rigc.files.disk import Disk
from rigc.files.reader import CachedReader
from rigc.source import Source
from rigc.syntax.parse import parse
from rigc.syntax.parsed import Parsed

MOST = 1.05


class Reader:
    """Reads each text anew, and remembers nothing of what was read before."""

    def __init__(self) -> None:
        self._grammar = CachedReader().grammar
        self.reserved = CachedReader().reserved

    def parse(self, source: Source, near: Parsed | None = None) -> Parsed:  # noqa: ARG002
        self._grammar.sought.clear()
        return parse(source, self._grammar)


def steps(text: str, folder: Path) -> int:
    """The lines and calls that the interpreter goes through for all findings of a text."""
    file = folder / "board.rig"
    file.write_text(text, "utf-8")
    disk, reader, count = Disk(file), Reader(), 0

    def step(*_: Any) -> Any:
        nonlocal count
        count += 1
        return step

    before = sys.gettrace()
    sys.settrace(step)
    try:
        compile_rig(disk, disk.name, reader, advice=False)
    finally:
        sys.settrace(before)
    return count


def _leads_of_other_hops(count: int) -> str:
    leads = "".join(f"  A{at + 1} u{at}.out -> u{at + 2}.in\n" for at in range(count - 2))
    return f"{many_units(count)}\nleads {{\n{leads}}}\n"


def _all_stated(count: int) -> str:
    """Each lead, an acceptance of nothing for each unit, a preset and a song for each ten."""
    leads = "".join(f"  A{at + 1} u{at}.out -> u{at + 1}.in\n" for at in range(count - 1))
    accepts = (f'accept far-date on u{at} "ok" by "x" until 2027-01-01\n' for at in range(count))
    presets = (
        f'preset {at + 1} {{\n  on u{10 * at}\n}}\nsong "s{at}" {{\n  preset {at + 1}\n}}\n'
        for at in range(count // 10)
    )
    return f"{many_units(count)}\nleads {{\n{leads}}}\n{''.join(accepts)}{''.join(presets)}"


def _each_twice(count: int) -> str:
    return many_units(count) + "".join(f"unit u{at} like pattern {{\n  draws 5 mA\n}}\n" for at in range(count))


def _wrong_lines(count: int) -> str:
    return re.sub(r"(?m)^  u(\d+) from", r"  u\1 fed by", many_units(count))


def _warm_with_vents(count: int) -> str:
    """Each gives off heat through two sides, has a size that may be off, and stands among the others."""
    sized = "  body 70 x 120 x 55 mm +- 1 mm\n  warm 0.04 W\n  vents left\n  vents rear\n"
    return many_units(count).replace("  body 70 x 120 x 55 mm\n", sized)


def _all_at_one_place(count: int) -> str:
    return re.sub(r"(?m)^  (u\d+) at .*$", r"  \1 at 20, 15 mm", many_units(count))


RIGS: dict[str, tuple[Callable[[int], str], int]] = {
    "all is stated": (_all_stated, 80),
    "leads that no chain joins": (_leads_of_other_hops, 60),
    "each name twice": (_each_twice, 60),
    "lines that can't be read": (_wrong_lines, 60),
    "all at one place": (_all_at_one_place, 80),
    "warm with vents": (_warm_with_vents, 80),
}


@pytest.mark.parametrize("rig", RIGS)
def test_a_rig_of_three_sizes(rig: str, tmp_path: Path) -> None:
    made, units = RIGS[rig]
    steps(made(20), tmp_path)  # what is loaded and kept on the way
    first, second = (
        after - before for before, after in pairwise(steps(made(units * times), tmp_path) for times in (2, 3, 4))
    )
    assert second <= MOST * first, f"{second / first:.3f}"
