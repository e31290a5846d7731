"""Session: what one editor has open, and what is known of the rigs behind it. It knows no protocol."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import partial
from pathlib import Path
from threading import RLock

from rigc.analysis.results import Beside
from rigc.compile import Compiled, compile_rig, read_rig
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.editor.answers.findings import carried_findings
from rigc.editor.computed import Computed, computed
from rigc.editor.draft import Draft
from rigc.editor.reading import KeptReader
from rigc.editor.shelf import Shelf, path_of
from rigc.editor.trials import Trials
from rigc.files.kept import kept
from rigc.files.rigs_near import rigs_near
from rigc.loader import Loader, Unreadable
from rigc.model.resolve import KnownThings
from rigc.proved import Bench
from rigc.source import Source
from rigc.syntax.parsed import Reader

Between = Callable[[], None] | None
_RIG = re.compile(r"^rig[ \t]+[a-z]", re.MULTILINE)
_OF_A_RIG = re.compile(r"^(chain|power|place|leads|mounting|preset)\b", re.MULTILINE)


class Checked:
    """A rig as it was compiled after one edit. Places that would mend a finding are sought (`advise`) when all is told that is found."""

    def __init__(self, edit: int, draft: Draft, compiled: Compiled, advise: Callable[[Between], Bench]) -> None:
        self.edit = edit
        self.draft = draft
        self.compiled = compiled
        self.computed = computed(compiled)
        self._advise = advise
        self._trials: Trials | None = None

    @property
    def findings(self) -> tuple[Diagnostic, ...]:
        """What was found, with what is known by now of how to mend it."""
        return (self.compiled if self._trials is None else self._trials.bench.made).findings

    def trials(self, between: Between = None) -> Trials:
        """Where the mends of the findings are tried, with all that is advised; `between` may raise to stop."""
        if self._trials is None:
            self._trials = Trials(self._advise(between))
        return self._trials

    def ready(self) -> None:
        """Makes what the first question about a number would else wait for."""
        if self.computed is not None:
            self.computed.reasoning  # noqa: B018  (it is kept where it is asked for)


class Session:
    """Open texts by path; the rig of each; its draft after the last edit, and what was last computed of it."""

    def __init__(self, reader: Reader) -> None:
        self.reader = KeptReader(reader)
        self.shelf = Shelf()
        self.edit = 0
        self._computing = RLock()  # what is computed goes over from one edit to the next
        self._kept = kept()
        self._drafts: dict[Path, tuple[int, Draft, Loader]] = {}
        self._checked: dict[Path, Checked] = {}
        self._computed: dict[Path, Computed] = {}
        self._rigs: dict[Path, Path] = {}

    def put(self, path: Path, text: str | None) -> None:
        """An editor holds this text of a file from now on; none: it has closed it, and the disk counts."""
        if text is None:
            self.shelf.open.pop(path, None)
        else:
            self.shelf.open[path] = text
        self.edit += 1

    def touched(self) -> None:
        """Something on the disk has changed."""
        self.edit += 1
        self._rigs.clear()

    def rig_of(self, path: Path) -> Path:
        """The rig to which a file belongs: itself, where it has a rig block; else one that uses it, an open one first; else itself."""
        if _RIG.search(self._text(path)):
            return path
        known = self._rigs.get(path)
        if known is not None and (known == path or self._uses(known, path)):
            return known
        open_rigs = [each for each in self.shelf.open if each != path and _RIG.search(self.shelf.open[each])]
        candidates = (rig for rigs in (open_rigs, rigs_near(path)) for rig in rigs)
        self._rigs[path] = next((rig for rig in candidates if self._uses(rig, path)), path)
        return self._rigs[path]

    def rigs_touched_by(self, path: Path) -> list[Path]:
        """The open rigs that use a file, and its own."""
        open_rigs = {self.rig_of(each) for each in list(self.shelf.open)}
        return sorted({self.rig_of(path), *(rig for rig in open_rigs if self._uses(rig, path))})

    def draft(self, rig: Path) -> Draft:
        """The rig as it is now, read and resolved. Raises `Unreadable`."""
        return self._draft(rig)[0]

    def source(self, path: Path) -> tuple[Draft, Source]:
        """The draft of a file's rig, and the file's source in it. Raises `Unreadable`."""
        rig = self.rig_of(path)
        draft = self.draft(rig)
        for source in draft.read.gathered.sources:
            if path_of(rig, source.name) == path:
                return draft, source
        raise Unreadable(path.name, f"'{path.name}' is not read by '{rig.name}'")

    def computed(self, rig: Path) -> Computed | None:
        """What was last computed of a rig, be it before the last edit; None where nothing was yet."""
        return self._computed.get(rig)

    def checked(self, rig: Path) -> Checked | None:
        """The rig as compiled after the last edit; None where that is still to do."""
        found = self._checked.get(rig)
        return found if found is not None and found.edit == self.edit else None

    def check(self, rig: Path, between: Between = None) -> Checked:
        """Compiles a rig as it is now; `between` may raise to stop. Raises `Unreadable`."""
        with self._computing:
            return self._check(rig, between)

    def _check(self, rig: Path, between: Between) -> Checked:
        edit = self.edit
        draft, load = self._draft(rig)
        last = self._computed.get(rig)
        beside = Beside(None if last is None else last.results, goes_on=True)
        made = self._compiled(draft, load, rig, between, beside)
        found = Checked(edit, draft, made, partial(self._advised, draft, load, rig, made))
        self._checked[rig] = found
        if found.computed is not None:
            self._computed[rig] = found.computed
        return found

    def _compiled(self, draft: Draft, load: Loader, rig: Path, between: Between, beside: Beside) -> Compiled:
        return compile_rig(
            load,
            rig.name,
            self.reader,
            half_written=True,
            advice=not beside.goes_on,
            between=between,
            read=draft.read,
            kept=self._kept,
            beside=beside,
        )

    def _advised(self, draft: Draft, load: Loader, rig: Path, made: Compiled, between: Between) -> Bench:
        """The same rig with places for what is in the way; nothing is sought where nothing is."""
        if made.results is not None and any(
            each.level <= Level.WARNING and not each.accepted for each in made.findings
        ):
            with self._computing:
                made = self._compiled(draft, load, rig, between, Beside(made.results))
        return Bench(made, load, rig.name, self.reader)

    def trials(self, rig: Path, between: Between = None) -> Trials:
        """Where the mends of a rig's findings are tried, as it is now. Raises `Unreadable`."""
        with self._computing:
            return (self.checked(rig) or self.check(rig, between)).trials(between)

    def findings(self, rig: Path) -> tuple[Diagnostic, ...]:
        """What is wrong, at once after an edit: with lines and names as they are now, with all else as it was last computed. Raises
        `Unreadable`."""
        found = self.checked(rig)
        if found is not None:
            return self._fit(found.findings, found.draft)
        draft = self.draft(rig)
        now = {(each.name, each.origin): each for each in draft.read.gathered.sources}
        before = self._checked.get(rig)
        read = () if before is None else before.draft.read.findings
        kept = () if before is None else [each for each in before.compiled.findings if each not in read]
        return self._fit((*draft.read.findings, *carried_findings(kept, now)), draft)

    def _fit(self, findings: tuple[Diagnostic, ...], draft: Draft) -> tuple[Diagnostic, ...]:
        """Without `no-rig` for a file of stock or units, which is none."""
        own = draft.read.gathered.sources[0].text
        if _OF_A_RIG.search(own) or not own.strip():
            return findings
        return tuple(each for each in findings if each.kind.name != "no-rig")

    def _draft(self, rig: Path) -> tuple[Draft, Loader]:
        kept = self._drafts.get(rig)
        if kept is not None and kept[0] == self.edit:
            return kept[1], kept[2]
        edit, load = self.edit, self.shelf.loader(rig)
        before = None if kept is None else kept[1].read.known
        draft = Draft(read_rig(load, rig.name, self.reader, KnownThings(before)))
        self._drafts[rig] = (edit, draft, load)
        return draft, load

    def _uses(self, rig: Path, path: Path) -> bool:
        """Whether a rig reads a file, by its last draft: a line `use` that has come or gone since is in the rig that is looked at anyway."""
        if rig == path:
            return True
        kept = self._drafts.get(rig)
        try:
            sources = (self.draft(rig) if kept is None else kept[1]).read.gathered.sources
        except Unreadable:
            return False
        return any(path_of(rig, source.name) == path for source in sources)

    def _text(self, path: Path) -> str:
        if path in self.shelf.open:
            return self.shelf.open[path]
        try:
            return self.shelf.loader(path)(path.name).text
        except Unreadable:
            return ""
