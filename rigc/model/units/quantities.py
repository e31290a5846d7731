"""Number and unit as written -> a float in the model's unit, its dimension checked. The only import of pint, and a late one."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache
from math import log10
from pathlib import Path
from typing import Any

from rigc.diagnostics.diagnostic import Diagnostic, Report
from rigc.diagnostics.mend import Mend, Replace
from rigc.facts.currencies import CURRENCIES
from rigc.facts.levels import ZERO_DBU_V
from rigc.model.fact import Fact, Provenance, Spread
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY
from rigc.model.units.common_units import COMMON
from rigc.model.units.measures import MONEY, Measure
from rigc.model.units.prefix_slips import in_words, slips
from rigc.model.units.spreads import stated_spread, upside_down, without_spread, without_width
from rigc.model.units.unit_slips import meant, said_for
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Amount, UpTo, Word

PLAIN = {"%": "%", "dBu": "dBu", "dB": "dB", "bpm": "bpm", "awg": "awg", "AWG": "awg", "°C": "°C"}
_TOLD = ("m", "kg", "V", "A", "W", "ohm", "H", "F", "s", "Hz", "Pa", "deg", "F/m", "kg/m", "A*h", "W*h", "m**2")
_LONGEST_UNIT = 16  # longer words are none, and the registry would take them apart in vain
_NAMES = (
    "a length", "a mass", "a voltage", "a current", "a power", "a resistance", "an inductance", "a capacitance", "a time",
    "a frequency", "a pressure", "an angle", "a capacitance per length", "a mass per length", "a charge", "an energy", "an area",
)  # fmt: skip
KNOWN = (
    *(
        "mm",
        "cm",
        "m",
        "in",
        "ft",
        "g",
        "kg",
        "lb",
        "oz",
        "V",
        "mV",
        "A",
        "mA",
        "uA",
        "W",
        "mW",
        "VA",
        "ohm",
        "kohm",
        "Mohm",
    ),
    *(
        "pF",
        "nF",
        "uF",
        "H",
        "mH",
        "ms",
        "s",
        "us",
        "min",
        "h",
        "Hz",
        "kHz",
        "MHz",
        "GHz",
        "pF/m",
        "pF/ft",
        "g/m",
        "kPa",
        "Pa",
        "psi",
        "deg",
    ),
    *("mAh", "Ah", "Wh", "mm2", "dBu", "dB", "bpm", "awg"),
)


@lru_cache(maxsize=1)
def registry() -> Any:
    """The registry of our own units; pint's default one is never loaded."""
    from pint import UnitRegistry  # dear, and most rigs need none of it

    made = UnitRegistry(None, cache_folder=None)
    made.load_definitions((Path(__file__).parent / "units.txt").read_text("utf-8").splitlines())
    return made


@lru_cache(maxsize=1024)
def factor(unit: str, into: str) -> float | None:
    """What a number in `unit` is multiplied by to be in `into`; None where they measure different things.

    Raises LookupError where `unit` is no unit.
    """
    if unit == into:
        return 1.0
    if unit in PLAIN or "%" in unit:
        return None
    if len(unit) > _LONGEST_UNIT:
        raise LookupError(unit)
    spelled = _spelled(unit)
    if spelled == into:
        return 1.0
    if spelled in COMMON:
        if into in COMMON:
            (one, size), (other, of) = COMMON[spelled], COMMON[into]
            return float(f"{size / of:.12g}") if one == other else None
        if into in PLAIN.values() or into == "currency":
            return None
    return factor_of_pint(spelled, into)


def _spelled(unit: str) -> str:
    if unit == "VA":
        return "W"
    if unit.endswith(("Ah", "Wh")):
        return f"{unit[:-1]}*h"
    return f"{unit[:-1]}**{unit[-1]}" if unit[-1] in "23" else unit


def factor_of_pint(unit: str, into: str) -> float | None:
    """As `factor`, by the registry."""
    from pint.errors import PintError

    try:
        source = registry().parse_units(unit)
    except (PintError, ValueError, TypeError, SyntaxError, AttributeError, AssertionError) as error:
        raise LookupError(unit) from error
    if into in PLAIN.values() or into == "currency":
        return None
    target = registry().parse_units(into)
    if source.dimensionality != target.dimensionality:
        return None
    return float(f"{registry().Quantity(1.0, source).to(target).magnitude:.12g}")


