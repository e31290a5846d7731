"""A reading is expected of test 5 or 6 that is not the voltage which stands there.

Why it matters: whoever tests by the sheet passes a plug of the wrong voltage, or sends a good supply away.
What to do: correct the number, or the outlet's setting.
Limits: what is expected without load (test 5) lies between {readings.OFF_LOAD_LOW_V[9].value} and {readings.OFF_LOAD_HIGH_V[9]} at 9 V, {readings.OFF_LOAD_LOW_V[12].value} and {readings.OFF_LOAD_HIGH_V[12].value} at 12 V, {readings.OFF_LOAD_LOW_V[18].value} and {readings.OFF_LOAD_HIGH_V[18].value} at 18 V, unregulated up to {readings.UNREGULATED_SHARE} times;
under load (test 6) it is {readings.ON_LOAD_PCT} of nominal at least, and no more than without. Nothing is told where the voltage is not known.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.tests.limits import Board, rule_limit
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.model.rig import Rig

KIND = Kind(
    "unfit-expectation",
    Level.WARNING,
    __doc__,
    "what test 5 or 6 is expected to read is the voltage that stands there",
    "common practice, no source",
)
OFF_LOAD, ON_LOAD = 5, 6


def unfit_expectation(rig: Rig, power: PowerAssignment, leads: Leads, lengths: CableLengths) -> Iterator[Diagnostic]:
    """One finding for each such expectation."""
    board = Board(rig, power, leads, lengths, ())
    for each in rig.expected:
        if each.test not in (OFF_LOAD, ON_LOAD) or each.unit != "V":
            continue
        nominal = board.nominal(each.point)
        low, high = rule_limit(board, each.test, each.point).low, rule_limit(board, OFF_LOAD, each.point).high
        if nominal is None or low is None or high is None or low <= each.reading.value <= high:
            continue
        yield KIND.at(
            each.span,
            f"test {each.test} at {each.point} expects {each.reading.typed}, and {nominal.volts:g} V stands there",
            subject=(each.point, f"test {each.test}"),
            label="expected here",
            also=(Label(nominal.supply.declared, f"'{nominal.supply.name}' gives it"),),
            numbers=(
                Number("expected", each.reading.value, "V"),
                Number("least", low, "V"),
                Number("most", high, "V"),
            ),
            help=f"write what a good plug reads, {low:g} to {high:g} V; or set the outlet to the voltage that is meant",
        )


CHECK = unfit_expectation
