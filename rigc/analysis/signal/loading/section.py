"""Section: from what drives it to the next inputs, with what loads it; what is not known is named."""

from __future__ import annotations

from functools import cached_property
from math import inf

from rigc.analysis.signal.loading.section_leads import SectionLead
from rigc.analysis.signal.loading.section_walk import PICKUP
from rigc.analysis.signal.loading.source_network import SourceNetwork, network
from rigc.analysis.signal.loading.state_sections import Where
from rigc.model.jacks import Port
from rigc.model.ways.state_ways import UNKNOWN
from rigc.record import Record
from rigc.traced.means import found, in_parallel, total, total_known
from rigc.traced.term import Term, Traced, Unknown, known


class Load(Record):
    """An input of a section: what it is there (see `Mode`), its impedance in ohm (inf where nothing loads), and whether its
    unit wants to see the pickup. `missing` says why the impedance is not known."""

    port: Port
    what: str
    impedance: Traced
    wants_pickup: bool
    missing: str

    @property
    def ohm(self) -> float | None:
        """Its impedance as a plain number; None where it is not known."""
        return None if isinstance(self.impedance, Unknown) else float(self.impedance)


class Pickup(Record):
    """A passive instrument: inductance in H, resistance in ohm, capacitance in pF; the tracks of its controls in ohm, how far
    they are `turned` up (1 is full) and the tone control's capacitor in nF; the capacitance of its plain stage lead in pF.
    """

    instrument: str
    henry: Traced
    ohm: Traced
    pf: Traced
    volume_ohm: Traced
    turned: Traced
    tone_ohm: Traced
    tone_turned: Traced
    tone_nf: Traced
    plain_pf: Traced

    @cached_property
    def circuit(self) -> tuple[Traced, ...]:
        """What of a `SourceNetwork` is its own, in that order."""
        controls = (self.volume_ohm, self.turned, self.tone_ohm, self.tone_turned, self.tone_nf * 1000)
        return (self.henry, self.ohm, self.pf, *controls)


class Section(Record):
    """A section of the signal path. `how` is `pickup`, `stage`, `bypassed stage`, `winding`, `track`, `outside` or `unknown`.

    `name` is that of its figures. `driver` is the impedance in ohm that drives it (None for a pickup, whose network is no
    single resistance), a treadle's track at its worst. `branch` is the cable on each of a treadle's jacks beside its wiper,
    in pF. `missing_wire` names what leads lack, `missing_end` what inputs and source lack, `missing_own` what the instrument
    lacks. `through_air`: an instrument plays into a body-pack.
    """

    name: str
    source: Port
    how: str
    leads: tuple[SectionLead, ...]
    loads: tuple[Load, ...]
    where: tuple[Where, ...]
    driver: Traced | None
    pickup: Pickup | None
    branch: tuple[tuple[Port, Traced], ...]
    missing_wire: tuple[str, ...]
    missing_end: tuple[str, ...]
    missing_own: tuple[str, ...]
    through_air: bool = False

    @property
    def missing(self) -> tuple[str, ...]:
        """Everything that is not known."""
        return tuple(dict.fromkeys((*self.missing_wire, *self.missing_end, *self.missing_own)))

    @cached_property
    def known_pf(self) -> Term:
        """The capacitance of the leads of which it is known."""
        return total_known(lead.pf for lead in self.leads)

    @cached_property
    def cable_pf(self) -> Traced:
        """The capacitance of all its leads; not known either where it is not known which leads are its own."""
        if not self.missing_wire:
            return self.known_pf
        unsure = (load.impedance for load in self.loads if load.what == UNKNOWN)
        made: Traced = total((*(lead.pf for lead in self.leads), *unsure))
        return made

    @cached_property
    def load_ohm(self) -> Traced:
        """All its inputs side by side; infinite where none loads it."""
        loading = [load.impedance for load in self.loads if load.ohm != inf]
        made: Traced = in_parallel(*loading) if loading else found(inf, lambda: "no input loads it")
        return made

    @cached_property
    def judged_ohm(self) -> float:
        """The known inputs side by side, without those that want to see the pickup; infinite where none loads it."""
        return float(in_parallel(*(each.ohm for each in self.loads if each.ohm is not None and not each.wants_pickup)))

    @property
    def bridging(self) -> float:
        """How many times the source those are; what is not known could only make it smaller. Infinite of a source that is not
        known."""
        return inf if self.source_ohm is None else self.judged_ohm / self.source_ohm

    @property
    def source_ohm(self) -> float | None:
        """What drives it, as a plain number; None where it is not known, and of a pickup."""
        return None if self.driver is None or isinstance(self.driver, Unknown) else float(self.driver)

    @property
    def from_pickup(self) -> bool:
        """Whether a passive instrument drives it."""
        return self.how == PICKUP

    @property
    def network(self) -> SourceNetwork | None:
        """The whole circuit in front of and behind an instrument's jack; None where a part is not known."""
        return self._network(self.cable_pf)

    @property
    def plain(self) -> SourceNetwork | None:
        """The same with the instrument's plain stage lead alone, into the same inputs."""
        return None if self.pickup is None else self._network(self.pickup.plain_pf)

    def _network(self, cable_pf: Traced) -> SourceNetwork | None:
        if self.pickup is None:
            return None
        parts = [known(part) for part in (*self.pickup.circuit, cable_pf, self.load_ohm)]
        numbers = [float(part) for part in parts if part is not None]
        return network(*numbers) if len(numbers) == len(parts) else None