def quantity(
    amount: Amount,
    measure: Measure,
    report: Report,
    provenance: Provenance | None = None,
    unit: Word | None = None,
    group: Sequence[tuple[Amount, Measure]] = (),
    spread: nodes.Spread | None = None,
) -> Fact[float] | None:
    """The amount in the measure's unit, or None after a finding. `unit` and `spread` are those it shares with a later number,
    `group` are all that share the unit. Of a range the value is the middle; a spread that is at fault is told and left out."""
    if measure.exact:
        amount, spread = without_spread(amount, measure, report), None
    if isinstance(amount.spread, UpTo):
        return _range(amount, measure, report, provenance, unit)
    word = amount.own_unit or unit
    if word is None:
        report(
            WRONG_QUANTITY.at(
                amount.span,
                f"'{amount.number.text}' has no unit; {measure.name} goes here",
                label="a number without a unit",
                mends=_of_one(amount, measure),
                help=f"write the unit behind it, for example {_example(amount.number.text, measure)}",
            )
        )
        return None
    typed = f"{amount.number.text} {word.text}"
    told_here = report if word is amount.own_unit else _not_again
    scale = _scale(word, measure, typed, amount.span, told_here)
    if scale is None:
        return None
    number = float(amount.number.text)
    value = float(f"{number * scale:.12g}")
    if not measure.low <= value <= measure.high:
        sizes = [(_in(each, word, other), other) for each, other in group]
        if all(low <= size <= high for size, low, high in _before(amount, group, sizes)):
            report(_implausible(amount.span, measure, typed, value, word, sizes))
        return None
    said = amount.spread or spread
    if said is None:
        return Fact(value, typed, amount.span, provenance, None, measure)
    told_of_it = report if said is amount.spread else _not_again
    off = stated_spread(
        typed,
        word,
        value,
        said,
        measure,
        told_of_it,
        lambda unit, text: _scale(unit, measure, text, said.span, told_of_it),
    )
    return Fact(value, typed if off is None else f"{typed} {off.typed}", amount.span, provenance, off, measure)


def _range(
    amount: Amount, measure: Measure, report: Report, provenance: Provenance | None, unit: Word | None
) -> Fact[float] | None:
    """`from 40 to 60 mA`: each end is read as if it stood alone."""
    assert amount.spread is not None
    high_unit = amount.spread.unit or amount.unit or unit
    ends = (
        Amount(amount.number, amount.unit, None, amount.number.span),
        Amount(amount.spread.number, high_unit, None, amount.spread.span),
    )
    low, high = quantities(ends, (measure, measure), report, provenance)
    if low is None or high is None or high_unit is None:
        return None
    if low.value > high.value:
        report(upside_down(amount))
        return None
    if low.value == high.value:
        report(without_width(amount))
        return None
    value = float(f"{(low.value + high.value) / 2:.12g}")
    middle = value / (_scale(high_unit, measure, "", high_unit.span, _not_again) or 1.0)
    one_unit = amount.unit is None or amount.unit.text == high_unit.text
    typed = f"from {amount.number if one_unit else low.typed} to {high.typed}"
    spread = Spread(low.value, high.value, typed)
    return Fact(value, f"{middle:.12g} {high_unit} ({typed})", amount.span, provenance, spread, measure)


def quantities(
    amounts: Sequence[Amount | None],
    measures: Sequence[Measure],
    report: Report,
    provenance: Provenance | None = None,
) -> list[Fact[float] | None]:
    """Amounts that may share the unit of a later one, each by its measure; absent ones are passed over.

    What is wrong with a shared unit, or a unit that is missing at the end, is told once.
    """
    present = [(amount, measure) for amount, measure in zip(amounts, measures, strict=True) if amount is not None]
    shared = shared_units(*(amount for amount, _ in present))
    found: list[Fact[float] | None] = []
    for at, ((amount, unit), (_, measure)) in enumerate(zip(shared, present, strict=True)):
        if unit is None and at + 1 < len(shared):
            found.append(None)
            continue
        sharing = [pair for pair, (_, other) in zip(present, shared, strict=True) if other is unit]
        found.append(quantity(amount, measure, report, provenance, unit, sharing, _shared_spread(amount, sharing)))
    return found


def _shared_spread(amount: Amount, sharing: Sequence[tuple[Amount, Measure]]) -> nodes.Spread | None:
    """The spread behind the last of the numbers that share a unit holds for those before it that state none."""
    last = sharing[-1][0] if sharing else amount
    return last.spread if isinstance(last.spread, nodes.Spread) else None


def _in(amount: Amount, unit: Word, measure: Measure) -> float:
    return float(amount.number.text) * (_scale(unit, measure, "", unit.span, _not_again) or 0.0)


