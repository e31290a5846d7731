"""Rigs -> their findings and the texts of their documents: one after another, or several at once in processes of their own."""

from __future__ import annotations

import gc
from collections.abc import Iterator, Sequence
from functools import partial
from hashlib import sha256
from pathlib import Path
from typing import NamedTuple

from rigc.cli import seam
from rigc.cli.destination import Destination, Text
from rigc.cli.held import Held
from rigc.cli.options import Given
from rigc.cli.pages import Pages, pages
from rigc.cli.report import Report
from rigc.cli.screen import Screen
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.files.disk import Disk
from rigc.files.writing import as_bytes
from rigc.loader import Unreadable
from rigc.output.extras.missing_extra import MissingExtra
from rigc.output.template_mistake import TemplateMistake


class Asked(NamedTuple):
    """What `build` was asked for, the same for each rig."""

    screen: Screen
    given: Given
    target: Destination
    sheets: tuple[str, ...]
    templates: Path | None
    paper: str
    draft: bool


class Made(NamedTuple):
    """What became of one rig. `texts` is None where it has errors, its file can't be read (`unread`) or a page failed (`fault`)."""

    disk: Disk
    findings: tuple[Diagnostic, ...] = ()
    texts: dict[Path, Text] | None = None
    marks: frozenset[Held] = frozenset()
    unread: Unreadable | None = None
    fault: Diagnostic | None = None


class Built:
    """What was made of a rig when it was built last, as long as its files, this rigc and what was asked for are the same, and each document
    still is what was written. The documents themselves are what is kept of them, so that whatever goes on with their texts has the same."""

    def __init__(self, asked: Asked, report: Report, ours: Pages, disk: Disk) -> None:
        from rigc.files.told import Told

        target = asked.target
        words = (
            report.asked, Path.cwd(), disk.typed_folder, target.output, target.forms, target.separate, asked.sheets, asked.paper,
            asked.draft, ours.mark,
        )  # fmt: skip
        self._disk = disk
        self._told = Told(disk, "\0".join(map(str, words)), "built")

    def again(self) -> Made | None:
        """What was made; None where it must be made anew. Reads the files of the rig and its documents."""
        found = self._told.again()
        if found is None:
            return None
        findings, (outputs, marks) = found
        if outputs is None:
            return Made(self._disk, findings)
        texts: dict[Path, Text] = {}
        for name, digest in outputs:
            try:
                texts[Path(name)] = data = Path(name).read_bytes()
            except OSError:
                return None
            if sha256(data).hexdigest() != digest:
                return None
        return Made(self._disk, findings, texts, frozenset(Held(*each) for each in marks))

    def keep(self, made: Made) -> None:
        """Keeps what was made, written or not: what is not on the disk is made anew."""
        if made.unread or made.fault:
            return
        outputs = None if made.texts is None else [(str(path), _digest(text)) for path, text in made.texts.items()]
        self._told.keep(made.findings, (outputs, sorted(made.marks)))


def _digest(text: Text) -> str:
    return sha256(text if isinstance(text, bytes) else as_bytes(text)).hexdigest()


def each_made(asked: Asked, ours: Pages, rigs: Sequence[Disk], jobs: int) -> Iterator[Made]:
    """In the order of the rigs, as they are ready. One after another, no page is rendered any more once a rig has none."""
    if jobs < 2 or len(rigs) < 2:
        whole = True
        report = Report(asked.screen, asked.given)
        for disk in rigs:
            made = _made(asked, report, ours, disk, whole)
            whole = whole and made.texts is not None
            yield made
        return
    from concurrent.futures import ProcessPoolExecutor
    from multiprocessing import get_all_start_methods, get_context

    method = "fork" if "fork" in get_all_start_methods() else "spawn"
    with ProcessPoolExecutor(min(jobs, len(rigs)), get_context(method)) as workers:
        yield from workers.map(partial(_made_apart, asked), rigs)


_reports: list[Report] = []
"""That of this worker, so that it loads the tables of the grammar once."""


def _made_apart(asked: Asked, disk: Disk) -> Made:
    """In a worker, which compiles many rigs in its life: what one leaves is collected before the next. What it has loaded by the end of
    the first stays, and is not looked through any more."""
    first = not _reports
    if first:
        _reports.append(Report(asked.screen, asked.given))
    try:
        with pages(asked.templates) as ours:
            return _made(asked, _reports[0], ours, disk, True)
    finally:
        gc.collect()
        if first:
            gc.freeze()


def _made(asked: Asked, report: Report, ours: Pages, disk: Disk, render: bool) -> Made:
    built = Built(asked, report, ours, disk) if asked.target.can_be_known else None
    again = built.again() if built else None
    if again is not None:
        return again
    made = _made_anew(asked, report, ours, disk, render)
    if built and (render or made.texts is None):
        built.keep(made)
    return made


def _made_anew(asked: Asked, report: Report, ours: Pages, disk: Disk, render: bool) -> Made:
    try:
        result, findings = report.judged(disk)
    except Unreadable as fault:
        return Made(disk, unread=fault)
    if result.has_errors and not asked.draft:
        return Made(disk, findings)
    if not render:
        return Made(disk, findings, {})
    try:
        documents = ours.documents(result, asked.sheets, asked.draft)
        texts = asked.target.texts(
            Path(disk.typed_folder),
            documents,
            partial(ours.render, result=result, paper=asked.paper),
            partial(seam.split, result=result),
        )
    except (TemplateMistake, MissingExtra) as fault:
        return Made(disk, findings, fault=fault.finding())
    return Made(disk, findings, texts, frozenset(Held(each.title.code, each.title.revision) for each in documents))
