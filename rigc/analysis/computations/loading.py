"""States, leads and lengths -> the sections of the signal path, from what drives each to the next inputs, with their loading."""

from __future__ import annotations

from functools import cached_property

from rigc.analysis.computations.audio_states import AudioStates
from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Leads
from rigc.analysis.signal.section import Section
from rigc.analysis.signal.section_facts import (
    assumed_of,
    load_of,
    missing_of,
    network_of,
    pickup_of,
    source_of,
    through_air,
)
from rigc.analysis.signal.section_leads import ByEnds, SectionLead, by_ends, section_lead
from rigc.analysis.signal.section_walk import PICKUP, SectionWalk
from rigc.analysis.signal.state_sections import Where, state_sections
from rigc.model.audio_state import UNPOWERED, AudioState
from rigc.model.rig import Rig
from rigc.model.state_ways import UNKNOWN
from rigc.record import Record


class Loading(Record):
    """All sections, in the order of the signal; a section that is the same in several states is one."""

    sections: tuple[Section, ...]
    audio: AudioStates

    def states(self, section: Section) -> tuple[AudioState, ...]:
        """The states in which a section is there."""
        return tuple(state for where in section.where for state in where.states(self.audio))

    @cached_property
    def played(self) -> tuple[Section, ...]:
        """The sections that are there in some state with power: without it nobody plays."""
        return tuple(each for each in self.sections if any(state.kind != UNPOWERED for state in self.states(each)))

    def first_state(self, section: Section) -> AudioState:
        """The first of its states."""
        return next(state for where in section.where for state in where.states(self.audio))


def loading(rig: Rig, audio: AudioStates, leads: Leads, lengths: CableLengths) -> Loading:
    """Walks every state and reckons each section once."""
    reckoner = _Reckoner(rig, by_ends(leads), lengths)
    found = state_sections(rig, audio)
    return Loading(tuple(reckoner.section(walk, where) for walk, where in found.items()), audio)


class _Reckoner:
    def __init__(self, rig: Rig, leads: ByEnds, lengths: CableLengths) -> None:
        self.rig = rig
        self.leads = leads
        self.lengths = lengths
        self.done: dict[int, SectionLead] = {}

    def section(self, walk: SectionWalk, where: tuple[Where, ...]) -> Section:
        """The figures of a walk."""
        parts = [self._lead(at) for at in walk.hops if self._wired(at)]
        ends = [load_of(self.rig, end) for end in walk.ends]
        loads = tuple(load for load, _, _ in ends)
        lost = [f"how '{each.port.thing}' is bypassed is not said" for each in loads if each.what == UNKNOWN]
        wire = dict.fromkeys((*lost, *(part.missing for part in parts if part.missing)))
        end = [missing for _, missing, _ in ends if missing]
        assumed = any(part.assumed for part in parts) or any(leans for _, _, leans in ends)
        branch = tuple((port, self._sum(hops)) for port, hops in walk.branch)
        made = Section(
            walk.source,
            walk.how,
            tuple(parts),
            loads,
            where,
            None,
            None,
            None,
            None,
            branch,
            tuple(wire),
            tuple(end),
            (),
            assumed,
        )
        return self._pickup(made) if walk.how == PICKUP else self._driven(made)

    def _driven(self, section: Section) -> Section:
        ohm, missing, leans = source_of(self.rig, section.source, section.how)
        lost = (*section.missing_end, missing) if missing else section.missing_end
        made: Section = section.replace(source_ohm=ohm, missing_end=lost, assumed=section.assumed or leans)
        return made

    def _pickup(self, section: Section) -> Section:
        instrument = self.rig.instruments[section.source.thing]
        air, ohm = through_air(self.rig, section), section.load_ohm
        pickup = pickup_of(self.rig, instrument, air)
        made: Section = section.replace(
            through_air=air,
            pickup=pickup,
            network=network_of(instrument, section.cable_pf, ohm),
            plain=network_of(instrument, pickup.plain_pf, ohm),
            missing_own=missing_of(instrument),
            assumed=section.assumed or assumed_of(instrument),
        )
        return made

    def _lead(self, at: int) -> SectionLead:
        if at not in self.done:
            self.done[at] = section_lead(self.rig, self.rig.connections[at], self.leads, self.lengths)
        return self.done[at]

    def _wired(self, at: int) -> bool:
        """What goes through the air has no lead; an instrument's way to its body-pack has one."""
        hop = self.rig.connections[at]
        jack = self.rig.jack(hop.end)
        through_air = jack is not None and jack.connector.kind == "wireless"
        return not through_air or hop.start.thing in self.rig.instruments

    def _sum(self, hops: tuple[int, ...]) -> float | None:
        known = [part.pf for part in (self._lead(at) for at in hops if self._wired(at)) if part.pf is not None]
        return sum(known) if len(known) == sum(self._wired(at) for at in hops) else None


COMPUTE = loading