def _before(
    amount: Amount, group: Sequence[tuple[Amount, Measure]], sizes: Sequence[tuple[float, Measure]]
) -> list[tuple[float, float, float]]:
    """What shares the unit and stands before it, with its bounds: a slip of a shared unit is told at the first number."""
    at = next((number for number, (each, _) in enumerate(group) if each is amount), 0)
    return [(size, measure.low, measure.high) for size, measure in sizes[:at]]


def _not_again(finding: Diagnostic) -> None:
    """A shared unit's fault is told at the number that bears it."""


def shared_units(*amounts: Amount | None) -> list[tuple[Amount, Word | None]]:
    """Each amount with the unit it bears or shares: that of the next later one which has one."""
    unit: Word | None = None
    found: list[tuple[Amount, Word | None]] = []
    for amount in reversed([each for each in amounts if each is not None]):
        unit = amount.own_unit or unit
        found.append((amount, unit))
    return found[::-1]


def money(amount: Amount, report: Report, provenance: Provenance | None) -> Fact[str] | None:
    """A sum of money as it was typed, `450 EUR`; the currency is three capital letters (ISO 4217)."""
    amount = without_spread(amount, MONEY, report)
    code = amount.unit.text if amount.unit else ""
    currency = code in CURRENCIES
    if currency and re.fullmatch(r"\d{1,3}\.\d{3}", amount.number.text) and code not in _OF_THREE_DIGITS:
        report(_of_thousands(amount, code))
        return None
    if currency and not MONEY.low <= float(amount.number.text) <= MONEY.high:
        report(
            WRONG_QUANTITY.at(
                amount.span,
                f"'{_short(str(amount))}' is not plausible for {MONEY.name}: from {MONEY.low:g} to {MONEY.high:.0f} {code} is",
                label="this sum",
                help="look at the number again, or delete the line",
            )
        )
        return None
    if currency:
        return Fact(str(amount), str(amount), amount.span, provenance)
    near = next((each for each in (code.upper(), code.upper()[:3]) if each in CURRENCIES), "")
    report(
        WRONG_QUANTITY.at(
            amount.span,
            f"'{_short(str(amount))}' is no sum of money"
            if not code or not re.fullmatch("[A-Z]{3}", code)
            else f"no currency has the code '{code}'",
            label=f"did you mean {near}?"
            if near
            else "a sum with its currency goes here"
            if not re.fullmatch("[A-Z]{3}", code)
            else "ISO 4217 lists none such",
            mends=(Mend(f"write {near}", (Replace(amount.unit.span, near),)),) if near and amount.unit else (),
            help=""
            if near
            else f"write the currency's three letters behind the number, for example {amount.number.text} EUR",
        )
    )
    return None


_OF_THREE_DIGITS = ("BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND")
"""Currencies with a thousandth as their smallest part (ISO 4217, from memory)."""


def _of_thousands(amount: Amount, code: str) -> Diagnostic:
    """`1.500 EUR`: a point between thousands, as some countries write it."""
    whole, typed = amount.number.text.replace(".", ""), amount.number.text
    return WRONG_QUANTITY.at(
        amount.span,
        f"'{amount}' has three digits behind its point, and {code} has two",
        label="a point parts whole from hundredths",
        mends=tuple(
            Mend(f"write {number} {code}", (Replace(amount.number.span, number),)) for number in (whole, typed[:-1])
        ),
    )


def _short(typed: str) -> str:
    """A text that a line can hold."""
    return typed if len(typed) <= 24 else f"{typed[:12]}...{typed[-6:]}"


