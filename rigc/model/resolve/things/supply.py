"""The facts of a supply's block -> outlets, ratings, mains ranges, ceiling."""

from __future__ import annotations

from typing import Any

from rigc.diagnostics.diagnostic import Label
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.facts.mains import PLUG_TYPES
from rigc.model.fact import Provenance
from rigc.model.jacks import Connector
from rigc.model.resolve.context import Context, Item
from rigc.model.resolve.things.jacks import connector_of, run, spread
from rigc.model.scope import SAID_TWICE, UNKNOWN, twice
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY
from rigc.model.things import MainsRange, Outlet, Pack, PlugTop, Rating
from rigc.model.units.measures import (
    CEILING_MA,
    CELLS,
    CHARGE,
    EFFICIENCY,
    ENERGY,
    FREQUENCY,
    LEAD,
    MAINS,
    POWER,
    RATING,
    TOLERANCE,
    VOLTAGE,
    Measure,
)
from rigc.model.units.quantities import factor
from rigc.model.units.spreads import mains_without_spread
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Word


def supply_facts(context: Context, items: list[Item]) -> dict[str, Any]:
    """The fields that a supply has beyond those of any thing."""
    fields: dict[str, Any] = {}
    mains: list[MainsRange] = []
    connector: Connector | None = None
    polarity: str | None = None
    for item in items:
        fact, known = item.fact, item.provenance
        if isinstance(fact, nodes.Technology):
            fields["technology"] = fact.kind.text
        elif isinstance(fact, nodes.MinusEarthed):
            fields["minus_earthed"] = True
        elif isinstance(fact, nodes.Mains):
            mains.append(mains_range(context, fact))
        elif isinstance(fact, nodes.Core):
            fields["core_hz"] = context.amount(fact.amount, FREQUENCY, known)
        elif isinstance(fact, nodes.Ceiling):
            field, measure = _ceiling(fact)
            fields[field] = context.amount(fact.amount, measure, known)
        elif isinstance(fact, nodes.Pack):
            fields["pack"] = _pack(context, fact, known)
        elif isinstance(fact, nodes.PlugTop):
            fields["plug_top"] = _plug_top(context, fact, items)
        elif isinstance(fact, nodes.Efficiency):
            fields["efficiency"] = context.amount(fact.amount, EFFICIENCY, known)
        elif isinstance(fact, nodes.PowerFactor):
            fields["power_factor"] = _power_factor(context, fact)
        elif isinstance(fact, nodes.OutletConnector):
            connector = connector_of(context, fact.connector)
        elif isinstance(fact, nodes.Polarity):
            polarity = fact.kind.text
    fields["mains"] = tuple(mains)
    fields["outlets"] = _outlets(context, items, connector, polarity)
    return fields


def mains_range(context: Context, fact: nodes.Mains) -> MainsRange:
    """A voltage and frequency range with its tolerance applied."""
    if meant := _turned(context, fact) or _dashed(context, fact):
        return meant
    low_v, high_v = (mains_without_spread(each, context.report) for each in (fact.low, fact.high))
    volts = context.shared(MAINS, low_v, high_v)
    hertz = context.shared(FREQUENCY, fact.hertz_low, fact.hertz_high)
    share = context.value(fact.tolerance, TOLERANCE) / 100
    low = volts[0].value if volts[0] else 0.0
    high = volts[-1].value if volts[-1] else 0.0
    context.rising(fact.span, low, high, "V")
    first = hertz[0].value if hertz and hertz[0] else None
    last = hertz[-1].value if hertz and hertz[-1] else None
    if first is not None and last is not None:
        context.rising(fact.span, first, last, "Hz")
    typed = str(fact).removeprefix("mains ")
    return MainsRange(low * (1 - share), high * (1 + share), first, last, typed, fact.span)


