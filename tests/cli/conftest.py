"""A rig compiler small enough to foresee: what the commands do with findings and documents is tested, not the rig."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path
from types import ModuleType
from typing import Any, NamedTuple

import pytest

from rigc.cli import main, seam
from rigc.diagnostics.diagnostic import Acceptance, Diagnostic, Kind, Level
from rigc.diagnostics.order import in_order
from rigc.loader import Loader, Unreadable, used_name
from rigc.reports.content import Cell, Column, Document, Drawing, Row, Sheet, Table, TitleBlock
from rigc.source import Source, Span

KINDS = {level.word: Kind(f"a-{level.name.lower()}", level, None, "a rule", "") for level in Level}
SHEETS = {"cable-list": "Cable list", "power-table": "Power table"}


class Toy(NamedTuple):
    """A compiled toy rig: each line that begins with a level's word is a finding of that level."""

    text: str
    findings: tuple[Diagnostic, ...]

    @property
    def has_errors(self) -> bool:
        return any(finding.level is Level.ERROR for finding in self.findings)

    def documents(self, sheet_names: tuple[str, ...], draft: bool) -> tuple[Document, ...]:
        names = sheet_names or tuple(SHEETS)
        return tuple(self._document(name, at + 1, len(names), draft) for at, name in enumerate(names))

    def sheets(self, names: tuple[str, ...]) -> tuple[Sheet, ...]:
        return tuple(each.sheet for each in self.documents(names, False))

    def _document(self, name: str, number: int, count: int, draft: bool) -> Document:
        lines = tuple(Row((Cell(line),)) for line in self.text.splitlines())
        table = Table("lines", "Lines", (Column("Line"),), lines)
        extra = (Table("extra", "Extra", (Column("More"),), ()),) if name == "power-table" else ()
        drawn = tuple(
            Drawing(line.removeprefix("draw "), "A drawing", "nothing", 40, 20, ())
            for line in self.text.splitlines()
            if line.startswith("draw ")
        )
        title = TitleBlock("toy", "T", "", SHEETS[name], "A", "2026-01-01", "", "", "0", draft)
        return Document(Sheet(name, SHEETS[name], "crew", (table, *extra, *drawn)), title, number, count)


def compile_toy(
    load: Loader,
    name: str,
    reader: object,  # noqa: ARG001
    *,
    on: str | None,
    effort: int | None = None,  # noqa: ARG001
    watch: object = None,  # noqa: ARG001
    kept: object = None,  # noqa: ARG001
) -> Toy:
    """Compile a toy rig: `use PATH`, `draw NAME`, `crash` (a bug), `stop` (an interrupt), findings and anything else."""
    source = load(name)
    findings: list[Diagnostic] = []
    at = 0
    for line in source.text.splitlines():
        findings += _line(load, source, Span(source, at, at + len(line)), on)
        at += len(line) + 1
    return Toy(source.text, in_order(findings))


def _line(load: Loader, source: Source, span: Span, on: str | None) -> list[Diagnostic]:
    word, _, rest = span.text.partition(" ")
    if word == "crash":
        raise ZeroDivisionError("a bug")
    if word == "stop":
        raise KeyboardInterrupt
    if word == "day":
        return [KINDS["remark"].at(span, f"it is {on}")]
    if word == "use":
        try:
            load(used_name(source.name, rest))
        except Unreadable as fault:
            return [KINDS["error"].at(span, fault.message, help=fault.help)]
    if word == "accepted":
        accepted = Acceptance("it is fine", "R.K.", "2026-12-31", span)
        return [KINDS["error"].at(span, rest).replace(accepted=accepted)]
    return [KINDS[word].at(span, rest or "something")] if word in KINDS else []


class Run(NamedTuple):
    """What a command gave."""

    code: int
    out: str
    err: str


Rigc = Callable[..., Run]


@pytest.fixture
def real(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfdbinary: pytest.CaptureFixture[bytes]) -> Rigc:
    """rigc itself, in an empty folder; what it prints that is no text is told with signs in its place."""
    monkeypatch.chdir(tmp_path)

    def run(*arguments: str) -> Run:
        code = main(arguments)
        out, err = capfdbinary.readouterr()
        return Run(code, out.decode("utf-8", "replace"), err.decode())

    return run


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty folder that is the current one."""
    (tmp_path / "rig-root").touch()
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.fixture
def rigc(here: Path, monkeypatch: pytest.MonkeyPatch, capfdbinary: pytest.CaptureFixture[bytes]) -> Rigc:
    """Run rigc in this process with the toy compiler."""
    toy = ModuleType("rigc.compile")
    vars(toy)["compile_rig"] = compile_toy
    monkeypatch.setitem(sys.modules, "rigc.compile", toy)
    monkeypatch.setattr(seam, "sheet_names", lambda: tuple(SHEETS))
    monkeypatch.setattr(seam, "sheets", lambda: tuple(SHEETS.items()))
    monkeypatch.setattr(seam, "rendered", _rendered)
    for name in ("NO_COLOR", "FORCE_COLOR", "RIGC_DEBUG"):
        monkeypatch.delenv(name, raising=False)

    def run(*arguments: str) -> Run:
        with monkeypatch.context() as patch:
            patch.setattr("tempfile.tempdir", str(here / "tmp"))
            code = main(arguments)
        out, err = capfdbinary.readouterr()
        return Run(code, out.decode(), err.decode())

    return run


def _rendered(documents: tuple[Any, ...], form: str, paper: str) -> str:
    return "".join(
        f"{form} {paper} {each.sheet.name} {each.number}/{each.count}{' DRAFT' * each.title.draft}\n"
        for each in documents
    )
