"""Cases and their expectations: every `.rig` under a folder `cases`, and the text file of the same place under `expected`."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from pathlib import Path
from typing import Any

import pytest
from syrupy.extensions.single_file import SingleFileSnapshotExtension, WriteMode
from syrupy.location import PyTestLocation

from rigc.analysis.laying.search.known import KNOWN
from rigc.analysis.results import Results
from rigc.compile import Compiled, begin, compile_rig, read_rig
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.diagnostics.order import in_order
from rigc.files.disk import Disk
from rigc.files.reader import CachedReader
from rigc.loader import Loader
from rigc.proved import Bench
from rigc.source import Source
from rigc.syntax.parse import parse
from rigc.syntax.parsed import Parsed

ROOT = Path(__file__).parent.parent
KEPT = 12
"""So many compiled rigs are kept, those that were asked for last."""
FILES = 64
"""Of so many files the last clean parse is kept."""


class Reader(CachedReader):
    """Reads as a command does, from what has changed since the last clean parse of the file; but keeps that in memory and writes nothing, layouts
    that were found neither: a search that is tested runs."""

    def __init__(self) -> None:
        super().__init__()
        KNOWN.kept = None
        self._last: dict[str, Parsed] = {}

    def parse(self, source: Source, near: Parsed | None = None) -> Parsed:
        parsed = parse(source, self.grammar, near or self._last.pop(source.name, None))
        if near is None and not parsed.findings:
            self._last[source.name] = parsed
            if len(self._last) > FILES:
                del self._last[next(iter(self._last))]
        return parsed


READER = Reader()


def cases(folder: Path) -> list[Any]:
    """Every case below a folder, named by its place in it."""
    found = sorted(folder.rglob("*.rig"))
    return [pytest.param(case, id=case.relative_to(folder).with_suffix("").as_posix()) for case in found]


def compiled(case: Path, root: Path = ROOT) -> Compiled:
    """The compiled case."""
    return compiled_as(case, case.read_bytes(), root) if case.is_relative_to(ROOT) else _compiled(Disk(case, root=root))


@lru_cache(KEPT)
def compiled_as(file: Path, text: bytes, root: Path = ROOT) -> Compiled:
    """A file of the project, compiled as if it held this text; once while tests of it follow one another."""
    return _compiled(Disk(file, root=root, given=text))


def _compiled(disk: Disk) -> Compiled:
    return compile_rig(disk, disk.name, READER)


def proved(case: Path, made: Compiled, rule: str) -> tuple[Diagnostic, ...]:
    """A compiled case's findings of a rule, those folded under others too, as they are printed: with those of their mends that work."""
    disk = Disk(case, root=ROOT)
    bench = Bench(made, disk, disk.name, READER)
    every = in_order(each for finding in made.findings for each in (finding, *finding.follow))
    return tuple(bench.proved(finding) for finding in every if finding.kind.name == rule)


def results(case: Path) -> Results:
    """What follows from a case, which must be without errors of names and quantities."""
    return results_as(case, case.read_bytes())


@lru_cache(KEPT)
def results_as(file: Path, text: bytes) -> Results:
    """What follows from a file of the project as if it held this text."""
    disk = Disk(file, root=ROOT, given=text)
    return results_of(disk, disk.name)


def forget() -> None:
    """Whatever is compiled from now on is compiled anew: for tests that bend what is computed, before and after them."""
    compiled_as.cache_clear()
    results_as.cache_clear()
    sheet_of.cache_clear()


def results_of(load: Loader, name: str, **more: Any) -> Results:
    """The results of a rig, computed as they are asked for: its checks only run if a test asks for `Findings`; more as for `begin`."""
    read = read_rig(load, name, READER)
    told = [finding.message for finding in read.findings if finding.level is Level.ERROR]
    assert read.resolved.rig is not None and not told, told
    return begin(load, read, READER, **more).results


def results_if_sound(load: Loader, name: str, **more: Any) -> Results | None:
    """The same; None where there are errors of names or quantities."""
    read = read_rig(load, name, READER)
    if read.resolved.rig is None or any(finding.level is Level.ERROR for finding in read.findings):
        return None
    return begin(load, read, READER, **more).results


def worked(path: str) -> Results:
    """What follows from a board of this project, by its path in it."""
    return results(ROOT / path)


@lru_cache(KEPT)
def sheet_of(path: str, sheet: Callable[..., Any]) -> Any:
    """A sheet of such a board, made once while tests of it follow one another."""
    return worked(path).call(sheet)


def told(findings: tuple[Diagnostic, ...]) -> str:
    """Findings as the expectations hold them: place, level, message, rule; what it is about, label, further places, figures, note, help.

    Behind these the facts that a can't-check wants, and those that a finding asks for: by them the one is folded under the other.
    """
    lines = []
    for finding in findings:
        place = f"{finding.span.line}:{finding.span.column}" if finding.span else "-"
        lines.append(f"{place}: {finding.level.word}: {finding.message} [{finding.kind.name}]")
        if finding.subject:
            about, doers = (
                finding.subject[: finding.kind.about or None],
                finding.subject[finding.kind.about or len(finding.subject) :],
            )
            lines.append(f"  about: {', '.join(about)}{'; by ' if doers else ''}{', '.join(doers)}")
        if finding.label:
            lines.append(f"  here: {finding.label}")
        lines += [f"  {label.span.line}:{label.span.column}: {label.text}" for label in finding.also]
        if finding.numbers:
            figures = (f"{each.name} {each.value:.7g} {each.unit}".rstrip() for each in finding.numbers)
            lines.append(f"  figures: {', '.join(figures)}")
        if finding.note:
            lines.append(f"  note: {finding.note}")
        if finding.advice:
            lines.append(f"  do: {finding.advice}")
        lines += [f"  wants: {want}" for want in finding.wants]
        lines += [f"  asks for: {want}" for want in finding.asks_for]
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


class ExpectedByName(SingleFileSnapshotExtension):
    """Keeps what is told of the parameter NAME of a test in `expected/NAME.txt` beside it."""

    _write_mode = WriteMode.TEXT
    file_extension = "txt"

    @classmethod
    def dirname(cls, *, test_location: PyTestLocation) -> str:
        """The folder of the expectation."""
        return str(Path(test_location.filepath).parent / "expected")

    @classmethod
    def get_snapshot_name(cls, *, test_location: PyTestLocation, index: Any = 0) -> str:  # noqa: ARG003
        """The name of the parameter."""
        return test_location.snapshot_name.partition("[")[2].removesuffix("]")


def _case(test_location: PyTestLocation) -> Path:
    case = test_location.item.callspec.params["case"]  # type: ignore[attr-defined]
    assert isinstance(case, Path)
    return case
