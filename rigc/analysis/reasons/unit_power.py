"""What a unit needs and where it gets it: `hedge.volts`, `hedge.draws`, `.starts`, `.outlet`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.power.outlet_fit import needs_outlet
from rigc.analysis.power.used_units import used_units
from rigc.analysis.reasons.as_stated import as_stated
from rigc.analysis.reasons.inputs import derived, placed
from rigc.diagnostics.figures import plain
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.traced.reason import Reason

_CHOICE = (
    "a stated feed stands; else an outlet of `others from` that fits in voltage, kind, polarity and plug, within the load "
    "limits, of its own rather than shared, the hardest unit first"
)

_UNFED = {
    "no word": "nothing in the source feeds it",
    "no outlets": "the supplies to choose from have no outlets",
    "unknown needs": "what it needs is not stated",
    "rivals": "too few outlets suit it and its rivals",
    "kept free": "an outlet that suits it is to be kept free",
    "ceiling": "the ceiling of a supply stands against it",
    "together": "each unit alone would find an outlet, all together do not",
    "undecided": "the search for an outlet ended undecided",
}


def unit_power(rig: Rig, power: PowerAssignment) -> Iterator[Reason]:
    """Three reasons, four where its current at switch-on is stated, for each unit that takes power from an outlet or should."""
    for unit in used_units(rig):
        if needs_outlet(unit) or power.of(unit.name) is not None:
            yield as_stated(f"{unit.name}.volts", f"what voltage {unit.name} needs", unit.volts, "V")
            yield as_stated(f"{unit.name}.draws", f"what current {unit.name} draws", unit.draws_ma, "mA")
            if unit.starts_ma is not None:
                yield as_stated(
                    f"{unit.name}.starts", f"what current {unit.name} draws at switch-on", unit.starts_ma, "mA"
                )
            yield _outlet(rig, power, unit)


def _outlet(rig: Rig, power: PowerAssignment, unit: Unit) -> Reason:
    feed = power.of(unit.name)
    needs = [
        derived(f"{unit.name} needs", plain(unit.volts.value), "V", f"{unit.name}.volts") if unit.volts else None,
        derived(f"{unit.name} draws", plain(unit.draws_ma.value), "mA", f"{unit.name}.draws")
        if unit.draws_ma
        else None,
    ]
    inputs = tuple(each for each in needs if each is not None)
    name = f"{unit.name}.outlet"
    if feed is None:
        why = next(
            (_UNFED.get(each.why, each.why) for each in power.unfed if unit.name in each.units), "nothing feeds it"
        )
        here = placed(unit.name, "declared", unit.declared)
        return Reason(name, "none", "", why, (here, *inputs), _CHOICE, "common practice, no source")
    value = " and ".join(str(port) for port in feed.outlets) + (f" ({feed.how})" if feed.how else "")
    source = placed(
        "feed",
        "stated" if feed.stated else f"chosen from {', '.join(rig.power.others)}",
        feed.span if feed.stated else rig.power.others_span,
    )
    settings = tuple(
        derived(f"{port} set to", plain(power.loads[port].volts), "V", f"{port}.volts") for port in feed.outlets
    )
    formula = f"{unit.name} from {value}, {'as stated' if feed.stated else 'chosen'}"
    return Reason(name, value, "", formula, (source, *inputs, *settings), _CHOICE, "common practice, no source")


REASONS = unit_power
