"""A unit and the outlet that shall feed it -> the edits of the power block that say so."""

from __future__ import annotations

from rigc.analysis.feeds.outlet_fit import reversing
from rigc.analysis.feeds.power_tap import Tap, outlet_at
from rigc.diagnostics.mend import AddTo, Delete, Edit, Replace
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import Feed


def stated_feed(rig: Rig, unit: str) -> Feed | None:
    """The statement that feeds a unit; None where rigc chooses, or nothing feeds it."""
    return rig.power.feed_of.get(unit)


def fed_from(rig: Rig, unit: str, way: Tap) -> tuple[Edit, ...]:
    """The unit alone on that outlet; those that stood on one outlet with it stay there. A lead that reverses goes on reversing."""
    old, leads = stated_feed(rig, unit), _lead_moved(rig, unit, way)
    reverses = unit in reversing(rig) - set(rig.power.turned) - {each.unit for each in rig.lead_wishes.adaptors}
    line = feed_statement((unit,), way.outlets, volts_to_state(rig, way), way.how, reverses, way.lower)
    if old is None:
        return (AddTo("power", "", line), *leads)
    left = not_fed(old, unit)
    if isinstance(left, Delete):
        return (Replace(old.span, line), *leads)
    return (left, AddTo("power", "", line), *leads)


def not_fed(feed: Feed, unit: str) -> Replace | Delete:
    """The statement without the unit; those that stood on the outlet with it stay there."""
    rest = tuple(name for name in feed.units if name != unit)
    if not rest:
        return Delete(feed.span)
    how = "" if feed.how == "shared" and len(rest) == 1 else feed.how
    volts = feed.volts.value if feed.volts else None
    return Replace(feed.span, feed_statement(rest, feed.outlets, volts, how, feed.reversed, feed.lower))


def all_fed_from(rig: Rig, feed: Feed, way: Tap) -> tuple[Edit, ...]:
    """All units of a statement together on another outlet."""
    line = feed_statement(feed.units, way.outlets, volts_to_state(rig, way), feed.how, feed.reversed)
    return (Replace(feed.span, line), *(edit for unit in feed.units for edit in _lead_moved(rig, unit, way)))


def _lead_moved(rig: Rig, unit: str, way: Tap) -> tuple[Edit, ...]:
    """The unit's stated lead, where it has one and goes to one outlet now, from that outlet."""
    found = [
        (port, span)
        for lead in rig.lead_wishes.leads
        if unit in (lead.start.thing, lead.end.thing)
        for port, span in zip((lead.start, lead.end), lead.end_spans, strict=False)
        if outlet_at(rig, port) is not None
    ]
    if len(found) != 1 or len(way.outlets) != 1 or found[0][0] in way.outlets:
        return ()
    return (Replace(found[0][1], str(way.outlets[0])),)


def restated(
    feed: Feed, *, lower: Port | None = None, turned: bool | None = None, volts: float | None = None
) -> tuple[Edit, ...]:
    """The same statement with another lower outlet, with or without its reversing lead, or at another voltage."""
    volts = volts if volts is not None else feed.volts.value if feed.volts else None
    turned = feed.reversed if turned is None else turned
    return (Replace(feed.span, feed_statement(feed.units, feed.outlets, volts, feed.how, turned, lower or feed.lower)),)


def volts_to_state(rig: Rig, way: Tap) -> float | None:
    """What the outlets are set to; None where they have one setting, which nobody needs to say."""
    outlets = (outlet_at(rig, port) for port in way.outlets)
    several = any(outlet is not None and len(outlet.ratings) > 1 for outlet in outlets)
    return way.settings[0].volts.value if several else None


def feed_statement(
    units: tuple[str, ...],
    outlets: tuple[Port, ...],
    volts: float | None,
    how: str,
    turned: bool = False,
    lower: Port | None = None,
) -> str:
    """A feed as the language has it."""
    words = [f"{', '.join(units)} from {', '.join(map(str, outlets))}"]
    words += [f"at {volts:g} V"] if volts is not None else []
    words += [how] if how else []
    words += [f"lower {lower}"] if lower is not None else []
    words += ["reversed"] if turned else []
    return " ".join(words)
