"""The findings of one run -> the streams and files they were asked for in, the summary, and the answer."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from rigc.cli import seam
from rigc.cli.options import LEVELS, Given
from rigc.cli.screen import Screen
from rigc.cli.seam import Compiled, compiled
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.diagnostics.terminal import Shown, short, summary, text
from rigc.files.disk import Disk
from rigc.loader import Unreadable

if TYPE_CHECKING:
    from rigc.gather import Gathered
    from rigc.model.rig import Rig

YES, NO, NO_ANSWER = 0, 1, 2
FOR_PROGRAMS = ("jsonl", "github", "sarif")
"""Formats that go to standard output where no file is named."""
WHOLE = ("sarif",)
"""Formats in which all rigs of a run are one document, written at the end."""


class Report:
    """Tells the findings of each rig as it is compiled, and at the end how many there were.

    A command that was asked for something else than findings (`asked_for` is False) prints those that make its answer no, on standard
    error, and counts the rest.
    """

    def __init__(self, screen: Screen, given: Given, asked_for: bool = False) -> None:
        self.screen = screen
        self.asked_for = asked_for
        self.untold = 0
        self.fail_on = Level(LEVELS.index(given.fail_on))
        self.findings: list[Diagnostic] = []
        self.unreadable = False
        self.compiled = False
        self.given = given
        self.on = given.on
        self.effort = given.effort
        self.wanted = given.findings or (("text", ""),)
        self.files: dict[str, list[str]] = {file: [] for _, file in self.wanted if file not in ("", "-")}
        self.rigs: list[tuple[Disk | None, tuple[Diagnostic, ...]]] = []
        self.unread: list[str] = []

    @property
    def uses_stdout(self) -> bool:
        """Whether findings go to standard output, so that nothing else can."""
        return any(file == "-" or (not file and form in FOR_PROGRAMS) for form, file in self.wanted)

    def compile(self, disk: Disk) -> Compiled | None:
        """Compile one rig and tell its findings; None, with the reason told, if its file cannot be read."""
        try:
            result, findings = self.judged(disk)
        except Unreadable as fault:
            self.unreadable_file(disk, fault)
            return None
        self.told(disk, findings)
        return result

    def judged(self, disk: Disk) -> tuple[Compiled, tuple[Diagnostic, ...]]:
        """A compiled rig and its findings as they are to be told, which they are not yet. Raises `Unreadable`."""
        disk(disk.name)
        result = compiled(disk, self.on, self.effort, self._reader, self.screen.steps)
        self.screen.steps_over()
        return result, self._proved(disk, result)

    def told(self, disk: Disk, findings: tuple[Diagnostic, ...]) -> None:
        """Tell the findings of a rig that was compiled."""
        self.compiled = True
        if self.screen.verbose:
            self.screen.err("".join(f"read {disk.shown(name)}\n" for name in disk.names))
        self.add(disk, findings)

    def check(self, disk: Disk) -> None:
        """As `compile`, for findings alone: where nothing has changed since the last check, they are what that told."""
        from rigc.files.told import Told

        told = Told(disk, self.asked)
        again = told.again()
        if again is not None:
            self.told(disk, again[0])
            return
        try:
            _, findings = self.judged(disk)
        except Unreadable as fault:
            self.unreadable_file(disk, fault)
            return
        told.keep(findings)
        self.told(disk, findings)

    @property
    def asked(self) -> str:
        """All that the findings of a rig hang on beside its files and this rigc, in words."""
        return f"{self.on} {self.effort} {'all' if self._tells_all else self.fail_on.word}"

    def answered(self, disk: Disk, what: str, tell: Callable[[Any], str | None]) -> int:
        """Print what `tell` makes of the compiled rig (None: nothing was computed); `what` names it. The exit code."""
        if self.uses_stdout:
            raise click.UsageError(f"standard output is for the {what}; give --findings a file")
        result = self.compile(disk)
        told = None if result is None else tell(result)
        if told is not None:
            self.screen.out(told)
        elif result is not None:
            self.screen.err("nothing is computed while names or quantities are wrong\n")
        code = self.finish()
        return NO_ANSWER if told is None else code

    def whole(self, disk: Disk, otherwise: str = "") -> tuple[Gathered, Rig] | None:
        """All statements and their rig, of which nothing is computed. Where a file can't be read whole or a name is wrong that is told
        and, of a wrong name, what follows `otherwise`; the exit code will be 2."""
        from rigc.gather import gather
        from rigc.model.resolve import resolve
        from rigc.source import Span

        try:
            gathered = gather(disk, disk.name, self._reader)
        except Unreadable as fault:
            self.unreadable_file(disk, fault)
            return None
        rig, told = resolve(gathered.statements, self._reader.reserved, Span(gathered.sources[0], 0, 0))
        errors = tuple(each for each in gathered.findings or told if each.level is Level.ERROR)
        if rig is not None and not errors:
            return gathered, rig
        self.add(disk, errors)
        self.unreadable = True
        if otherwise:
            self.screen.err(otherwise)
        return None

    def unreadable_file(self, disk: Disk, fault: Unreadable) -> None:
        """Tell why a file cannot be read; the exit code will be 2."""
        self.unreadable = True
        fault.name = disk.shown(fault.name)
        self.unread.append(str(fault))
        self.screen.err(f"{fault}\n" + (f"  do: {fault.help}\n" if fault.help else ""))

    def add(self, disk: Disk, findings: tuple[Diagnostic, ...]) -> None:
        """Tell findings whose places are in the sources of `disk`."""
        self.tell(findings, disk)

    def tell(self, findings: tuple[Diagnostic, ...], disk: Disk | None = None) -> None:
        """Tell findings; their places, if they have any, are in the sources of `disk`."""
        shown = disk.shown if disk else str
        self.rigs.append((disk, findings))
        for form, file in self.wanted:
            if form in WHOLE:
                continue
            if file and file != "-":
                self.files[file].append(_rendered(form, findings, shown, colour=False))
            elif file or form in FOR_PROGRAMS:
                self.screen.out(_rendered(form, findings, shown, colour=False))
            else:
                self._print(form, findings, shown)
        self.findings += findings

    @cached_property
    def _reader(self) -> Any:
        return seam.reader()

    def _proved(self, disk: Disk, result: Compiled) -> tuple[Diagnostic, ...]:
        """The findings, those that are told only with mends that were tried."""
        if not any(each.mends and self._is_told(each) for each in result.findings):
            return result.findings
        bench = seam.bench(result, disk, self.on, self.effort, self._reader)
        return tuple(bench.proved(each) if self._is_told(each) else each for each in result.findings)

    def _is_told(self, finding: Diagnostic) -> bool:
        return self._tells_all or self._counts(finding)

    @property
    def _tells_all(self) -> bool:
        return (self.asked_for or bool(self.given.findings)) and not self.screen.quiet

    def _print(self, form: str, findings: tuple[Diagnostic, ...], shown: Shown) -> None:
        told = tuple(filter(self._is_told, findings))
        self.untold += len(findings) - len(told)
        gap = "\n" if told and form == "text" else ""
        say, colour = (
            (self.screen.findings, self.screen.colour_out)
            if self.asked_for
            else (self.screen.found, self.screen.colour)
        )
        say(_rendered(form, told, shown, colour) + gap)

    def finish(self) -> int:
        """Write the files of findings, print the summary, give the exit code."""
        code = NO_ANSWER if self.unreadable else NO if any(map(self._counts, self.findings)) else YES
        self._tell_whole(code)
        save({Path(file): "".join(parts) for file, parts in self.files.items()})
        if self.compiled and (code or not self.screen.quiet):
            more = "; `rigc check` tells them all" if self.untold and not self.asked_for else ""
            self.screen.err(f"{summary(self.findings)}{more}\n")
        return code

    def _tell_whole(self, code: int) -> None:
        for file in (file for form, file in self.wanted if form in WHOLE):
            from rigc.cli.as_sarif import sarif

            text = sarif(self.rigs, self.unread, code, self._reader)
            if file in self.files:
                self.files[file].append(text)
            else:
                self.screen.out(text)

    def _counts(self, finding: Diagnostic) -> bool:
        return finding.accepted is None and finding.level <= self.fail_on


def save(texts: Mapping[Path, str | bytes], read: Mapping[Path, bytes] | None = None) -> tuple[Path, ...]:
    """Write all files or none; a refusal ends the command with exit code 2. `read` is what they held when their new texts were made."""
    if not texts:
        return ()
    from rigc.files.writing import NotWritable, write_all

    try:
        return write_all(texts, read)
    except NotWritable as fault:
        raise click.ClickException(str(fault)) from None


def _rendered(form: str, findings: Iterable[Diagnostic], shown: Shown, colour: bool) -> str:
    if form == "jsonl":
        from rigc.diagnostics.machine import jsonl

        return jsonl(findings, shown)
    if form == "github":
        from rigc.output.findings.github import render

        return render(findings, shown)
    return (text if form == "text" else short)(findings, colour=colour, shown=shown)
