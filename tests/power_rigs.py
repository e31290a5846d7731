"""Rigs built by hand, with nothing in them but power. All units and supplies are invented."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

from rigc.model.deck import Place
from rigc.model.fact import Fact
from rigc.model.jacks import Connector, Jack, Port
from rigc.model.records import Limit
from rigc.model.rig import Head, Rig
from rigc.model.stock import Stock
from rigc.model.things import Outlet, Rating, Supply, Unit
from rigc.model.wishes import Connection, Feed, LeadWishes, MountWishes, PowerWishes, When
from rigc.source import Source, Span

SPAN = Span(Source("by-hand.rig", "by hand\n"), 0, 7)
BARREL = Connector("barrel", 5.5, 2.1)


def fact(value: Any) -> Fact[Any]:
    return Fact(value, str(value), SPAN)


def unit(
    name: str, draws: float | None, *flags: str, volts: float | None = 9, ground: str | None = "negative", **more: Any
) -> Unit:
    """A unit of 9 V DC, centre-negative, with a barrel inlet; takes 0.967 to 1.1 times its voltage unless told otherwise."""
    connector, current = more.pop("connector", BARREL), more.pop("current", "dc")
    polarity, accepts = more.pop("polarity", "centre-negative"), more.pop("accepts", None)
    low, high = accepts or (None, None)
    return Unit(
        "unit",
        name,
        "",
        SPAN,
        jacks=(Jack("dc", "inlet", connector, SPAN),),
        flags=frozenset(flags),
        volts=None if volts is None else fact(volts),
        current=current,
        accepts_low_v=None if low is None else fact(low),
        accepts_high_v=None if high is None else fact(high),
        polarity=None if polarity is None else fact(polarity),
        draws_ma=None if draws is None else fact(draws),
        ground=None if ground is None else fact(ground),
        starts_ma=fact(more.pop("starts")) if "starts" in more else None,
        **more,
    )


def outlets(prefix: str, first: int, last: int, *ratings: tuple[float, float], **more: Any) -> tuple[Outlet, ...]:
    """Outlets of (V, mA) settings, DC, centre-negative, isolated unless told otherwise."""
    current = more.pop("current", "dc")
    rated = tuple(Rating(fact(volts), current, fact(milliamps), SPAN) for volts, milliamps in ratings)
    more = {"common": None, "connector": BARREL, "polarity": "centre-negative", **more}
    return tuple(
        Outlet(f"{prefix}{number}", rated, side=None, offset_mm=None, height_mm=None, span=SPAN, **more)
        for number in range(first, last + 1)
    )


def supply(
    name: str, *groups: tuple[Outlet, ...], watts: float | None = None, milliamps: float | None = None
) -> Supply:
    return Supply(
        "supply",
        name,
        "",
        SPAN,
        outlets=tuple(outlet for group in groups for outlet in group),
        ceiling_w=None if watts is None else fact(watts),
        ceiling_ma=None if milliamps is None else fact(milliamps),
    )


def feed(units: str, ports: str, how: str = "", volts: float | None = None, turned: bool = False) -> Feed:
    """`feed("a b", "s.o1 s.o2", "series")`."""
    ends = tuple(Port(*port.split(".")) for port in ports.split())
    return Feed(tuple(units.split()), ends, None if volts is None else fact(volts), how, turned, SPAN)


def rig(
    units: tuple[Unit, ...],
    supplies: tuple[Supply, ...],
    *feeds: Feed,
    chain: str = "",
    limits: dict[str, float] | None = None,
    leads: LeadWishes | None = None,
    **power: Any,
) -> Rig:
    """A rig of these units (all placed), its chain as names in order."""
    stops = chain.split()
    hops = pairwise(stops)
    head = Head(
        "by-hand", "By Hand (invented)", "A", "2026-03-02", "", "home", "", "", "", None, None, None, None,
        tuple(Limit(name, fact(value), "", SPAN) for name, value in (limits or {}).items()), (), SPAN,
    )  # fmt: skip
    places = {
        each.name: Place(each.name, 100.0 * number, 0.0, 0, False, None, None, None, "", SPAN)
        for number, each in enumerate(units)
    }
    values: dict[str, Any] = {
        name: {} for name in ("scenarios", "instruments", "mains_strips", "panels", "decks", "cases", "presets", "off_board")
    } | dict.fromkeys(
        (
            "chains", "loops", "blends", "bypass_plans", "intents", "songs", "channels", "hints", "reserved_rooms", "later_rooms", "weights",
            "gaps", "joins", "expected", "readings", "upkeep", "spares", "as_built", "field_notes", "accepts", "notes",
        ),
        (),
    )  # fmt: skip
    return Rig(
        head=head,
        units={each.name: each for each in units},
        supplies={each.name: each for each in supplies},
        stock=Stock({}, {}, {}, {}),
        connections=tuple(
            Connection(Port(one, "out"), Port(two, "in"), "audio", False, "chain", When(), SPAN) for one, two in hops
        ),
        midi_master=None,
        power=PowerWishes(feeds, others_span=SPAN, **power),
        places=places,
        lead_wishes=leads or LeadWishes(),
        mounting=MountWishes(),
        end=SPAN,
        **values,
    )
