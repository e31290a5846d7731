"""An instrument is much brighter through its wireless, or another short lead, than on its plain stage lead.

Why it matters: the pickup sees a metre of cable instead of six; its resonance rises, and the player finds the board harsh.
What to do: set the receiver's cable simulation, or expect it brighter and set the tone by ear.
Source: physics: 1/(2π√(LC)); the factor is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.at_limit import over
from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section_figures import PickupFigures
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.diagnostics.wording import listed
from rigc.facts.loading import BRIGHTER
from rigc.model.rig import Rig
from rigc.model.things import Instrument
from rigc.traced.term import known

KIND = Kind(
    "brighter-guitar",
    Level.REMARK,
    __doc__,
    "unloaded resonance ≤ 1.25 times that on the plain stage lead",
    "physics: 1/(2π√(LC)); the factor is common practice, no source",
)


def brighter_guitar(rig: Rig, loading: Loading) -> Iterator[Diagnostic]:
    """One remark for each instrument, with the state in which it differs most; can't-check where a fact is missing."""
    for name in rig.instruments:
        played = [loading.figures(each).by_pickup for each in loading.played if each.source.thing == name]
        mine = [each for each in played if each is not None]
        told = [each for each in mine if known(each.brighter) is not None]
        worst = max(told, key=lambda each: known(each.brighter) or 0, default=None)
        if worst is not None and over(known(worst.brighter) or 0, BRIGHTER.value):
            yield _told(rig, worst)
        elif len(told) < len(mine):
            reasons = _lacking(rig, next(each for each in mine if known(each.brighter) is None))
            if reasons:
                yield KIND.cant_check(
                    rig.instruments[name].declared,
                    f"whether '{name}' is brighter than on its plain stage lead can't be checked: {'; '.join(reasons)}",
                    subject=(name,),
                    help=_way_out(rig.instruments[name]),
                )


def _way_out(instrument: Instrument) -> str:
    if instrument.inductance_h is None:
        return f"measure it and write it in '{instrument.name}', for example `inductance 4.2 H`"
    if instrument.capacitance_pf is None:
        return f"measure it and write it in '{instrument.name}', for example `capacitance 120 pF`"
    return f"write it in '{instrument.name}', for example `plain lead 6 m of stage-coax`"


def _lacking(rig: Rig, told: PickupFigures) -> tuple[str, ...]:
    """What is missing to compare; nothing where the instrument plays on its own stage lead and on no other."""
    section = told.figures.section
    instrument = rig.instruments[section.source.thing]
    if instrument.plain_mm is None and not section.through_air:
        return ()
    own = [each for each in section.missing_own if "capacitance" in each or "inductance" in each]
    plain = known(told.pickup.plain_pf) is None
    lead = [f"the plain stage lead of '{instrument.name}', or its cable, is not said"] if plain else []
    return (*section.missing_wire, *own, *lead)


def _told(rig: Rig, told: PickupFigures) -> Diagnostic:
    section = told.figures.section
    name, until = section.source.thing, listed(dict.fromkeys(load.port.thing for load in section.loads))
    own, plain, factor = (known(each) or 0 for each in (told.resonance, told.plain_resonance, told.brighter))
    return KIND.at(
        rig.instruments[name].declared,
        f"'{name}' is brighter into {until} than on its plain stage lead: unloaded, it resonates at {own:.0f} instead of "
        f"{plain:.0f} Hz, a factor of {factor:.2f}",
        subject=(name,),
        label="a shorter lead than its plain one",
        numbers=(
            Number("resonance", own, "Hz"),
            Number("on the plain lead", plain, "Hz"),
            Number("factor", factor, ""),
        ),
        help="set the receiver's cable simulation"
        if section.through_air
        else "expect it brighter, and set the tone by ear",
    )


CHECK = brighter_guitar