def _turned(context: Context, fact: nodes.Mains) -> MainsRange | None:
    """A finding where the frequency stands where the voltage goes, and the other way round; the range as it is meant."""
    if fact.high is not None or fact.hertz_low is None or fact.hertz_high is not None:
        return None
    if not (_measures(fact.low, "Hz") and _measures(fact.hertz_low, "V")):
        return None
    right = f"mains {fact.hertz_low} {fact.low}" if fact.tolerance is None else ""
    context.report(
        WRONG_QUANTITY.at(
            fact.low.span,
            f"'{fact.low}' is a frequency, and the voltage goes first",
            label="the other way round",
            also=(Label(fact.hertz_low.span, "the voltage"),),
            mends=(Mend(f"write `{right}`", (Replace(fact.span, right),)),) if right else (),
            help="" if right else f"write {fact.hertz_low} first, and {fact.low} last",
        )
    )
    return mains_range(context, fact.replace(low=fact.hertz_low, hertz_low=fact.low))


def _dashed(context: Context, fact: nodes.Mains) -> MainsRange | None:
    """A finding where a dash stands for the two dots of a range, which reads as a minus: `mains 100-240 V`; the range as it is meant."""
    high = fact.hertz_low
    if fact.high is not None or high is None or not high.number.text.startswith("-") or not _measures(high, "V"):
        return None
    typed = Span(fact.span.source, fact.low.span.start, high.span.end)
    meant = high.replace(number=Word(high.number.text.removeprefix("-"), high.number.span))
    right = f"{fact.low.number.text}..{meant}"
    context.report(
        WRONG_QUANTITY.at(
            typed,
            f"'{typed.text}' has a dash in it, which is a minus here",
            label="two dots go between the ends of a range",
            mends=(Mend(f"write mains {right}", (Replace(typed, right),)),),
        )
    )
    return mains_range(context, fact.replace(high=meant, hertz_low=fact.hertz_high, hertz_high=None))


def _ceiling(fact: nodes.Ceiling) -> tuple[str, Measure]:
    return ("ceiling_ma", CEILING_MA) if _measures(fact.amount, "mA") else ("ceiling_w", POWER)


def _measures(amount: nodes.Amount, unit: str) -> bool:
    """Whether an amount bears a unit that measures the same as `unit`."""
    word = amount.own_unit
    try:
        return word is not None and factor(word.text, unit) is not None
    except LookupError:
        return False


def _pack(context: Context, fact: nodes.Pack, known: Provenance | None) -> Pack:
    """A charge says at how many volts it is meant; an energy needs none, and a finding tells where it has some."""
    charge = fact.capacity is not None and _measures(fact.capacity, "mA*h")
    held = context.amount(fact.capacity, CHARGE if charge else ENERGY, known)
    cells = context.amount(fact.cells, CELLS, known)
    if fact.cells is not None and not charge:
        blank = Span(fact.cells.span.source, fact.cells.span.start - len(" at "), fact.cells.span.end)
        context.report(
            SAID_TWICE.at(
                fact.cells.span,
                f"the voltage of the cells of {fact.kind} belongs to a charge in mAh; an energy in Wh holds at any",
                label="of no use here",
                mends=(Mend(f"delete 'at {fact.cells}'", (Replace(blank, ""),)),),
            )
        )
    energy, amount = (None, held) if charge else (held, None)
    return Pack(fact.kind.value, energy, amount, cells, fact.only is not None, fact.span)


def _plug_top(context: Context, fact: nodes.PlugTop, items: list[Item]) -> PlugTop:
    """A finding where its pins are of no type that there is, or where it has a mains inlet, too."""
    pins = "" if fact.pins is None else fact.pins.text
    if fact.pins is not None and pins not in PLUG_TYPES:
        context.report(
            UNKNOWN.at(
                fact.pins.span,
                f"'{pins}' is no type of mains plug",
                subject=(pins,),
                label="the letter of a type goes here",
                help=f"write its letter, {PLUG_TYPES[0]} to {PLUG_TYPES[-1]}, as the tables of mains plugs have them; or nothing",
            )
        )
        pins = ""
    inlet = next(
        (i.fact for i in items if isinstance(i.fact, nodes.Inlet) and isinstance(i.fact.connector, nodes.Appliance)),
        None,
    )
    if inlet is not None:
        context.report(
            SAID_TWICE.at(
                inlet.span,
                f"a plug-top supply stands in the socket itself: it has no inlet {inlet.connector} for a mains lead",
                label="this can't be",
                also=(Label(fact.span, "with this"),),
                mends=(
                    Mend(f"delete '{inlet}'", (Delete(inlet.span),)),
                    Mend(f"delete '{fact}'", (Delete(fact.span),)),
                ),
            )
        )
    return PlugTop(pins, fact.span)


