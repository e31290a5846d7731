"""Section: from what drives it to the next inputs, with every figure of its loading; what is not known is None and named."""

from __future__ import annotations

from functools import cached_property

from rigc.analysis.signal.section_leads import SectionLead
from rigc.analysis.signal.section_walk import PICKUP
from rigc.analysis.signal.source_network import SourceNetwork, bridging_db, corner_hz, parallel, unloaded_hz
from rigc.analysis.signal.state_sections import Where
from rigc.model.jacks import Port
from rigc.record import Record


class Load(Record):
    """An input of a section: what it is there (see `Mode`), its impedance in ohm (inf where nothing loads), and whether its
    unit wants to see the pickup."""

    port: Port
    what: str
    ohm: float | None
    wants_pickup: bool


class Pickup(Record):
    """An instrument's own inductance in H, capacitance in pF, and that of its plain stage lead in pF."""

    henry: float | None
    pf: float | None
    plain_pf: float | None

    def together_pf(self, cable_pf: float | None) -> float | None:
        """Its own capacitance and that of a cable in parallel, in pF; None where one is not known."""
        return None if self.pf is None or cable_pf is None else self.pf + cable_pf

    @property
    def with_plain_pf(self) -> float | None:
        """Its own capacitance and that of its plain stage lead in parallel, in pF."""
        return self.together_pf(self.plain_pf)


class Section(Record):
    """A section of the signal path. `how` is `pickup`, `stage`, `bypassed stage`, `winding`, `track`, `outside` or `unknown`.

    `source_ohm` is what drives it (None for a pickup, whose network is no single resistance), a treadle's track at its
    worst. `branch` is the cable on each of a treadle's jacks beside its wiper. `missing_wire` names what leads lack,
    `missing_end` what inputs and source lack, `missing_own` what the instrument lacks. `through_air`: an instrument plays into a body-pack.
    """

    source: Port
    how: str
    leads: tuple[SectionLead, ...]
    loads: tuple[Load, ...]
    where: tuple[Where, ...]
    source_ohm: float | None
    pickup: Pickup | None
    network: SourceNetwork | None
    plain: SourceNetwork | None
    branch: tuple[tuple[Port, float | None], ...]
    missing_wire: tuple[str, ...]
    missing_end: tuple[str, ...]
    missing_own: tuple[str, ...]
    assumed: bool
    through_air: bool = False

    @property
    def missing(self) -> tuple[str, ...]:
        """Everything that is not known."""
        return tuple(dict.fromkeys((*self.missing_wire, *self.missing_end, *self.missing_own)))

    @property
    def length_m(self) -> float | None:
        """All its leads end to end, in metres; None where the length of one is not known."""
        lengths = [lead.length_mm for lead in self.leads if lead.length_mm is not None]
        return sum(lengths) / 1000 if len(lengths) == len(self.leads) else None

    @cached_property
    def known_pf(self) -> float:
        """The capacitance of the leads of which it is known."""
        return sum(lead.pf for lead in self.leads if lead.pf is not None)

    @property
    def cable_pf(self) -> float | None:
        """The capacitance of all its leads."""
        return None if self.missing_wire else self.known_pf

    @property
    def total_pf(self) -> float | None:
        """Cable and pickup together; of a driven section the cable alone."""
        if self.pickup is None:
            return self.cable_pf
        return self.pickup.together_pf(self.cable_pf)

    @property
    def load_ohm(self) -> float | None:
        """All its inputs in parallel; inf where none loads it."""
        known = tuple(load.ohm for load in self.loads if load.ohm is not None)
        return parallel(known) if len(known) == len(self.loads) else None

    @property
    def unloaded_hz(self) -> float | None:
        """The pickup's ideal resonance with the cable, 1/(2 pi sqrt(L C)): controls and inputs pull it lower."""
        return self._resonance(self.total_pf)

    @property
    def plain_hz(self) -> float | None:
        """The same on the instrument's plain stage lead alone."""
        return self._resonance(None if self.pickup is None else self.pickup.with_plain_pf)

    @property
    def corner_hz(self) -> float | None:
        """The treble corner of a driven section, 1/(2 pi R C)."""
        if self.source_ohm is None or self.cable_pf is None:
            return None
        return corner_hz(self.source_ohm, self.cable_pf)

    @property
    def loss_db(self) -> float | None:
        """The bridging loss of a driven section, at most 0."""
        load = self.load_ohm
        return None if self.source_ohm is None or load is None else bridging_db(self.source_ohm, load)

    @property
    def from_pickup(self) -> bool:
        """Whether a passive instrument drives it."""
        return self.how == PICKUP

    def against_plain_db(self, hertz: float) -> float | None:
        """How much louder or softer than the same guitar on its plain stage lead into the same inputs, in dB; None where one of
        them is not known, or silent."""
        if self.network is None or self.plain is None or self.network.silent or self.plain.silent:
            return None
        return self.network.decibel(hertz) - self.plain.decibel(hertz)

    def _resonance(self, together_pf: float | None) -> float | None:
        if self.pickup is None or self.pickup.henry is None or together_pf is None:
            return None
        return unloaded_hz(self.pickup.henry, together_pf) if self.pickup.henry * together_pf > 0 else None
