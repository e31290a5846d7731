"""States, leads and lengths -> the sections of the signal path, from what drives each to the next inputs, with their loading."""

from __future__ import annotations

from functools import cached_property
from operator import attrgetter
from typing import ClassVar

from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.signal.audio_states import AudioStates
from rigc.analysis.signal.loading.section import Load, Pickup, Section
from rigc.analysis.signal.loading.section_facts import Told, load_of, missing_of, pickup_of, source_of, through_air
from rigc.analysis.signal.loading.section_figures import SectionFigures
from rigc.analysis.signal.loading.section_leads import ByEnds, SectionLead, by_ends, section_lead
from rigc.analysis.signal.loading.section_walk import PICKUP, SectionEnd, SectionWalk
from rigc.analysis.signal.loading.state_sections import Where, state_sections
from rigc.analysis.signal.loading.state_words import states_told
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.ways.audio_state import UNPOWERED, AudioState
from rigc.model.ways.state_ways import UNKNOWN
from rigc.record import Record
from rigc.traced.means import total
from rigc.traced.term import Traced

_missing = attrgetter("missing")


class Loading(Record):
    """All sections, in the order of the signal; a section that is the same in several states is one."""

    TOLD: ClassVar[tuple[str, ...]] = ("told",)
    sections: tuple[Section, ...]
    audio: AudioStates

    def states(self, section: Section) -> tuple[AudioState, ...]:
        """The states in which a section is there."""
        return tuple(state for where in section.where for state in where.states(self.audio))

    @cached_property
    def played(self) -> tuple[Section, ...]:
        """The sections that are there in some state with power: without it nobody plays."""
        return tuple(
            each
            for each in self.sections
            if any(state.kind != UNPOWERED for where in each.where for state in where.each(self.audio))
        )

    def first_state(self, section: Section) -> AudioState:
        """The first of its states."""
        return next(state for where in section.where for state in where.each(self.audio))

    @property
    def told(self) -> tuple[SectionFigures, ...]:
        """The figures of all sections."""
        return tuple(map(self.figures, self.sections))

    def figures(self, section: Section) -> SectionFigures:
        """What is told of a section: made when it is asked for, since most sections of a large rig are only judged."""
        if section.name not in self._made:
            self._made[section.name] = SectionFigures(section, lambda: states_told(self, (section,)))
        return self._made[section.name]

    @cached_property
    def _made(self) -> dict[str, SectionFigures]:
        return {}


def loading(rig: Rig, audio: AudioStates, leads: Leads, lengths: CableLengths) -> Loading:
    """Walks every state and reckons each section once. The first section of a jack is named `marl.out.loading`, the next
    `marl.out.loading-2`."""
    reckoner = _Reckoner(rig, by_ends(leads), lengths)
    counts: dict[Port, int] = {}
    sections = []
    for walk, where in state_sections(rig, audio).items():
        count = counts[walk.source] = counts.get(walk.source, 0) + 1
        sections.append(reckoner.section(f"{walk.source}.loading{'' if count == 1 else f'-{count}'}", walk, where))
    return Loading(tuple(sections), audio)


class _Reckoner:
    """What several sections share is made once: leads, inputs, what drives them."""

    def __init__(self, rig: Rig, leads: ByEnds, lengths: CableLengths) -> None:
        self.rig = rig
        self.leads = leads
        self.lengths = lengths
        self.parts = _Leads(self)
        self.loads: dict[tuple[Port, str], Load] = {}
        self.drivers: dict[tuple[Port, str], Told] = {}
        self.pickups: dict[tuple[str, bool], Pickup] = {}

    def section(self, name: str, walk: SectionWalk, where: tuple[Where, ...]) -> Section:
        """What is known of a walk."""
        parts = self._leads(walk.hops)
        loads = tuple(self._load(end) for end in walk.ends)
        wire = [load.missing for load in loads if load.what == UNKNOWN] + [*map(_missing, parts)]
        end = [load.missing for load in loads]
        driver: Traced | None = None
        pickup, air, own = None, False, tuple[str, ...]()
        if walk.how == PICKUP:
            instrument = self.rig.instruments[walk.source.thing]
            air, own = through_air(self.rig, loads), missing_of(instrument)
            key = (instrument.name, air)
            if key not in self.pickups:
                self.pickups[key] = pickup_of(self.rig, instrument, air)
            pickup = self.pickups[key]
        else:
            driver, missing = self._driver(walk.source, walk.how)
            end.append(missing)
        return Section(
            name,
            walk.source,
            walk.how,
            parts,
            loads,
            where,
            driver,
            pickup,
            tuple((port, self._sum(hops)) for port, hops in walk.branch),
            tuple(dict.fromkeys(filter(None, wire))),
            tuple(filter(None, end)),
            own,
            air,
        )

    def _load(self, end: SectionEnd) -> Load:
        key = (end.port, end.what)
        if key not in self.loads:
            self.loads[key] = load_of(self.rig, end)
        return self.loads[key]

    def _driver(self, port: Port, how: str) -> Told:
        if (port, how) not in self.drivers:
            self.drivers[port, how] = source_of(self.rig, port, how)
        return self.drivers[port, how]

    def _leads(self, hops: tuple[int, ...]) -> tuple[SectionLead, ...]:
        return tuple(filter(None, map(self.parts.__getitem__, hops)))

    def _sum(self, hops: tuple[int, ...]) -> Traced:
        made: Traced = total(lead.pf for lead in self._leads(hops))
        return made


class _Leads(dict[int, SectionLead | None]):
    """The leads of connections by their numbers, each made when it is first asked for. What goes through the air has none; an instrument's
    way to its body-pack has one."""

    def __init__(self, of: _Reckoner) -> None:
        super().__init__()
        self._of = of

    def __missing__(self, at: int) -> SectionLead | None:
        rig, hop = self._of.rig, self._of.rig.connections[at]
        jack = rig.jack(hop.end)
        through_air = jack is not None and jack.connector.kind == "wireless"
        wired = not through_air or hop.start.thing in rig.instruments
        self[at] = section_lead(rig, hop, self._of.leads, self._of.lengths) if wired else None
        return self[at]


COMPUTE = loading
