"""A lead that a pickup drives runs long beside a d.c. lead, or beside an a.c. lead at all.

Why it matters: before the first active input nothing drives the lead firmly, and everything after it lifts what it hears.
What to do: give the classes lanes of their own (`lane dc 60 mm`), or tie the d.c. lead elsewhere; let them cross squarely.
At pedal voltages this is good habit, not law.
Source: common practice, no source; geometry on stated places.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.routes.crossings import Crossing, Crossings
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.facts.separation import BESIDE_AC_MM, BESIDE_DC_MM, LONG_MM

KIND = Kind(
    "lead-beside-power",
    Level.REMARK,
    __doc__,
    f"a lead driven by a pickup: at most {LONG_MM} within {BESIDE_DC_MM} of a d.c. lead, nothing within {BESIDE_AC_MM} of an a.c. lead",
    "common practice, no source; geometry on stated places",
)
_HAIR_MM = 1e-6


def lead_beside_power(crossings: Crossings) -> Iterator[Diagnostic]:
    """One finding for each such lead, with all that it runs beside."""
    found: dict[str, list[Crossing]] = {}
    for each in crossings.all:
        most = LONG_MM.value if each.other.signal == "dc" else 0.0
        if each.hearing and not each.is_tied and each.parallel_mm - most > _HAIR_MM:
            found.setdefault(each.one.mark, []).append(each)
    yield from map(_told, found.values())


def _told(found: list[Crossing]) -> Diagnostic:
    lead = found[0].one
    runs = ", ".join(f"{each.parallel_mm:g} mm beside {each.other.mark} ({_class(each)})" for each in found)
    nearest = min(each.nearest_mm for each in found)
    return KIND.at(
        lead.span,
        f"{lead.mark} runs {runs}, {nearest:g} mm away at the nearest; in the state '{found[0].hearing}' a pickup drives it",
        subject=(lead.mark, *(each.other.mark for each in found)),
        label="this lead",
        also=tuple(Label(each.other.span, each.other.mark) for each in found),
        numbers=tuple(Number(each.other.mark, each.parallel_mm, "mm") for each in found),
        help=f"part them by {_apart(found):g} mm: state a lane for one of the classes",
    )


def _class(each: Crossing) -> str:
    return {"dc": "d.c.", "ac": "a.c."}.get(each.other.signal, each.other.signal)


def _apart(found: list[Crossing]) -> float:
    return max(BESIDE_DC_MM.value if each.other.signal == "dc" else BESIDE_AC_MM.value for each in found)


CHECK = lead_beside_power
