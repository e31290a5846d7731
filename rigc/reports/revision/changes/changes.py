"""Two revisions and what they say otherwise -> one record of the changes, in the order of telling, as every format prints it."""

from __future__ import annotations

from rigc.analysis.results import Results
from rigc.analysis.revision.compared.aspect import WORK
from rigc.analysis.revision.compared.changed import ChangedThing
from rigc.analysis.revision.compared.findings import FindingChanges
from rigc.analysis.revision.comparison import Comparison
from rigc.model.records import Change
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.reports.revision.changes.words import KINDS, name_words


class Side(Record):
    """One of the two revisions: the file as the user calls it, and what its rig block says."""

    file: str
    rig: str
    title: str
    letter: str
    date: str
    text: str


class Changes(Record):
    """What is told: things with the fields that are told of them, heaviest work first; findings; the changes that the rig
    block states. `held` counts the fields that are held back, `cut` the things that a limit of length leaves out; `all` are
    the things with none of them left out, which is what is counted."""

    old: Side
    new: Side
    things: tuple[ChangedThing, ...]
    all: tuple[ChangedThing, ...]
    findings: FindingChanges
    stated: tuple[Change, ...]
    held: int
    whole: bool
    cut: int = 0

    @property
    def empty(self) -> bool:
        """Whether nothing is told."""
        return not self.all and not self.findings.came and not self.findings.went

    def of_work(self, work: str) -> tuple[str, ...]:
        """The names of all that asks for that kind of work, each once though its place and its feed both do."""
        return tuple(dict.fromkeys(name_words(each) for each in self.all if each.told and work in each.work))

    @property
    def cause(self) -> str:
        """The one cause of all that is told, where there is one and the rig block states no change; else empty."""
        causes = {cause for thing in self.all for each in thing.differences for cause in each.causes}
        return next(iter(causes)) if len(causes) == 1 and not any(each.stated for each in self.all) else ""

    def only(self, count: int) -> Changes:
        """The same with the first so many things; the findings are left out with the first that is."""
        if count >= len(self.all):
            return self
        shorter: Changes = self.replace(
            things=self.all[:count], cut=len(self.all) - count, findings=FindingChanges(), stated=()
        )
        return shorter


def changes(files: tuple[str, str], old: Rig, new: Results, findings: FindingChanges, whole: bool) -> Changes:
    """`whole`: also what is held back, and details."""
    found = new.get(Comparison).things
    told = found if whole else tuple(_told(each) for each in found if each.told)
    ordered = tuple(sorted(told, key=lambda each: (WORK.index(each.work[0]), KINDS.index(each.kind))))
    return Changes(
        _side(files[0], old),
        _side(files[1], new.rig),
        ordered,
        ordered,
        findings if whole else findings.replace(changed=()),
        new.rig.head.changes,
        sum(1 for each in found for one in each.differences if one.held),
        whole,
    )


def _told(thing: ChangedThing) -> ChangedThing:
    shown: ChangedThing = thing.replace(differences=tuple(each for each in thing.differences if each.told))
    return shown


def _side(file: str, rig: Rig) -> Side:
    head = rig.head
    return Side(file, head.name, head.title, head.letter, head.date, head.revision_text)
