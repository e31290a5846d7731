"""`rigc mend`: what is advised, done."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from rigc.cli.commands.completion import rules_and_rigs
from rigc.cli.options import Given, disks, rig_options
from rigc.cli.screen import Screen

if TYPE_CHECKING:
    from rigc.diagnostics.diagnostic import Diagnostic
    from rigc.diagnostics.mend import Mend
    from rigc.files.disk import Disk

MOST = 200
"""So many mends are made in one run at most: each is compiled, and each leaves a finding fewer."""
MOST_LINES = 200_000
"""So many lines of sources are compiled at most to try mends in one run; some two hundred mends of a touring rig."""


@click.command()
@click.argument("words", nargs=-1, metavar="[RULE] [PATH]", shell_complete=rules_and_rigs)
@click.option("--diff", "as_diff", is_flag=True, help="Write nothing; print what would change.")
@click.option(
    "--way",
    type=click.IntRange(min=1),
    metavar="N",
    help="Where there are several ways to mend a finding, take the Nth.",
)
@rig_options
@click.pass_obj
def mend(screen: Screen, words: tuple[str, ...], as_diff: bool, way: int | None, given: Given) -> int:
    """Mend what rigc finds, where that is an edit of the text.

    With RULE, the name of a rule, only its findings. Each mend is tried first: it is made only if its finding goes and no
    error or warning comes. Where there are several ways, they are listed, and none is taken without --way. No fact that
    only a measurement can give is written. Exit code 1 if errors are left.
    """
    from rigc.cli.report import Report

    rule, path = _rule_and_path(words)
    report = Report(screen, given)
    (disk,) = disks([path] if path else [], given)
    if (as_diff or disk.is_given) and report.uses_stdout:
        raise click.UsageError("standard output is for the text; give --findings a file")
    return _mended(screen, report, disk, rule, way, as_diff)


def _rule_and_path(words: tuple[str, ...]) -> tuple[str, str]:
    """The rule, or nothing for all, and the path, or nothing for the only rig of this folder."""
    from rigc.diagnostics.explain import rule_names
    from rigc.diagnostics.near import nearest

    if len(words) > 2:
        raise click.UsageError("name a rule and a rig at most")
    names = rule_names()
    first = words[0] if words else ""
    if first in names:
        return first, words[1] if len(words) > 1 else ""
    if len(words) == 2 or (first and first != "-" and not first.endswith(".rig") and not Path(first).exists()):
        near = nearest(first, names)
        raise click.UsageError(f"there is no rule '{first}'" + (f"; did you mean '{near}'?" if near else ""))
    return "", first


def _mended(screen: Screen, report: Any, disk: Disk, rule: str, way: int | None, as_diff: bool) -> int:
    """Mends one finding after another, each in what the mends before it left."""
    from rigc.cli import seam
    from rigc.cli.report import NO_ANSWER
    from rigc.cli.written import put
    from rigc.loader import Unreadable

    try:
        bench = seam.bench(seam.compiled(disk, report.on, report.effort), disk, report.on, report.effort)
    except Unreadable as fault:
        report.unreadable_file(disk, fault)
        return NO_ANSWER
    texts: dict[str, str] = {}
    search = _Search(rule, way, bench)
    for _ in range(MOST):
        step = search.step(bench)
        if step is None:
            break
        finding, words, made = step
        screen.progress(f"{_where(disk, finding)}{words} [{finding.kind.name}]\n")
        texts |= made.texts
        bench = bench.on_top(made)
    put(screen, disk, texts, as_diff, "nothing was mended")
    for place, ways in search.open_ways.items():
        told = "".join(f"  --way {number}: {words}\n" for number, words in enumerate(ways, 1))
        screen.progress(f"{place} can be mended in {len(ways)} ways:\n{told}")
    if search.left == 0:
        screen.progress(f"{search.most} mends were tried, as many as one run tries; run it again to go on\n")
    report.add(disk, bench.made.findings)
    return int(report.finish())


class _Search:
    """The search for the next mend. What did not work is not tried again until nothing else is left to do."""

    def __init__(self, rule: str, way: int | None, bench: Any) -> None:
        self.rule, self.way = rule, way
        lines = sum(source.text.count("\n") + 1 for source in bench.made.sources)
        self.most = self.left = max(1, MOST_LINES // max(1, lines))
        self.open_ways: dict[str, list[str]] = {}
        self._not_now: set[tuple[str, str]] = set()
        self._made_since = False

    def step(self, bench: Any) -> tuple[Diagnostic, str, Any] | None:
        """The next finding that can be mended in one way, or in the way that was asked for; several ways are put by."""
        self.open_ways.clear()
        found = self._next(bench)
        if found is None and self._made_since:
            self._not_now.clear()
            self._made_since = False
            found = self._next(bench)
        self._made_since = self._made_since or found is not None
        return found

    def _next(self, bench: Any) -> tuple[Diagnostic, str, Any] | None:
        for finding in bench.made.findings:
            if finding.accepted is not None or not finding.mends or self.rule not in ("", finding.kind.name):
                continue
            working = self._working(bench, finding)
            number = self.way or 1
            if len(working) == 1 or (self.way and number <= len(working)):
                words, made = working[min(number, len(working)) - 1]
                return finding, words, made
            if working:
                self._not_now.update((finding.fingerprint, words) for words, _ in working)
                self.open_ways[f"{finding.message} [{finding.kind.name}]"] = [words for words, _ in working]
        return None

    def _working(self, bench: Any, finding: Diagnostic) -> list[tuple[str, Any]]:
        """The mends of a finding that work, of those that are to be tried; none where not all of them can be."""
        found: list[tuple[str, Any]] = bench.ways(finding, lambda mends: self._of_these(bench, finding, mends))
        return found

    def _of_these(self, bench: Any, finding: Diagnostic, mends: tuple[Mend, ...]) -> list[tuple[str, Any]]:
        due = [each for each in mends if (finding.fingerprint, each.words) not in self._not_now]
        if len(due) > self.left:
            self.left = 0
            return []
        self.left -= len(due)
        tried = [(each.words, bench.tried(finding, each)) for each in due]
        self._not_now.update((finding.fingerprint, words) for words, made in tried if not made.works)
        return [(words, made) for words, made in tried if made.works]


def _where(disk: Disk, finding: Diagnostic) -> str:
    return f"{disk.shown(finding.span.source.name)}:{finding.span.line}: " if finding.span else ""
