"""A rig on disk, compiled for a program that imports rigc: findings, figures, tables and the whole design as plain values.

What has a docstring here is what rigc promises to programs (`grammar/library.md`).
"""

from __future__ import annotations

from functools import cached_property
from os import PathLike
from pathlib import Path
from typing import TYPE_CHECKING, Any

from rigc.files.disk import Disk
from rigc.files.reader import CachedReader
from rigc.record import Record

if TYPE_CHECKING:
    from rigc.compile import Compiled


class Finding(Record):
    """What a check found. `rule` is the name that `rigc explain` takes; `level` is error, warning, remark or can't-check; `file`, `line` and
    `column` (from 1) tell where, and are empty and 0 where it has no place; `help` is what to do, `accepted` whether somebody signed for it."""

    rule: str
    level: str
    message: str
    file: str
    line: int
    column: int
    help: str
    accepted: bool


class Value(Record):
    """A figure by the name that `rigc why` takes. `value` is the number in `unit`, a text where it is none, None where it is not known; `text` is
    what sheets print; `assumed` and `incomplete` whether it leans on a guess, or on a part of what it should."""

    name: str
    value: float | str | None
    unit: str
    text: str
    assumed: bool
    incomplete: bool


class CompiledRig:
    """A rig that was compiled. What costs time is made when it is asked for, once."""

    def __init__(self, compiled: Compiled, disk: Disk) -> None:
        self._compiled, self._disk = compiled, disk

    @property
    def has_errors(self) -> bool:
        """Whether an error stands that nobody accepted: then nothing should be built from it."""
        return self._compiled.has_errors

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """All that was found, as `rigc check` lists it; advice is not tried as it is there."""
        from rigc.diagnostics.machine import record

        told = (record(each, self._disk.shown) for each in self._compiled.findings)
        return tuple(
            Finding(
                each["rule"],
                each["level"],
                each["message"],
                each["file"] or "",
                each["line"] or 0,
                each["column"] or 0,
                each["help"],
                each["accepted"] is not None,
            )
            for each in told
        )

    @cached_property
    def model(self) -> dict[str, Any]:
        """The whole design, as `rigc model` prints it and `rigc model --schema` describes it; empty where names or quantities are wrong."""
        from rigc.output.design.model import model

        made = self._compiled
        return {} if made.results is None else model(made.results, made.findings, made.hash, self._disk.shown)

    @cached_property
    def figures(self) -> dict[str, Value]:
        """Every figure by its name: `figures["mill8.a1.load"].value` is 5 where that outlet bears 5 mA."""
        told = self.model.get("figures", ())
        return {each["name"]: Value(*(each[field] for field in Value.FIELDS)) for each in told}

    def rows(self, sheet: str, table: str) -> list[dict[str, str]]:
        """The rows of a table, by the names of its columns, as `rigc show SHEET --table TABLE --to csv` prints them, total rows left out.

        Empty where nothing was computed. Raises `LookupError` where there is no such sheet or table.
        """
        from rigc.output.column_names import column_names
        from rigc.reports.content import Table
        from rigc.reports.folder import sheet_names

        if sheet not in sheet_names():
            raise LookupError(f"there is no sheet '{sheet}'")
        if self._compiled.results is None:
            return []
        (made,) = self._compiled.sheets((sheet,))
        found = next((each for each in made.blocks if isinstance(each, Table) and each.name == table), None)
        if found is None:
            raise LookupError(f"the sheet '{sheet}' has no table '{table}'")
        names = column_names(found)
        return [dict(zip(names, (cell.text for cell in row.cells), strict=True)) for row in found.rows if not row.total]


def compile_rig(path: str | PathLike[str], *, on: str | None = None) -> CompiledRig:
    """Compiles the rig in a file. `on` is the day (ISO date) at which accepted findings are judged; None is that of its revision.

    Raises `Unreadable` where the file can't be read. What is wrong in a rig that could be read is among its findings.
    """
    from rigc.compile import compile_rig

    disk = Disk(Path(path))
    return CompiledRig(compile_rig(disk, disk.name, CachedReader(), on=on), disk)
