"""What an amount may be off by, as written (`+- 10 %`, `from 40 to 60 mA`) -> a spread in the model's unit, or a finding."""

from __future__ import annotations

from collections.abc import Callable

from rigc.diagnostics.diagnostic import Diagnostic, Report
from rigc.diagnostics.mend import Mend, Replace
from rigc.model.fact import Spread
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY
from rigc.model.units.measures import Measure
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Amount, UpTo, Word

_PERCENT = ("percent", "pct", "pc", "Percent", "PERCENT", "prozent")
_LOGARITHMIC = ("dB", "dBu")
_OF_NO_SHARE = {"dB": "dB", "dBu": "dB", "°C": "°C"}
"""Units whose nought is no nothing, so that a share of a number in them means nothing; and the unit of a difference."""


def stated_spread(
    typed: str,
    unit: Word,
    value: float,
    said: nodes.Spread,
    measure: Measure,
    report: Report,
    scale: Callable[[Word, str], float | None],
) -> Spread | None:
    """The spread of an amount `typed` in `unit`, whose value is in the measure's unit; None after a finding.

    `scale` tells what a number in a unit is multiplied by to be in the measure's; None after the finding that it can't be.
    """
    own = said.unit or (unit if unit.span.start > said.span.start else None)
    if own is None:
        report(_no_unit(said, unit, measure))
        return None
    if float(said.number.text) < 0:
        report(_negative(said))
        return None
    off = _off(said, own, value, measure, report, scale)
    if off is None:
        return None
    if own.text == "%" and measure.unit != "%" and not value and off == 0 != float(said.number.text):
        report(_share_of_nothing(f"{typed} {said}", said, unit, measure))
        return None
    least, most = float(f"{value - off:.12g}"), float(f"{value + off:.12g}")
    if least < 0 <= measure.low:
        report(_below_nothing(f"{typed} {said}", said, unit, measure))
        return None
    if most > measure.high:
        report(_beyond(f"{typed} {said}", said, measure))
        return None
    return Spread(least, most, f"± {said.number} {own}")


def upside_down(amount: Amount) -> Diagnostic:
    """The finding on a range whose first end is the greater."""
    assert amount.spread is not None
    low, high = amount.number, amount.spread.number
    ends = [(low, amount.unit), (high, amount.spread.unit)]
    turned = " to ".join(f"{number}{f' {unit}' if unit else ''}" for number, unit in _turned(ends))
    return WRONG_QUANTITY.at(
        amount.span,
        f"'{amount}' runs from the higher to the lower",
        label="upside down",
        mends=(
            Mend(
                f"write from {turned}",
                tuple(
                    Replace(old.span, new.text)
                    for (a, b), (c, d) in zip(ends, _turned(ends), strict=True)
                    for old, new in ((a, c), (b, d))
                    if old is not None and new is not None and old is not new
                ),
            ),
        ),
    )


def without_width(amount: Amount) -> Diagnostic:
    """The finding on a range whose two ends are one number."""
    assert amount.spread is not None
    unit = amount.spread.unit or amount.unit
    one = f"{amount.spread.number}{f' {unit}' if unit else ''}"
    return WRONG_QUANTITY.at(
        amount.span,
        f"'{amount}' goes from a number to the same number",
        label="a range without width",
        mends=(Mend(f"write {one}", (Replace(amount.span, one),)),),
        help="write the other end, if it may be off",
    )


def _turned(ends: list[tuple[Word, Word | None]]) -> list[tuple[Word, Word | None]]:
    """The two ends the other way round; a unit that both share stays where it is."""
    (low, one), (high, other) = ends
    return [(high, other), (low, one)] if one is not None else [(high, one), (low, other)]


def without_spread(amount: Amount, measure: Measure, report: Report) -> Amount:
    """An amount that is decided, or held as it is written: a spread has no meaning there, which is told and left out."""
    said = amount.spread
    if said is None:
        return amount
    label = "one number goes here, without a spread"
    if isinstance(said, UpTo):
        report(
            WRONG_QUANTITY.at(
                amount.span,
                f"'{amount}' has no meaning here: {measure.name} is taken here as it is written",
                label=label,
                help=f"write one number, for example {amount.number} {amount.own_unit or measure.unit}",
            )
        )
    else:
        report(
            WRONG_QUANTITY.at(
                said.span,
                f"'{said}' has no meaning here: {measure.name} is taken here as it is written",
                label=label,
                mends=(Mend(f"delete '{said}'", (Replace(_with_blank(said.span), ""),)),),
            )
        )
    return Amount(amount.number, amount.own_unit, None, amount.span)