def _scale(word: Word, measure: Measure, typed: str, span: Span, report: Report) -> float | None:
    plain = PLAIN.get(word.text)
    if plain is not None and plain == measure.unit:
        return 1.0
    try:
        scale = factor(word.text, measure.unit)
        known = True
    except LookupError:
        scale, known = None, False
    if scale is not None:
        return scale
    fitting = [each for each in KNOWN if _measures(each, measure)]
    if not known or said_for(word.text) in fitting:
        if broken := _broken_number(word, measure, typed, span):
            report(broken)
            return None
        if word.text == "dBV" and measure.unit == "dBu":
            report(_of_dbv(word, measure, typed, span))
            return None
        if word.text in ("x", "times") and measure.unit == "dB" and float(typed.split()[0]) > 0:
            report(_of_times(word, measure, typed, span))
            return None
        if word.text in ("U", "HE") and measure.unit == "mm":
            report(_of_rack_units(word, measure, typed, span))
            return None
        near = meant(word.text, fitting)
        report(
            WRONG_QUANTITY.at(
                word.span,
                f"'{_short(word.text)}' is no unit that rigc knows; {measure.name} goes here",
                label=f"did you mean '{near}'?" if near else "this unit",
                help="" if near else f"write for example {measure.example}",
                mends=(Mend(f"write {typed.split()[0]} {near}", (Replace(word.span, near),)),) if near else (),
            )
        )
        return None
    from rigc.syntax.said.other_statement import other_statement  # only what is wrong needs it

    if other := other_statement(span.source.text, span.start, word.span.end, word.text):
        start, end, ours = other
        said = Span(span.source, start, end)
        report(
            WRONG_QUANTITY.at(
                span,
                f"'{typed}' is {_told(word.text)}, and '{said.text}' tells {measure.name}",
                label=f"this is told by '{ours}'",
                mends=(
                    Mend(f"write {ours} {Span(span.source, span.start, word.span.end).text}", (Replace(said, ours),)),
                ),
            )
        )
        return None
    report(
        WRONG_QUANTITY.at(
            span,
            f"'{typed}' is {_told(word.text)}; {measure.name} goes here",
            label=f"{measure.name} goes here",
            **_in_its_unit(typed, word, measure),
        )
    )
    return None


def _broken_number(word: Word, measure: Measure, typed: str, span: Span) -> Diagnostic | None:
    """`9k2`: the letter of the unit in place of the point."""
    found = re.fullmatch(r"([kKMRr])([23])", word.text)
    number = typed.split()[0].partition(word.text)[0]
    if found is None or measure.unit != "ohm" or not number.isdigit():
        return None
    right = f"{number}.{found[2]} {said_for(found[1].upper() if found[1] in 'rR' else found[1])}"
    whole = Span(span.source, span.start, word.span.end)
    return WRONG_QUANTITY.at(
        span,
        f"'{whole.text}' has a letter in place of its point; {measure.name} goes here",
        label="as on a resistor",
        mends=(Mend(f"write {right}", (Replace(whole, right),)),),
    )


def _of_rack_units(word: Word, measure: Measure, typed: str, span: Span) -> Diagnostic:
    """So many units of a rack: 44.45 mm each (IEC 60297, from memory)."""
    height = f"{44.45 * float(typed.split()[0]):g} mm"
    whole = Span(span.source, span.start, word.span.end)
    return WRONG_QUANTITY.at(
        span,
        f"'{whole.text}' is a count of rack units; {measure.name} goes here",
        label="44.45 mm each",
        mends=(Mend(f"write {height}", (Replace(whole, height),)),),
    )


def _of_times(word: Word, measure: Measure, typed: str, span: Span) -> Diagnostic:
    """So many times as much, as a gain: 20 dB are ten times the voltage."""
    gain = f"{20 * log10(float(typed.split()[0])):.3g} dB"
    whole = Span(span.source, span.start, word.span.end)
    return WRONG_QUANTITY.at(
        span,
        f"'{whole.text}' is a factor; {measure.name} goes here, in dB",
        label="so many times the voltage",
        mends=(Mend(f"write {gain}", (Replace(whole, gain),)),),
    )


def _of_dbv(word: Word, measure: Measure, typed: str, span: Span) -> Diagnostic:
    """A level against 1 V: as many dB more against the volts of the dBu."""
    more = -20 * log10(ZERO_DBU_V.value)
    level = f"{float(typed.split()[0]) + more:.1f}"
    whole = Span(span.source, span.start, word.span.end)
    return WRONG_QUANTITY.at(
        word.span,
        f"'{typed}' is a level against 1 V; {measure.name} is written against 0.775 V here, in dBu",
        label=f"0 dBV is {more:.1f} dBu",
        mends=(Mend(f"write {level} dBu", (Replace(whole, f"{level} dBu"),)),),
    )


_DECIBELS = ("dB", "dBu")


def _in_its_unit(typed: str, word: Word, measure: Measure) -> dict[str, Any]:
    """What to do where another kind of thing is measured: a gain and a level are both so many dB, and only the unit is another."""
    alike = [each for each in KNOWN if each.lower() == word.text.lower() and _measures(each, measure)]
    if len(alike) == 1:
        number = typed.split()[0]
        return {"mends": (Mend(f"write {number} {alike[0]}", (Replace(word.span, alike[0]),)),)}
    if word.text in _DECIBELS and measure.unit in _DECIBELS:
        return {"mends": (Mend(f"write {typed.split()[0]} {measure.unit}", (Replace(word.span, measure.unit),)),)}
    return {"help": _instead(typed, word.text, measure)}


