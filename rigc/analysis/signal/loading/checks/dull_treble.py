"""The cable behind an output, a winding or a treadle takes the treble away.

Why it matters: the impedance of what drives a lead and the lead's capacitance are a low pass; below 15 kHz it is heard.
What to do: shorten the lead, put a buffer before it, or use a treadle of a lower track.
Where the length of a lead is not known, it is asked for if a lead as long as leads may be would be too much.
Source: physics: 1/(2πRC), a treadle at its worst a quarter of its track; the limit is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import floor, inf, pi

from rigc.analysis.signal.at_limit import over
from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section import Section
from rigc.analysis.signal.loading.section_walk import OUTSIDE, PICKUP
from rigc.analysis.signal.loading.shorter_leads import shorter
from rigc.analysis.signal.loading.source_network import corner_hz
from rigc.analysis.signal.loading.state_words import fact_of, marks, remedy, wire_remedy, worst_told
from rigc.analysis.signal.loading.wrong_tracks import WrongTracks
from rigc.analysis.signal.unit_mode import TRACK
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.diagnostics.figures import ohms
from rigc.diagnostics.wording import listed
from rigc.facts.loading import MOST_CABLE, TREBLE_CORNER_HZ
from rigc.model.rig import Rig
from rigc.model.units.measures import LEAD
from rigc.traced.figure import Figure
from rigc.traced.term import known

KIND = Kind(
    "dull-treble",
    Level.WARNING,
    __doc__,
    "treble corner 1/(2πRC) of every driven section ≥ 15 kHz",
    "physics: 1/(2πRC); the limit is common practice, no source",
)

_FEW = 3
"""Things of one row: so many are told each by itself, with its own figure."""
_LISTED = 6
"""Names that are listed; of more the first and the last."""


def dull_treble(rig: Rig, loading: Loading, tracks: WrongTracks) -> Iterator[Diagnostic]:
    """One finding for each thing that drives too much cable, or for the row of which many do, but for treadles of a wrong track, of which that is told; can't-check where impedance or cable are not
    known."""
    driven = [
        section
        for section in loading.played
        if section.how not in (PICKUP, OUTSIDE) and section.source.thing not in tracks.all
    ]
    dull: dict[str, list[Section]] = {}
    for section in driven:
        if over(TREBLE_CORNER_HZ.value, _corner(section)):
            dull.setdefault(section.source.thing, []).append(section)
    for row in _rows(dull):
        yield _told(rig, loading, {name: dull[name] for name in row})
    rest = [section for section in driven if section.source.thing not in dull]
    lacking = {each.source.thing: each.missing_end[-1] for each in rest if each.source_ohm is None}
    for name, reason in lacking.items():
        yield KIND.cant_check(
            rig.things[name].declared,
            f"the treble corner behind '{name}' can't be checked: {reason}",
            subject=(name,),
            help=remedy(reason),
            asks_for=(fact_of(reason),),
        )
    unknown: dict[tuple[str, ...], list[Section]] = {}
    for each in rest:
        if each.missing_wire and each.source.thing not in lacking and _could_be_dull(each):
            unknown.setdefault(_wire_lacking(rest, each.source.thing), []).append(each)
    for alike in unknown.values():
        yield _cable_unknown(rig, alike)


def _rows(dull: dict[str, list[Section]]) -> list[list[str]]:
    """The things that drive too much, in their order: of a row that is wire when it is off each drives what is left of the same cable, and
    those of a row of more than a few stand together; the others stand alone."""
    cable = {
        name: max(({lead.mark: None for lead in each.leads} for each in sections), key=len)
        for name, sections in dull.items()
    }
    by_end: dict[str, list[list[str]]] = {}
    for name in sorted(dull, key=lambda name: -len(cable[name])):
        rows = by_end.setdefault(next(reversed(cable[name]), ""), [])
        row = next((each for each in rows if cable[name].keys() <= cable[each[0]].keys()), None)
        if row is None:
            rows.append([name])
        else:
            row.append(name)
    many = {row[0]: row for rows in by_end.values() for row in rows if len(row) > _FEW}
    within = {name for row in many.values() for name in row}
    return [many.get(name, [name]) for name in dull if name in many or name not in within]


def _wire_lacking(sections: list[Section], name: str) -> tuple[str, ...]:
    """All that is not known of the leads behind a thing, each once."""
    return tuple(
        dict.fromkeys(reason for each in sections if each.source.thing == name for reason in each.missing_wire)
    )


def _corner(section: Section) -> float:
    """From what is known; what is not could only make it lower."""
    return inf if section.source_ohm is None else corner_hz(section.source_ohm, float(section.known_pf))


def _most_pf(ohm: float) -> float:
    """The capacitance with which the corner of this impedance is just at the limit."""
    return 1e12 / (2 * pi * ohm * TREBLE_CORNER_HZ.value)


def _could_be_dull(section: Section) -> bool:
    """Whether leads of which something is not known, all as long as a lead may be and of the worst cable, would make it so."""
    longest_m = LEAD.high / 1000
    unknown = [lead for lead in section.leads if lead.missing]
    most = sum((known(lead.pf_per_m) or MOST_CABLE.value) * longest_m for lead in unknown)
    ohm = section.source_ohm
    return ohm is None or (ohm > 0 and float(section.known_pf) + float(most) > _most_pf(ohm))


def _told(rig: Rig, loading: Loading, row: dict[str, list[Section]]) -> Diagnostic:
    """Of a row that with the least corner; the others drive parts of the same cable."""
    worst = min((each for sections in row.values() for each in sections), key=_corner)
    name = worst.source.thing
    sections, others = row[name], [each for each in row if each != name]
    told = loading.figures(worst)
    ohm, cable, corner = worst.source_ohm or 0, known(told.cable) or worst.known_pf, _corner(worst)
    if isinstance(told.corner, Figure):
        corner = told.corner
    least = "at least " if worst.missing_wire else ""
    alike = [each for each in sections if _corner(each) == corner and marks(each) == marks(worst)]
    worst_of = ", a quarter of its track" if worst.how == TRACK else ""
    shortened, too = shorter(worst, worst.leads[-1], _most_pf(ohm)), ""
    buffered = f"put a buffer right behind '{name}'"
    if others:
        several = f"{len(others)} more of its row, '{others[0]}' to '{others[-1]}',"
        too = f"; behind {listed(others) if len(others) <= _LISTED else several} it falls below that too"
        if any((each.source_ohm or inf) > ohm for other in others for each in row[other]):
            shortened = ""  # what is short enough for this one is not for that
        buffered = f"put a buffer into the row, so that '{worst.source}' drives no more than {floor(_most_pf(ohm))} pF"
    return KIND.at(
        rig.things[name].declared,
        f"'{worst.source}' ({ohms(ohm)}{worst_of}) drives {least}{float(f'{cable:.4g}'):g} pF of cable ({marks(worst)}): treble falls "
        f"from {corner / 1000:.3g} kHz, below {TREBLE_CORNER_HZ.value / 1000:g} kHz ({worst_told(loading, alike, sections)}){too}",
        subject=(name, *(str(each.source) for each in sections), *others),
        label="drives all this cable",
        numbers=(
            Number("source", ohm, "Ω"),
            Number("cable", cable, "pF"),
            Number("corner", corner, "Hz"),
            Number("limit", TREBLE_CORNER_HZ.value, "Hz"),
        ),
        help=", or ".join(filter(None, (shortened, buffered))),
    )


def _cable_unknown(rig: Rig, sections: list[Section]) -> Diagnostic:
    names = list(dict.fromkeys(section.source.thing for section in sections))
    reasons = dict.fromkeys(reason for section in sections for reason in section.missing_wire)
    return KIND.cant_check(
        rig.things[names[0]].declared,
        f"the treble corner behind {listed(names)} can't be checked: {'; '.join(reasons)}",
        subject=tuple(names),
        help=wire_remedy(reasons, sections),
        wants=tuple(fact_of(reason) for reason in reasons),
    )


CHECK = dull_treble
