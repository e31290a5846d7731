"""Rigs at random, all power and nothing else, the same for a seed on every machine. Everything in them is invented."""

from __future__ import annotations

from random import Random

from jack_points import jack_point
from power_rigs import SPAN, fact, feed, outlets, rig, supply, unit

from rigc.analysis.deck.placement import Placement
from rigc.model.jacks import Connector, Port
from rigc.model.rig import Rig
from rigc.model.things import Supply, Unit
from rigc.model.wishes import Feed, LeadFacts, LeadWishes

WIDE = Connector("barrel", 5.5, 2.5)


def random_rig(seed: int, most_units: int = 9, most_outlets: int = 8) -> tuple[Rig, Placement]:
    """A rig with some feeds stated and the rest left open, with what binds and what costs: settings, commons, ceilings, sharing,
    pins, kept and reserved outlets; and where its jacks are."""
    chance = Random(seed)
    supplies = _supplies(chance, chance.randint(2, most_outlets))
    ports = [Port(each.name, outlet.name) for each in supplies for outlet in each.outlets]
    count = min(most_units, len(ports) + chance.choice((-3, -2, -2, -1, -1, 0, 0, 1)))
    units = tuple(_unit(chance, f"u{at}") for at in range(max(2, count)))
    names = [each.name for each in units]
    chance.shuffle(names)
    shared = [tuple(chance.sample(names, min(len(names), chance.choice((2, 2, 3)))))] if chance.random() < 0.6 else []
    made = rig(
        units,
        supplies,
        *_feeds(chance, units, ports),
        chain=" ".join(names),
        leads=LeadWishes(tuple(_pin(name, chance.choice(ports)) for name in names if chance.random() < 0.25)),
        others=tuple(each.name for each in supplies),
        alone=tuple(name for name in names if chance.random() < 0.1),
        may_share=tuple(shared),
        spare=chance.choice(((), (), ((1, None, SPAN),), ((1, supplies[0].name, SPAN),))),
        reserved=chance.choice(((), (), (), ((fact(9.0), "dc", fact(float(chance.choice((60, 150)))), "to come"),))),
    )
    return made, _places(chance, names, ports)


def _supplies(chance: Random, most_outlets: int) -> tuple[Supply, ...]:
    found = []
    left = most_outlets
    for name in ("s", "t", "v"):
        count = min(left, chance.randint(2, 4))
        left -= count
        groups = [_outlet(chance, at) for at in range(1, count + 1)]
        watts = chance.choice((None, None, 1.5, 2.5, 3.5))
        milliamps = chance.choice((None, 200.0, 350.0)) if watts is None else None
        if count:
            found.append(supply(name, *groups, watts=watts, milliamps=milliamps))
    return tuple(found)


def _outlet(chance: Random, number: int) -> tuple:  # type: ignore[type-arg]
    ratings = chance.choice(
        (((9, 100),), ((9, 250),), ((9, 250),), ((9, 250), (12, 180), (18, 120)), ((12, 180), (9, 200)))
    )
    return outlets(
        "o",
        number,
        number,
        *ratings,
        common=chance.choice((None, None, None, "x")),
        connector=chance.choice((Connector("barrel", 5.5, 2.1),) * 40 + (WIDE,)),
        polarity=chance.choice(("centre-negative",) * 40 + ("centre-positive",)),
    )


def _unit(chance: Random, name: str) -> Unit:
    draws = chance.choice((5, 8, 12, 20, 40, 60, 75, 90, 150))
    volts = chance.choice((9,) * 12 + (12, 18))
    more = {"starts": draws * 1.3} if chance.random() < 0.2 else {}
    return unit(
        name,
        draws,
        *chance.choice((("analogue",), ("analogue",), (), ("digital",), ("digital",), ("analogue", "high gain"))),
        volts=volts,
        accepts=chance.choice((None, None, (volts * 0.95, volts * 1.35))),
        ground=chance.choice(("negative",) * 14 + ("positive", None)),
        connector=chance.choice((Connector("barrel", 5.5, 2.1),) * 40 + (WIDE,)),
        polarity=chance.choice(("centre-negative",) * 40 + ("centre-positive", None)),
        **more,
    )


def _feeds(chance: Random, units: tuple[Unit, ...], ports: list[Port]) -> list[Feed]:
    """A unit in six has a stated outlet, whether that is wise or not; one pair now and then stands in parallel."""
    found = []
    free = list(ports)
    for each in units:
        if free and chance.random() < 1 / 6:
            count = 2 if len(free) > 2 and chance.random() < 0.2 else 1
            taken = [free.pop(chance.randrange(len(free))) for _ in range(count)]
            found.append(feed(each.name, " ".join(map(str, taken)), "parallel" if count == 2 else ""))
    return found


def _pin(name: str, port: Port) -> LeadFacts:
    return LeadFacts(f"D{name[1:]}", port, Port(name, "dc"), None, None, None, None, None, False, "", SPAN, SPAN)


def _places(chance: Random, names: list[str], ports: list[Port]) -> Placement:
    jacks = [*(Port(name, "dc") for name in names), *ports]
    points = {
        jack: jack_point(chance.randrange(900), chance.randrange(450), None) for jack in jacks if chance.random() < 0.9
    }
    return Placement({}, points, {})
