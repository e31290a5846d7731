"""The power block -> stated feeds and wishes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import Any

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.diagnostics.near import nearest
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Port
from rigc.model.resolve.context import Context
from rigc.model.resolve.wishes.alone import alone_apart, both_ways
from rigc.model.scope import MISUSED, UNCLEAR, UNKNOWN, corrected, stated_twice, twice
from rigc.model.slips.unclear_feed import UNCLEAR_FEED
from rigc.model.things import UNITS, Instrument, Supply, Unit
from rigc.model.units.measures import RATING, VOLTAGE
from rigc.model.wishes import Feed, PowerWishes
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Word

PLUGGED = ("supply", "amp", "desk", "listener", "source", "unit", "mains strip")
_FEW = 4
ALL = ("all", "everything", "rest", "other", "units")


def power(
    context: Context, supplies: dict[str, Supply], units: dict[str, Unit], sources: dict[str, Instrument]
) -> PowerWishes:
    """All power statements of the sources."""
    feeds: list[Feed] = []
    fields: dict[str, Any] = {
        "others": (),
        "others_span": None,
        "alone": (),
        "alone_at": (),
        "may_share": (),
        "spare": (),
        "reserved": (),
        "turned": (),
        "plugged": (),
    }
    fed: dict[str, nodes.Feed] = {}
    again = _fed_twice(context)
    taken: dict[Port, Feed] = {}
    for block in context.of(nodes.PowerBlock):
        for node in block.items:
            if isinstance(node, nodes.Feed):
                feed = _feed(context, node, supplies, fed, again)
                _take_power(context, node, units)
                if feed is not None:
                    feeds.append(feed)
                    _apart(context, feed, taken)
            else:
                _wish(context, node, fields, supplies)
    for feed in feeds:
        alone_apart(context, feed, fields["alone"])
    for node in (node for block in context.of(nodes.PowerBlock) for node in block.items):
        if isinstance(node, nodes.MayShare):
            both_ways(context, node, fields["alone"])
        elif isinstance(node, nodes.Plugged):
            _takes_no_mains(context, node, {**supplies, **units, **sources})
    return PowerWishes(tuple(feeds), **fields)


def _fed_twice(context: Context) -> frozenset[str]:
    """The units that two statements feed."""
    feeds = (node for block in context.of(nodes.PowerBlock) for node in block.items if isinstance(node, nodes.Feed))
    named = Counter(word.text for node in feeds for word in node.units)
    return frozenset(name for name, count in named.items() if count > 1)


def _feed(
    context: Context, node: nodes.Feed, supplies: dict[str, Supply], fed: dict[str, nodes.Feed], doubled: frozenset[str]
) -> Feed | None:
    if _means_others(context, node):
        return None
    scope = context.scopes["thing"]
    units = [name for word in node.units if (name := scope.find(word, UNITS, "a unit")) is not None]
    again = [word for word in node.units if word.text in fed]
    for word in node.units:
        if word in again:
            context.report(_told_twice(word, node, fed[word.text]))
        fed.setdefault(word.text, node)
    outlets = [port for end in node.outlets if (port := outlet(context, end, supplies)) is not None]
    how = node.how.text if node.how else ""
    if not how and len(units) > 1 == len(outlets) and doubled & set(units):
        how = "shared"  # one of them is fed twice, which is told: only then it is known who shares
    if len(outlets) < len(node.outlets) or len(units) < len(node.units) or len(again) == len(units):
        return None
    if not _shape(context, node, units, outlets, how):
        return None
    lower = None if node.lower is None else outlet(context, node.lower, supplies)
    if node.lower is not None and (lower is None or not _in_pair(context, node.lower, lower, outlets, how)):
        return None
    volts = context.chosen(node.voltage, VOLTAGE)
    return Feed(tuple(units), tuple(outlets), volts, how, node.reversed is not None, node.span, lower)


def _told_twice(word: Word, node: nodes.Feed, first: nodes.Feed) -> Diagnostic:
    """A unit that two statements feed: either goes, or where that feeds others, too, the unit goes out of it."""
    here = next(each for each in first.units if each.text == word.text)
    what = f"where '{word.text}' takes its power"
    if len(node.units) == len(first.units) == 1 or node is first:
        return stated_twice(what, word, here)
    return twice(what, word, here, "").replace(  # type: ignore[no-any-return]
        mends=tuple(_no_more(word.text, each) for each in (first, node))
    )


def _no_more(name: str, node: nodes.Feed) -> Mend:
    left = [word for word in node.units if word.text != name]
    if not left:
        return Mend(f"delete '{node}'", (Delete(node.span),))
    listing = node.units[0].span.up_to(node.units[-1].span)
    edits = [Replace(listing, ", ".join(word.text for word in left))]
    if len(left) == 1 and node.how is not None and node.how.text == "shared":
        edits.append(Replace(node.how.span, ""))
    return Mend(f"take '{name}' out of '{node}'", tuple(edits))


def _in_pair(context: Context, end: nodes.Endpoint, lower: Port, outlets: list[Port], how: str) -> bool:
    """Whether the lower outlet is one of a series pair; a finding where it is not."""
    if how == "series" and lower in outlets:
        return True
    pair = " and ".join(map(str, outlets))
    said = f"{lower} is no outlet of the pair {pair}" if how == "series" else f"{pair} is no series pair"
    context.report(
        UNCLEAR_FEED.at(
            end.span,
            f"{said}, so {lower} can't be its lower outlet",
            subject=(str(lower), *map(str, outlets)),
            label="the lower outlet",
            help=f"name {' or '.join(map(str, outlets))} as the lower one" if how == "series" else "delete `lower`",
        )
    )
    return False


def _means_others(context: Context, node: nodes.Feed) -> bool:
    """`all from mill8`: no unit bears that name, and `others` is meant; told."""
    word = node.units[0]
    if len(node.units) > 1 or word.text not in ALL or word.text in context.scopes["thing"].declared:
        return False
    supplies = ", ".join(dict.fromkeys(end.thing.text for end in node.outlets))
    context.report(
        UNKNOWN.at(
            node.span,
            f"nothing declares '{word}'; all units that no other line names are called 'others' here",
            subject=(word.text, *(end.thing.text for end in node.outlets)),
            label="did you mean 'others'?",
            help=f"write others from {supplies}",
        )
    )
    return True


def _shape(context: Context, node: nodes.Feed, units: list[str], outlets: list[Port], how: str) -> bool:
    message = help = ""
    if how in ("series", "parallel") and (len(outlets) != 2 or outlets[0] == outlets[1]):
        message = f"a {how} lead joins two different outlets; named here: {', '.join(map(str, outlets))}"
        help = "name two outlets"
    elif how not in ("series", "parallel") and len(outlets) > 1:
        message = f"{len(outlets)} outlets feed {units[0]}, and it is not said how"
        help = "write series or parallel behind them, or name one outlet"
    elif how == "shared" and len(units) < 2:
        message = f"'{units[0]}' alone can't share {outlets[0]}"
        help = "name all units that share the outlet, or delete 'shared'"
    elif how != "shared" and len(units) > 1:
        message = f"{len(units)} units on {outlets[0]} share it, and it is not said"
        help = "write shared behind the outlet"
    if message:
        context.report(UNCLEAR_FEED.at(node.span, message, subject=tuple(units), label="this statement", help=help))
    return not message


def _apart(context: Context, feed: Feed, taken: dict[Port, Feed]) -> None:
    """A finding where another statement has put units on the outlet."""
    for port in feed.outlets:
        other = taken.setdefault(port, feed)
        if other is not feed and not {feed.how, other.how} & {"series", "parallel"}:
            names = tuple(dict.fromkeys((*other.units, *feed.units)))
            context.report(
                UNCLEAR_FEED.at(
                    feed.span,
                    f"{port} feeds {listed(other.units)} and {listed(feed.units)}, and it is not said that they share it",
                    subject=(*names, str(port)),
                    label="the outlet is taken",
                    also=(Label(other.span, "by this"),),
                    help=f"name another outlet, or write {', '.join(names)} from {port} shared",
                )
            )


def outlet(context: Context, end: nodes.Endpoint, supplies: dict[str, Supply]) -> Port | None:
    """The outlet that an endpoint names; None after a finding."""
    name = context.scopes["thing"].find(end.thing, ("supply",), "a supply")
    if name is None:
        return None
    supply = supplies[name]
    names = [each.name for each in supply.outlets]
    if end.jack is None:
        context.report(
            UNCLEAR.at(
                end.span,
                f"'{name}' has the outlets {', '.join(names)}; which one is meant?"
                if names
                else f"'{name}' has no outlet yet",
                subject=(name,),
                label="an outlet is missing",
                mends=tuple(
                    Mend(f"write {name}.{each}", (Replace(end.span, f"{name}.{each}"),))
                    for each in (names if len(names) <= _FEW else ())
                ),
                help=f"name it, for example {name}.{names[0]}"
                if len(names) > _FEW
                else ""
                if names
                else f"declare the outlets of '{name}'",
            )
        )
        return None
    if supply.outlet(end.jack.text) is not None:
        return Port(name, end.jack.text)
    if name in context.unsure:
        return None
    near = nearest(end.jack.text, names)
    context.report(
        UNKNOWN.at(
            end.jack.span,
            f"'{name}' has no outlet '{end.jack.text}'",
            subject=(f"{name}.{end.jack.text}", name),
            label=f"did you mean '{near}'?" if near else "no such outlet",
            also=(Label(supply.declared, "declared here"),),
            help="" if near else f"its outlets are {', '.join(names) or 'not declared yet'}",
            mends=corrected(end.jack, near, f"{name}.{near}") if near else (),
        )
    )
    return None


def _wish(context: Context, node: Any, fields: dict[str, Any], supplies: dict[str, Supply]) -> None:
    scope = context.scopes["thing"]
    if isinstance(node, nodes.Others):
        found = [name for word in node.supplies if (name := scope.find(word, ("supply",), "a supply"))]
        fields.update(others=(*fields["others"], *found), others_span=node.span)
    elif isinstance(node, nodes.Alone):
        if (name := scope.find(node.unit, UNITS, "a unit")) is not None:
            fields["alone"] = (*fields["alone"], name)
            fields["alone_at"] = (*fields["alone_at"], node.span)
    elif isinstance(node, nodes.ReversedFeed):
        if (name := scope.find(node.unit, UNITS, "a unit")) is not None:
            fields["turned"] = (*fields["turned"], name)
    elif isinstance(node, nodes.MayShare):
        group = tuple(name for word in node.units if (name := scope.find(word, UNITS, "a unit")))
        fields["may_share"] = (*fields["may_share"], group)
        if len(node.units) == 1:
            _shares_with_none(context, node)
    elif isinstance(node, nodes.SpareOutlets):
        number = context.count(node.number, "number of outlets", 1, 99)
        supply = scope.find(node.supply, ("supply",), "a supply") if node.supply else None
        if number is not None and supply is not None:
            _so_many(context, node, number, supplies[supply])
        if number is not None:
            fields["spare"] = (*fields["spare"], (number, supply, node.span))
    elif isinstance(node, nodes.Plugged):
        _plugged(context, node, fields)
    elif isinstance(node, nodes.ReserveOutlet):
        volts, milliamps = context.chosen(node.voltage, VOLTAGE), context.chosen(node.current, RATING)
        if volts is not None and milliamps is not None:
            text = node.text.value if node.text else ""
            fields["reserved"] = (*fields["reserved"], (volts, node.kind.text, milliamps, text))


def _take_power(context: Context, node: nodes.Feed, units: dict[str, Unit]) -> None:
    """A finding where a unit is fed that takes no power."""
    for word in node.units:
        unit = units.get(word.text)
        if unit is not None and "passive" in unit.flags and not unit.powered and unit.draws_ma is None:
            context.report(
                MISUSED.at(
                    word.span,
                    f"'{word.text}' is passive and has no power inlet: it takes no power",
                    subject=(word.text,),
                    label="fed here",
                    also=(Label(unit.declared, "declared here"),),
                    mends=(Mend(f"delete '{node}'", (Delete(node.span),)),) if len(node.units) == 1 else (),
                    help="" if len(node.units) == 1 else f"leave '{word.text}' out of this line",
                )
            )


def _shares_with_none(context: Context, node: nodes.MayShare) -> None:
    name = node.units[0].text
    context.report(
        UNCLEAR_FEED.at(
            node.span,
            f"'{name}' alone can't share an outlet",
            subject=(name,),
            label="two units or more go here",
            help="name all units that may share one outlet, or delete this line",
        )
    )


def _so_many(context: Context, node: nodes.SpareOutlets, number: int, supply: Supply) -> None:
    """A finding where more outlets shall stay free than there are."""
    if 0 < len(supply.outlets) < number:
        context.report(
            UNCLEAR_FEED.at(
                node.number.span,
                f"{number} outlets of '{supply.name}' shall stay free, and it has {len(supply.outlets)}",
                subject=(supply.name,),
                label="more than there are",
                also=(Label(supply.declared, "declared here"),),
                help="write how many shall stay free",
            )
        )


def _plugged(context: Context, node: nodes.Plugged, fields: dict[str, Any]) -> None:
    """Things with a mains lead, each in one strip only."""
    scope = context.scopes["thing"]
    strip = scope.find(node.strip, ("mains strip",), "a mains strip")
    before = {name: span for name, _, span in fields["plugged"]}
    for word in node.things:
        name = scope.find(word, PLUGGED, "a supply, an amp or another thing with a mains lead")
        if name in before:
            first = Word(word.text, before[name])
            context.report(stated_twice(f"the mains strip of '{name}'", word, first))
        elif (
            strip is not None
            and name is not None
            and not _ring_of_strips(context, word, name, strip, fields["plugged"])
        ):
            before[name] = word.span
            fields["plugged"] = (*fields["plugged"], (name, strip, word.span))


def _ring_of_strips(
    context: Context, word: Word, name: str, strip: str, plugged: Sequence[tuple[str, str, Span]]
) -> bool:
    """A finding where a strip would feed itself, at once or by way of others; whether it would."""
    into = {each: (its_strip, span) for each, its_strip, span in plugged}
    ring, also = [strip], []
    while ring[-1] != name and ring[-1] in into:
        on, span = into[ring[-1]]
        also.append(Label(span, f"'{ring[-1]}' into '{on}'"))
        ring.append(on)
    if ring[-1] != name:
        return False
    way = " into ".join(f"'{each}'" for each in (name, *ring))
    context.report(
        MISUSED.at(
            word.span,
            f"{way}: a strip can't feed itself, and none of these comes to a socket in the wall",
            subject=(name,),
            label="plugged in here",
            also=tuple(also),
            help=f"leave '{name}' out of this line: its plug goes into the wall",
        )
    )
    return True


def _takes_no_mains(context: Context, node: nodes.Plugged, things: dict[str, Supply | Unit | Instrument]) -> None:
    """A finding where something is plugged in that has no mains lead, or says that it takes none."""
    for word in node.things:
        thing = things.get(word.text)
        if isinstance(thing, Supply):
            why = "" if thing.takes_mains or thing.mains else "gives from its battery only"
        elif isinstance(thing, Unit):
            why = (
                "runs on its battery only"
                if thing.on_battery and not thing.mains
                else "is worn on the head"
                if "headphones" in thing.flags
                else "says nothing of a mains lead of its own"
                if not thing.ends and not thing.own_mains
                else ""
            )
        else:
            why = "is a microphone" if thing is not None and "microphone" in thing.flags else ""
        if thing is not None and why:
            context.report(
                MISUSED.at(
                    word.span,
                    f"'{word.text}' {why} and takes no mains; it is not plugged into a mains strip",
                    subject=(word.text,),
                    label="plugged in here",
                    also=(Label(thing.declared, "declared here"),),
                    mends=(Mend(f"delete '{node}'", (Delete(node.span),)),) if len(node.things) == 1 else (),
                    help="" if len(node.things) == 1 else f"leave '{word.text}' out of this line",
                )
            )
