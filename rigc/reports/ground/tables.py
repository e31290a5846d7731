"""States of the grounds, hum and breaks -> the tables of the ground sheet."""

from __future__ import annotations

from rigc.analysis.ground.breaks import breaks
from rigc.analysis.ground.ground_systems import GroundSystems
from rigc.analysis.ground.lift_positions import LiftPosition, lift_positions
from rigc.analysis.ground.ring_hum import Hum, RingHum
from rigc.analysis.ground.ring_words import ring_words
from rigc.analysis.ground.states import GroundState, GroundSystem
from rigc.analysis.ground.where_to_break import where_to_break
from rigc.analysis.leads.leads import Leads
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.reports.schedule.worst_first import worst_first
from rigc.traced.figure import Figure, assumed

_SCENARIO = Column("scenario")


def systems_table(grounds: GroundSystems) -> Table:
    """Each joined system with its members and its earth references: exactly one is right."""
    columns = (_SCENARIO, Column("system"), Column("members"), Column("earth references"), Column("verdict"))
    rows = [
        Row((_scenarios(state), Cell(str(number)), Cell(", ".join(system.members)), *_earths(system, count)))
        for state, counts in zip(grounds.states, grounds.earths, strict=True)
        for number, (system, count) in enumerate(zip(state.systems, counts, strict=True), 1)
    ]
    return Table("systems", "Joined grounds", columns, worst_first(rows), empty="no grounds are joined")


def _earths(system: GroundSystem, count: Figure) -> tuple[Cell, Cell]:
    named = f"{count.text}: {', '.join(system.earths)}" if count else "0"
    if system.unknown:
        return Cell(f"{named}; not stated: {', '.join(system.unknown)}"), Cell("?")
    if len(system.members) == 1 and not count:
        return Cell(named), Cell("on its own")
    if system.silent and not count:
        return Cell(named), Cell("none; no sound")
    return Cell(named), Cell("one, right") if count == 1 else Cell("none" if not count else "too many", mark="FAIL")


def rings_table(rig: Rig, grounds: GroundSystems, leads: Leads) -> Table:
    """Every ring that is left; pairs are counted in one row, as they are silent."""
    columns = (_SCENARIO, Column("kind"), Column("ring"), Column("where to break it"))
    rows = []
    for state in grounds.states:
        for ring in state.rings:
            if ring.matters:
                texts = (ring.kind, ring_words(ring), where_to_break(rig, leads, ring, state.links))
                rows.append(Row((_scenarios(state), *(Cell(text) for text in texts))))
        rows += _pairs(state)
    return Table("rings", "Rings that are left", columns, worst_first(rows), empty="no ring is left")


def _pairs(state: GroundState) -> list[Row]:
    pairs = [" + ".join(ring.marks) for ring in state.rings if not ring.matters]
    if not pairs:
        return []
    words = f"{len(pairs)} pair{'s' if len(pairs) > 1 else ''}: {', '.join(pairs)}"
    return [Row((_scenarios(state), Cell("pair"), Cell(words), Cell("silent: keep both leads in one bundle")))]


def hum_table(grounds: GroundSystems, hums: RingHum) -> Table:
    """What each ring that matters picks up, and the gain behind it; `?` where its leads have no way on the deck."""
    columns = (
        _SCENARIO,
        Column("leads"),
        Column("area", "m²", number=True),
        Column("frequency", "Hz", number=True),
        Column("hum at 1 µT", "µV", number=True, key="hum_uv"),
        Column("of 77.5 mV", "dB", number=True, key="hum_db"),
        Column("gain that follows", "dB", number=True, key="gain_db"),
        Column("beside it"),
    )
    rows = [
        Row((_scenarios(state), *_figures(hum)))
        for state, found in zip(grounds.states, hums.states, strict=True)
        for hum in found
    ]
    return Table("hum", "What the rings pick up", columns, tuple(rows), empty="nothing: every ring is a silent pair")


def _figures(hum: Hum) -> tuple[Cell, ...]:
    return (
        Cell(", ".join(hum.ring.marks)),
        *(figure_cell(each) for each in (hum.area, hum.frequency, hum.induced, hum.level)),
        Cell(hum.follows.text, mark="assumed" if assumed(hum.follows) else ""),
        Cell(_beside(hum)),
    )


def _beside(hum: Hum) -> str:
    if hum.why_not:
        return hum.why_not
    if hum.coupled is None:
        return "no lead"
    near = hum.coupled.beside
    return (
        f"{near.mark} for {near.long_mm:.0f} mm: {hum.coupled.henry * 1e9:.1f} nH, "
        f"{hum.coupled.volts_per_ampere * 1e6:.2f} µV for each ampere of hum in it"
    )


def breaks_table(rig: Rig, grounds: GroundSystems, leads: Leads) -> Table:
    """Where grounds are kept apart, and every lift with its position."""
    columns = (_SCENARIO, Column("at"), Column("how"), Column("leads"), Column("beyond"), Column("lift position"))
    rows = []
    for state in grounds.states:
        scenario = rig.scenarios[state.scenarios[0]] if state.scenarios else None
        lifts = {str(each.port): _position(each) for each in lift_positions(rig, scenario)}
        for cut in breaks(rig, leads, scenario):
            position = lifts.pop(str(cut.port), "lifted" if "lifted" in cut.how else "")
            texts = (str(cut.port), cut.how, " + ".join(cut.marks), cut.beyond, position)
            rows.append(Row((_scenarios(state), *(Cell(text) for text in texts))))
        for port, position in lifts.items():
            rows.append(Row((_scenarios(state), Cell(port), Cell("ground lift"), Cell(""), Cell(""), Cell(position))))
    return Table("breaks", "Where grounds are kept apart", columns, tuple(rows), empty="nowhere")


def _position(lift: LiftPosition) -> str:
    """The position, and whether it is the one in which it came."""
    if lift.position == "unknown":
        return "not known"
    return lift.position if lift.stated else f"{lift.position}, as it comes"


def _scenarios(state: GroundState) -> Cell:
    return Cell(", ".join(state.scenarios) or "any")
