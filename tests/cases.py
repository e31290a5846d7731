"""Cases and their expectations: every `.rig` under a folder `cases`, and the text file of the same place under `expected`."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from syrupy.extensions.single_file import SingleFileSnapshotExtension, WriteMode
from syrupy.location import PyTestLocation

from rigc.analysis.results import Results
from rigc.compile import Compiled, compile_rig
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.order import in_order
from rigc.files.disk import Disk
from rigc.files.reader import CachedReader
from rigc.proved import Bench

ROOT = Path(__file__).parent.parent
READER = CachedReader()


def cases(folder: Path) -> list[Any]:
    """Every case below a folder, named by its place in it."""
    found = sorted(folder.rglob("*.rig"))
    return [pytest.param(case, id=case.relative_to(folder).with_suffix("").as_posix()) for case in found]


def compiled(case: Path, root: Path = ROOT) -> Compiled:
    """The compiled case."""
    disk = Disk(case, root=root)
    return compile_rig(disk, disk.name, READER)


def proved(case: Path, made: Compiled, rule: str) -> tuple[Diagnostic, ...]:
    """A compiled case's findings of a rule, those folded under others too, as they are printed: with those of their mends that work."""
    disk = Disk(case, root=ROOT)
    bench = Bench(made, disk, disk.name, READER)
    every = in_order(each for finding in made.findings for each in (finding, *finding.follow))
    return tuple(bench.proved(finding) for finding in every if finding.kind.name == rule)


def results(case: Path) -> Results:
    """What follows from a case that must compile without errors of names and quantities."""
    made = compiled(case)
    assert made.results is not None, [finding.message for finding in made.findings]
    return made.results


@cache
def worked(path: str) -> Results:
    """What follows from a board of this project, by its path in it: made once for all tests that only read it."""
    return results(ROOT / path)


@cache
def sheet_of(path: str, sheet: Callable[..., Any]) -> Any:
    """A sheet of such a board, made once."""
    return worked(path).call(sheet)


def told(findings: tuple[Diagnostic, ...]) -> str:
    """Findings as the expectations hold them: place, level, message, rule; then label, further places, help."""
    lines = []
    for finding in findings:
        place = f"{finding.span.line}:{finding.span.column}" if finding.span else "-"
        lines.append(f"{place}: {finding.level.word}: {finding.message} [{finding.kind.name}]")
        if finding.label:
            lines.append(f"  here: {finding.label}")
        lines += [f"  {label.span.line}:{label.span.column}: {label.text}" for label in finding.also]
        if finding.note:
            lines.append(f"  note: {finding.note}")
        if finding.advice:
            lines.append(f"  do: {finding.advice}")
    return "\n".join(lines) + "\n" if lines else "nothing to report\n"


class Expected(SingleFileSnapshotExtension):
    """Keeps the expectation of `cases/A/B.rig` in `expected/A/B.<ending>`, apart from the cases themselves."""

    _write_mode = WriteMode.TEXT
    file_extension = "txt"

    @classmethod
    def dirname(cls, *, test_location: PyTestLocation) -> str:
        """The folder of the expectation."""
        case = _case(test_location)
        parts = list(case.parent.parts)
        at = len(parts) - 1 - parts[::-1].index("cases")
        parts[at] = "expected"
        return str(Path(*parts))

    @classmethod
    def get_snapshot_name(cls, *, test_location: PyTestLocation, index: Any = 0) -> str:  # noqa: ARG003
        """The name of the case."""
        return _case(test_location).stem


class ExpectedMarkdown(Expected):
    """An expectation that is a Markdown sheet."""

    file_extension = "md"


def _case(test_location: PyTestLocation) -> Path:
    case = test_location.item.callspec.params["case"]  # type: ignore[attr-defined]
    assert isinstance(case, Path)
    return case
