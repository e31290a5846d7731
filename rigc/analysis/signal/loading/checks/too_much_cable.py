"""A passive instrument drives too much cable before the first active input, in some state.

Why it matters: cable is a capacitor across the pickup; its resonance falls, and the guitar sounds dull. A true-bypass
unit that is off is only more cable, so what counts is the state; without power nobody plays, and that is none.
What to do: put a buffer behind the first lead, or use shorter leads or cable of less capacitance.
Source: common practice, no source. `limit capacitance` in the rig block sets another limit; a passive treadle counts full up.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.at_limit import over
from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section import Section
from rigc.analysis.signal.loading.section_figures import SectionFigures, resonance
from rigc.analysis.signal.loading.shorter_leads import of_better_cable, shorter
from rigc.analysis.signal.loading.state_words import fact_of, marks, wire_remedy, worst_told
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.facts.loading import CABLE_LIMIT
from rigc.model.rig import Rig
from rigc.traced.given import limit
from rigc.traced.term import Term, known

KIND = Kind(
    "too-much-cable",
    Level.WARNING,
    __doc__,
    f"cable between a passive instrument and the first active input ≤ {CABLE_LIMIT} (or the limit declared), pickup not counted",
    "common practice, no source",
    about=1,
)


def too_much_cable(rig: Rig, loading: Loading) -> Iterator[Diagnostic]:
    """One finding for each instrument, with its worst state; can't-check where not all is known and the rest is within."""
    stated, most = rig.limit("capacitance"), limit(rig, "capacitance", CABLE_LIMIT)
    for name in rig.instruments:
        mine = [section for section in loading.played if section.from_pickup and section.source.thing == name]
        excess = [section for section in mine if over(section.known_pf, float(most))]
        unsure = tuple(dict.fromkeys(reason for section in mine for reason in section.missing_wire))
        if excess:
            also = () if stated is None else (Label(stated.span, "limit declared here"),)
            yield _told(rig, loading, excess, most, also)
        elif unsure:
            yield KIND.cant_check(
                rig.instruments[name].declared,
                f"how much cable '{name}' drives can't be checked: {'; '.join(unsure)}",
                subject=(name,),
                help=wire_remedy(unsure, mine),
                wants=tuple(map(fact_of, unsure)),
            )


def _told(rig: Rig, loading: Loading, excess: list[Section], most: Term, also: tuple[Label, ...]) -> Diagnostic:
    worst = max(excess, key=lambda section: section.known_pf)
    name, told = worst.source.thing, loading.figures(worst)
    cable = known(told.cable) or worst.known_pf
    least = "at least " if worst.missing_wire else ""
    alike = [each for each in excess if each.known_pf == worst.known_pf and marks(each) == marks(worst)]
    return KIND.at(
        rig.instruments[name].declared,
        f"'{name}' drives {least}{cable:.4g} pF of cable ({marks(worst)}), more than {most:g} pF"
        f"{_resonances(told)} ({worst_told(loading, alike, excess)})",
        subject=(name, *(lead.mark for lead in worst.leads)),
        label="drives all this cable",
        also=also,
        numbers=(Number("cable", cable, "pF"), Number("limit", most, "pF")),
        help=_way_out(worst, most),
    )


def _resonances(told: SectionFigures) -> str:
    first, pickup = told.section.leads[0], told.by_pickup
    if pickup is None or len(told.section.leads) == 1:
        return ""
    own, alone = known(pickup.resonance), known(resonance(pickup.pickup.henry, pickup.pickup.pf + first.pf))
    if own is None or alone is None:
        return ""
    return f": unloaded, it resonates at {own:.0f} Hz instead of {alone:.0f} Hz behind a buffer after {first.mark}"


def _way_out(section: Section, most: Term) -> str:
    first = section.leads[0]
    pf = known(first.pf)
    if len(section.leads) > 1 and pf is not None and not over(pf, most):
        return f"put a buffer right behind {first.mark} ({pf:.4g} pF)"
    ways = shorter(section, first, float(most)), of_better_cable(section, first, float(most))
    return ", or ".join(filter(None, ways)) or f"shorten {first.mark}, or make it of cable of less capacitance"


CHECK = too_much_cable
