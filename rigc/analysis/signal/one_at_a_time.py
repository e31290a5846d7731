"""Two instruments that go into one jack -> the mend by which one of them is played at a time."""

from __future__ import annotations

from rigc.diagnostics.mend import Add, Edit, Mend, Replace
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import Chain


def plugged_in_turn(rig: Rig, first: str, other: str) -> tuple[Mend, ...]:
    """Both begin a chain that leads to the same stop: each holds with its own instrument, what follows with either."""
    one, two = _begun_by(rig, first), _begun_by(rig, other)
    if one is None or two is None:
        return ()
    if [stop.span.text for stop in one.stops[1:]] == [stop.span.text for stop in two.stops[1:]]:
        edits: tuple[Edit, ...] = (_only_with(one, whole=True), _only_with(two, whole=True))
    elif one.stops[1].thing != two.stops[1].thing or min(len(one.stops), len(two.stops)) > 2:
        return ()
    else:
        edits = (_only_with(one), _only_with(two))
    return (Mend(f"play one at a time: `chain with {first}: ...` and `chain with {other}: ...`", edits),)


def also_played(rig: Rig, new: str) -> tuple[Mend, ...]:
    """An instrument in no chain is plugged in where another one is, in turn with it."""
    mends = []
    for name in rig.instruments:
        chain = _begun_by(rig, name)
        if chain is not None:
            stop = chain.stops[1]
            line = f"chain with {new}: {new} -> {stop.span.text}"
            mends.append(Mend(f"play it in place of '{name}': `{line}`", (_only_with(chain), Add(line))))
    return tuple(mends)


def led_to(new: str, ports: list[Port]) -> tuple[Mend, ...]:
    """The instrument gets a chain to each of these jacks."""
    return tuple(Mend(f"write `chain {new} -> {port}`", (Add(f"chain {new} -> {port}"),)) for port in ports)


def _begun_by(rig: Rig, name: str) -> Chain | None:
    """The one chain that begins with the instrument and always holds, its first hop no stereo one."""
    chains = [chain for chain in rig.chains if chain.stops[0].thing == name]
    if len(chains) != 1 or len(chains[0].stops) < 2 or chains[0].stereo[0]:
        return None
    return None if chains[0].when.scenarios or chains[0].when.instrument else chains[0]


def _only_with(chain: Chain, whole: bool = False) -> Replace:
    """Its first hop, or the whole of it, holds with its instrument alone; what lies behind goes on as a chain of its own."""
    first, second = chain.stops[:2]
    begun = chain.span.source.text[chain.span.start : first.span.start]
    name = f"{chain.name} " if chain.name else ""
    onward = f"\nchain {second.thing}" if len(chain.stops) > 2 and not whole else ""
    hop = chain.span.source.text[first.span.start : second.span.end]
    assert begun.startswith("chain")
    return Replace(chain.span.up_to(second.span), f"chain {name}with {first.thing}: {hop}{onward}")