def _instead(typed: str, unit: str, measure: Measure) -> str:
    """What to write where something else is measured: the same number in its unit, but a charge is never as many mAh as an energy has Wh."""
    if measure.name == "a battery's charge" and factor(unit, "W*h") is not None:
        return "write its charge as it stands on it, ___ mAh; else 1000 × Wh / V of its cells"
    for given, wanted, advice in _NEVER_AS_MANY:
        if factor(unit, given) is not None and _measures(wanted, measure):
            return advice
    if measure.unit.endswith("/m") and factor(unit, measure.unit.removesuffix("/m")) is not None:
        return f"write what one metre has, the whole divided by its length in m: ___ {measure.unit}"
    return f"write {measure.name}, for example {_example(typed.split()[0], measure)}"


_NEVER_AS_MANY = (
    ("kg", "kPa", "a pull is a force on an area: write ___ kPa; 1 kg that hangs on 1 cm² of strip is 98 kPa"),
    ("kg/m**2", "kPa", "write ___ kPa; 1 kg on each cm² is 98 kPa"),
    ("N", "kPa", "a pull is a force on an area: write ___ kPa; 1 N on 1 cm² of strip is 10 kPa"),
    ("W", "mA", "write its current in mA: 1000 × W / V"),
    ("Hz", "V", "write the voltage, with the frequency behind it: ___ V"),
    ("A", "W", "write what it takes in W: A × V"),
)
"""What is given, what is wanted of it, and how the one follows from the other: the same number with the wanted unit would be wrong."""


def _measures(unit: str, measure: Measure) -> bool:
    return PLAIN[unit] == measure.unit if unit in PLAIN else factor(unit, measure.unit) is not None


def _told(unit: str) -> str:
    if unit in PLAIN:
        return {
            "%": "a percentage", "dBu": "a level", "dB": "a gain", "bpm": "a tempo", "awg": "a wire gauge",
            "°C": "a temperature",
        }[PLAIN[unit]]  # fmt: skip
    for base, name in zip(_TOLD, _NAMES, strict=True):
        if factor(unit, base) is not None:
            return name
    return "another kind of quantity"


def _implausible(
    span: Span, measure: Measure, typed: str, value: float, word: Word, group: Sequence[tuple[float, Measure]]
) -> Diagnostic:
    """`group` holds all numbers that share the unit `word`."""
    unit = measure.unit.replace("**2", "2").replace("*", "")
    if value < 0 <= measure.low:
        return WRONG_QUANTITY.at(
            span,
            f"'{typed}' is negative; {measure.name} can't be",
            label="a negative value",
            mends=(Mend("delete the minus sign", (Replace(span, span.text.replace("-", "", 1)),)),),
        )
    much, bound = ("too little", "at least") if value < measure.low else ("too much", "at most")
    others = slips(word.text, group or ((value, measure),))
    number = typed.split()[0]
    meant = " or ".join(f"{number} {other}" for other in others)
    limit = in_words(measure.low if value < measure.low else measure.high, unit)
    again = f"write a figure of {bound} {limit}" if measure.exact else "measure it again"
    return WRONG_QUANTITY.at(
        span,
        f"{typed} is {much} for {measure.bearer}: {f'did you mean {meant}?' if meant else f'{bound} {limit} is plausible'}",
        label=f"{bound} {limit} is plausible" if meant else "probably a slip",
        help=f"write {meant}, or {again}" if len(others) > 1 else "" if others and measure.exact else again,
        mends=(Mend(f"write {number} {others[0]}", (Replace(word.span, others[0]),)),) if len(others) == 1 else (),
    )


def _of_one(amount: Amount, measure: Measure) -> tuple[Mend, ...]:
    """A part of 1 as so many percent: `efficiency 0.8`."""
    share = float(amount.number.text)
    if measure.unit != "%" or not 0 < share <= 1 or "." not in amount.number.text:
        return ()
    written = f"{share * 100:g} %"
    return (Mend(f"write {written}", (Replace(amount.number.span, written),)),)


def _example(number: str, measure: Measure) -> str:
    """The number as typed with the unit of the example, where that is plausible; else the example."""
    unit = measure.example.split()[-1]
    scale = 1.0 if PLAIN.get(unit) == measure.unit else factor(unit, measure.unit)
    fits = scale is not None and measure.low <= float(number) * scale <= measure.high and float(number)
    return f"{number} {unit}" if fits else measure.example
