"""Units that share an outlet, or outlets with one common, form a ring with the audio leads between them.

Why it matters: the ring picks up hum from transformers as an aerial does; its area times the gain that follows is
what is heard. With much gain behind it, it is a warning.
What to do: give each an outlet of its own, or tie the leads close together.
Source: physics: V = 2πfBA. {hum.FIELD_UT} and {hum.LEAST_DB} of instrument level ({hum.NOMINAL_MV}) are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.ground.ground_systems import GroundSystems
from rigc.analysis.ground.ring_hum import OFF_THE_BOARD, Hum, RingHum
from rigc.analysis.ground.ring_words import in_scenarios, ring_words
from rigc.analysis.ground.rings import SHARED, Ring
from rigc.analysis.ground.where_to_break import fed_units, where_to_break
from rigc.analysis.leads.leads import Leads
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.diagnostics.wording import joined, listed
from rigc.facts.hum import FIELD_UT, LEAST_DB, NOMINAL_MV
from rigc.model.rig import Rig
from rigc.model.ways.ground_link import GROUND, Pole
from rigc.traced.figure import Figure
from rigc.traced.units import GAIN

KIND = Kind(
    "shared-supply-ring",
    Level.REMARK,
    __doc__,
    f"a ring through a shared outlet stays, with the gain behind it, below {LEAST_DB} of {NOMINAL_MV} at {FIELD_UT}",
    "physics: V = 2πfBA; the limits are common practice, no source",
)


def shared_supply_ring(rig: Rig, grounds: GroundSystems, hums: RingHum, leads: Leads) -> Iterator[Diagnostic]:
    """One finding for all rings of one outlet, at the loudest and the worst of its scenarios; can't-check where its area or the gain is
    not known."""
    rings: dict[Ring, list[tuple[Hum, tuple[str, ...]]]] = {}
    for state, found in zip(grounds.states, hums.states, strict=True):
        for hum in found:
            if hum.ring.kind == SHARED:
                rings.setdefault(hum.ring, []).append((hum, state.scenarios))
    outlets: dict[object, list[tuple[Hum, str]]] = {}
    for ring, held in rings.items():
        worst = max((hum for hum, _ in held), key=lambda hum: (hum.follows, hum.hertz))
        where = in_scenarios(rig, [name for _, names in held for name in names])
        outlets.setdefault((_common(ring), where, ring.unsure), []).append((worst, where))
    for found_there in outlets.values():
        yield from _findings(rig, leads, [hum for hum, _ in found_there], found_there[0][1])


def _common(ring: Ring) -> Pole:
    """The pole that its units share."""
    ends = [pole for link in ring.links if link.kind == "common" for pole in link.ends]
    return next(pole for pole in ends if pole[1] != GROUND)


def _findings(rig: Rig, leads: Leads, hums: list[Hum], where: str) -> Iterator[Diagnostic]:
    ring = hums[0].ring
    if ring.unsure is not None:
        what, help = ring.unsure
        message = f"{what}; whether {_ring_words(hums)} {'is a ring' if len(hums) == 1 else 'are rings'} can't be checked{where}"
        yield KIND.cant_check(ring.links[0].span, message, subject=_subject(hums), help=help, wants=(ring.unsure[0],))
        return
    yield _told(rig, leads, hums, where)
    unknown = {why: hum for hum in reversed(hums) if not _loud(hum) and (why := _unknown(hum))}
    for why, hum in reversed(unknown.items()):
        if hum.why_not.endswith(OFF_THE_BOARD):
            continue
        message = f"how loud the hum of {ring_words(hum.ring)} is can't be checked: {why}"
        wanted = "write it into the block: gain ___ dB" if hum.gain.unknown else "place both ends of the lead"
        help = f"{wanted}, or measure the hum on the finished board"
        yield KIND.cant_check(hum.ring.links[0].span, message, subject=_subject([hum]), help=help)


def _ring_words(hums: list[Hum]) -> str:
    return "; ".join(ring_words(hum.ring) for hum in hums)


def _subject(hums: list[Hum]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(name for hum in hums for name in (*hum.ring.things, *hum.ring.marks)))


def _loud(hum: Hum) -> bool:
    return hum.level_db is not None and hum.level_db + hum.follows > LEAST_DB.value


def _unknown(hum: Hum) -> str:
    if hum.gain.unknown:
        return f"the gain of {listed(hum.gain.unknown)} is not stated"
    return hum.why_not


def _told(rig: Rig, leads: Leads, hums: list[Hum], where: str) -> Diagnostic:
    """All rings of an outlet; the figures are those of the loudest, or of the only one."""
    hum = max(hums, key=lambda each: (each.level_db is not None, (each.level_db or 0.0) + each.follows))
    figures, numbers = "", tuple[Number, ...]()
    if hum.why_not.endswith(OFF_THE_BOARD):
        figures = f"; {hum.why_not}: how loud it hums, only a measurement tells"
    if isinstance(hum.induced, Figure) and isinstance(hum.area, Figure) and isinstance(hum.level, Figure):
        figures = (
            f"; {hum.area.text} m² at {hum.frequency.text} Hz and {FIELD_UT.value:g} µT are {hum.induced.text} µV "
            f"({hum.level.text} dB), "
            f"{'at least ' if hum.gain.unknown else ''}{GAIN.text(hum.follows)} dB of gain follow"
        )
        numbers = (
            Number("area", hum.area, "m²"),
            Number("hum", hum.induced * 1e6, "µV"),
            Number("level", hum.level, "dB"),
            Number("gain", hum.follows, "dB"),
        )
    return KIND.at(
        hum.ring.links[0].span,
        f"a ring through a shared outlet: {ring_words(hum.ring)}{where}{figures}"
        if len(hums) == 1
        else f"{len(hums)} rings through a shared outlet: {_ring_words(hums)}{where}{_of_loudest(hum, figures)}",
        subject=_subject(hums),
        label="shared here",
        numbers=numbers,
        help=where_to_break(rig, leads, hum.ring) if len(hums) == 1 else _apart(hums),
        level=Level.WARNING if _loud(hum) else None,
    )


def _of_loudest(hum: Hum, figures: str) -> str:
    return f"; the loudest ({', '.join(hum.ring.marks)}): {figures[2:]}" if isinstance(hum.level, Figure) else figures


def _apart(hums: list[Hum]) -> str:
    fed = dict.fromkeys(f"'{name}'" for hum in hums for name in fed_units(hum.ring))
    return f"give {joined(list(fed))} an isolated outlet each, or tie the leads of each ring close together"


CHECK = shared_supply_ring