def mains_without_spread(amount: Amount | None, report: Report) -> Amount | None:
    """The voltage of a mains statement, where a percentage has a form of its own: `within 10 %`."""
    said = None if amount is None else amount.spread
    if amount is None or said is None or isinstance(said, UpTo) or said.unit is None or said.unit.text != "%":
        return amount
    report(
        WRONG_QUANTITY.at(
            said.span,
            f"'{said}' is written within {said.number} % behind a mains voltage",
            label="this",
            mends=(Mend(f"write within {said.number} %", (Replace(said.span, f"within {said.number} %"),)),),
        )
    )
    return Amount(amount.number, amount.own_unit, None, amount.span)


def _with_blank(span: Span) -> Span:
    start = span.start
    while span.source.text[start - 1 : start] in (" ", "\t"):
        start -= 1
    return Span(span.source, start, span.end)


def _off(
    said: nodes.Spread,
    unit: Word,
    value: float,
    measure: Measure,
    report: Report,
    scale: Callable[[Word, str], float | None],
) -> float | None:
    """How far off, in the measure's unit. A percentage is of the value, behind a percentage it is in points."""
    number = float(said.number.text)
    if unit.text == "%" and measure.unit != "%":
        if measure.unit not in _OF_NO_SHARE:
            return abs(value) * number / 100
        report(_no_share(said, measure))
        return None
    if measure.unit in _LOGARITHMIC and unit.text in _LOGARITHMIC:
        return number
    if unit.text in _PERCENT:
        report(_spelled(unit))
        return None
    found = scale(unit, f"{said.number} {unit}")
    return None if found is None else number * found


def _spelled(unit: Word) -> Diagnostic:
    return WRONG_QUANTITY.at(
        unit.span,
        f"'{unit}' is written % here",
        label="this unit",
        mends=(Mend("write %", (Replace(unit.span, "%"),)),),
    )


def _no_unit(said: nodes.Spread, unit: Word, measure: Measure) -> Diagnostic:
    number = said.number.text
    units = [unit.text] if unit.text == "%" or measure.unit in _OF_NO_SHARE else [unit.text, "%"]
    return WRONG_QUANTITY.at(
        said.span,
        f"'{said}' has no unit: {' or '.join(f'{number} {each}' for each in units)}?",
        label="a number without a unit",
        mends=tuple(
            Mend(f"write +- {number} {each}", (Replace(said.number.span, f"{number} {each}"),)) for each in units
        ),
    )


def _share_of_nothing(amount: str, said: nodes.Spread, unit: Word, measure: Measure) -> Diagnostic:
    return WRONG_QUANTITY.at(
        said.span,
        f"'{amount}' is off by nothing: a share of nothing is nothing",
        label="a percentage of nought",
        mends=(Mend(f"delete '{said}'", (Replace(_with_blank(said.span), ""),)),),
        help=f"write it in {unit}: {f'from 0 to ___ {unit}' if measure.low >= 0 else f'+- ___ {unit}'}",
    )


def _negative(said: nodes.Spread) -> Diagnostic:
    number = said.number.text.lstrip("-")
    return WRONG_QUANTITY.at(
        said.span,
        f"'{said}' is negative; a spread goes both ways",
        label="a negative spread",
        mends=(Mend("delete the minus sign", (Replace(said.number.span, number),)),),
    )


def _below_nothing(amount: str, said: nodes.Spread, unit: Word, measure: Measure) -> Diagnostic:
    return WRONG_QUANTITY.at(
        said.span,
        f"'{amount}' reaches below nothing; {measure.name} can't be negative",
        label="more than there is",
        help=f"write what it may be off by at most, or both ends: from ___ to ___ {unit}",
    )


def _beyond(amount: str, said: nodes.Spread, measure: Measure) -> Diagnostic:
    return WRONG_QUANTITY.at(
        said.span,
        f"'{amount}' reaches further than {measure.bearer} goes: at most {measure.high:g} {measure.unit} is plausible",
        label="this far off",
        help="write what it may be off by at most, or measure it again",
    )


def _no_share(said: nodes.Spread, measure: Measure) -> Diagnostic:
    unit = _OF_NO_SHARE[measure.unit]
    return WRONG_QUANTITY.at(
        said.span,
        f"'{said}' means nothing of {measure.name}: it is off by so many {unit}",
        label="a percentage",
        help=f"write it in {unit}, for example +- 2 {unit}",
    )