def _power_factor(context: Context, fact: nodes.PowerFactor) -> float | None:
    number = float(fact.number.text)
    if 0 < number <= 1:
        return number
    context.report(
        WRONG_QUANTITY.at(
            fact.number.span,
            f"a power factor of {fact.number.text} can't be",
            label="more than 0 and at most 1",
            help="write for example 0.7",
        )
    )
    return None


def _outlets(
    context: Context, items: list[Item], connector: Connector | None, polarity: str | None
) -> tuple[Outlet, ...]:
    found: dict[str, Outlet] = {}
    for item in items:
        fact = item.fact
        if not isinstance(fact, nodes.Outlet):
            continue
        own = connector_of(context, fact.connector.connector) if fact.connector else connector
        pole = fact.polarity.kind.text if fact.polarity else polarity
        common = fact.isolation.group.text if isinstance(fact.isolation, nodes.Common) else None
        ratings = tuple(rating for each in fact.ratings if (rating := _rating(context, item, each)) is not None)
        _settings_apart(context, fact, ratings)
        captive = context.amount(fact.captive.length, LEAD, provenance=item.provenance) if fact.captive else None
        names = run(context, fact.names)
        for name, place in zip(names, spread(context, fact.location, len(names), item.provenance), strict=True):
            place.pop("bushing", None)
            place = {"side": None, "offset_mm": None, "height_mm": None, **place}
            if name in found and found[name].span.text != fact.names.span.text:  # else it is told as stated again
                context.report(
                    twice(
                        f"the outlet '{name}'",
                        Word(name, fact.names.span),
                        Word(name, found[name].span),
                        "rename one of them",
                    )
                )
            found[name] = Outlet(name, ratings, common, own, pole, span=fact.names.span, captive_mm=captive, **place)
    return tuple(found.values())


def _settings_apart(context: Context, fact: nodes.Outlet, ratings: tuple[Rating, ...]) -> None:
    """A finding where an outlet can be set twice to one voltage, or has a polarity and gives AC."""
    seen: dict[tuple[float, str], Rating] = {}
    for rating in ratings:
        first = seen.setdefault((rating.volts.value, rating.current), rating)
        if first is not rating and not any(each.span is rating.span for each in context.findings):
            context.report(
                WRONG_QUANTITY.at(
                    rating.span,
                    f"'{fact.names}' is set twice to {rating.volts.typed}",
                    label="the same again",
                    also=(Label(first.span, "first here"),),
                    help="name each setting once, or correct its voltage",
                )
            )
    pole = fact.polarity
    if pole is None or any(each.current == "dc" for each in ratings) or not ratings:
        return
    if not any(each.span is pole.span for each in context.findings):
        blank = Span(pole.span.source, pole.span.start - 1, pole.span.end)
        context.report(
            SAID_TWICE.at(
                pole.span,
                f"'{fact.names}' gives AC and states a polarity; AC has none",
                label="this can't be",
                mends=(Mend(f"delete '{pole.span.text}'", (Replace(blank, ""),)),),
            )
        )


def _rating(context: Context, item: Item, fact: nodes.Rating) -> Rating | None:
    volts = context.amount(fact.voltage, VOLTAGE, item.provenance)
    milliamps = context.amount(fact.current, RATING, item.provenance)
    return None if volts is None or milliamps is None else Rating(volts, fact.kind.text, milliamps, fact.span)
