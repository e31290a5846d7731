"""What a builder is told about each wrong input, word for word: the right place, his own words, the one thing to do."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

import pytest
from cases import READER, ExpectedByName, compiled, told
from syrupy.assertion import SnapshotAssertion

from inputs.bench_slips import AT_THE_BENCH
from inputs.quiet_slips import READ_WELL
from inputs.slip import Slip
from inputs.slips import FIRST_EVENING, LISTED
from inputs.wired_slips import IN_A_HURRY, IN_A_WIRED_RIG
from rigc.compile import compile_rig
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.files.disk import Disk
from rigc.loader import Unreadable
from rigc.proved import Bench

FOLDER = Path(__file__).parent
SLIPS = (*LISTED, *FIRST_EVENING, *AT_THE_BENCH, *IN_A_WIRED_RIG, *IN_A_HURRY, *READ_WELL)


@pytest.mark.parametrize("slip", [pytest.param(slip, id=slip.name) for slip in SLIPS])
def test_a_wrong_input_is_told(slip: Slip, tmp_path: Path, snapshot: SnapshotAssertion) -> None:
    assert f"{slip.done}\n\n{_answer(slip, tmp_path)}" == snapshot(extension_class=ExpectedByName)


@pytest.mark.parametrize("base", ["tutorial.rig", "switched.rig", "wired.rig"])
def test_what_is_edited_is_good(base: str) -> None:
    """Nothing is wrong with it but facts that nobody measured."""
    assert {finding.level.word for finding in compiled(FOLDER / base).findings} == {"can't-check"}


def test_every_answer_belongs_to_a_slip() -> None:
    names = [slip.name for slip in SLIPS]
    assert sorted(text.stem for text in (FOLDER / "expected").glob("*.txt")) == sorted(names)
    assert len(set(names)) == len(names) >= 235


def _answer(slip: Slip, folder: Path) -> str:
    """What is told of it and not of the good rig as well, be it in fewer words; of the mends those that work, as they are printed."""
    data = slip.edit((FOLDER / slip.base).read_bytes())
    try:
        bench = _bench(data, folder, slip.beside)
    except Unreadable as fault:
        return f"{fault}\n  do: {fault.help}\n"
    found, good = bench.made.findings, _good(slip.base)
    mine = (finding for finding in found if _identity(finding) not in good and not _lacked(finding, slip.base))
    return told(tuple(bench.proved(finding) for finding in mine))


def _lacked(finding: Diagnostic, base: str) -> bool:
    """Whether it only asks for facts that the good rig lacks as well."""
    return bool(finding.wants) and {*finding.wants} <= {
        want for each in compiled(FOLDER / base).findings for want in each.wants
    }


@lru_cache(maxsize=2)
def _good(base: str) -> frozenset[tuple[str, str]]:
    return frozenset(_identity(finding) for finding in compiled(FOLDER / base).findings)


def _identity(finding: Diagnostic) -> tuple[str, str]:
    return finding.fingerprint, finding.level.word


def _bench(data: bytes, folder: Path, beside: tuple[tuple[str, str], ...]) -> Bench:
    (folder / "board.rig").write_bytes(data)
    for name, text in beside:
        (folder / name).write_text(text, "utf-8")
    disk = Disk(folder / "board.rig")
    return Bench(compile_rig(disk, disk.name, READER), disk, disk.name, READER)
