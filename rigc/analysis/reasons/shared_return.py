"""What units on one outlet may put on each other's ground: `mill5.o2.return.current`, `.length`, `.mohm`, `.noise`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.lead_drops import LeadDrops
from rigc.analysis.computations.shared_returns import SharedReturn, SharedReturns
from rigc.analysis.reasons.inputs import derived
from rigc.analysis.reasons.operands import operands
from rigc.diagnostics.decimals import decimals
from rigc.traced.reason import Reason, told

_OHM = "physics: Ohm's law"


def shared_return(returns: SharedReturns, drops: LeadDrops) -> Iterator[Reason]:
    """Four reasons for each outlet on which several leads stand."""
    for each in returns.all:
        current, length, ohm = _current(each, drops), _length(each, drops), _ohm(each, drops)
        yield from (current, length, ohm, _noise(each, current, ohm))


def _current(each: SharedReturn, drops: LeadDrops) -> Reason:
    value = told(each.ma)
    inputs = tuple(derived(mark, told(drops.all[mark].ma), "mA", f"{mark}.current") for mark in each.marks)
    formula = "for want of the current of one of them"
    if each.ma is not None:
        parts = operands(
            lambda *parts: decimals(sum(parts)), *(drops.all[mark].ma or 0.0 for mark in each.marks), least=1
        )
        formula = f"{' + '.join(parts)} = {value}"
    rule = "the currents of all its units together"
    return Reason(f"{each.outlet}.return.current", value, "mA", formula, inputs, rule, "arithmetic on stated values")


def _length(each: SharedReturn, drops: LeadDrops) -> Reason:
    value = told(each.length_mm)
    inputs = tuple(derived(mark, told(drops.all[mark].length_mm), "mm", f"{mark}.wire-length") for mark in each.marks)
    formula = f"the shorter of {', '.join(one.value for one in inputs)}: {value}"
    rule = "where the legs part is not stated: the shorter one may be shared whole"
    return Reason(f"{each.outlet}.return.length", value, "mm", formula, inputs, rule, "common practice, no source")


def _ohm(each: SharedReturn, drops: LeadDrops) -> Reason:
    value = told(None if each.ohm is None else each.ohm * 1000)
    inputs = tuple(
        derived(f"{mark}, there and back", told(drops.all[mark].loop_mohm), "mΩ", f"{mark}.mohm") for mark in each.marks
    )
    formula = "for want of a leg's length or conductor"
    if each.ohm is not None and each.length_mm:
        length, metres = told(each.length_mm), each.length_mm / 1000
        (metre,) = operands(lambda milliohm: decimals(metres * milliohm), each.ohm / metres * 1000)
        formula = f"{length} / 1000 × {metre} = {value}"
    rule = "one conductor of what all legs share, of the thinnest of their wires"
    return Reason(f"{each.outlet}.return.mohm", value, "mΩ", formula, inputs, rule, _OHM)


def _noise(each: SharedReturn, current: Reason, ohm: Reason) -> Reason:
    value = told(each.millivolts, 2)
    inputs = (derived("current", current.value, "mA", current.name), derived("conductor", ohm.value, "mΩ", ohm.name))
    formula = "for want of the current or the resistance"
    if each.ma is not None and each.ohm is not None:
        parts = operands(lambda ma, milliohm: decimals(ma * milliohm / 1000, 2), each.ma, each.ohm * 1000, least=1)
        formula = f"{' × '.join(parts)} / 1000 = {value}"
    rule = "noise = current × resistance, at most: no more of it is heard than the currents vary"
    return Reason(f"{each.outlet}.return.noise", value, "mV", formula, inputs, rule, _OHM)


REASONS = shared_return
