"""What could not be placed, and why -> findings of bodies-overlap."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from rigc.analysis.deck.checks.bodies_overlap import KIND
from rigc.diagnostics.diagnostic import Diagnostic, Level, Number
from rigc.diagnostics.figures import short
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.diagnostics.passing import STOPPED
from rigc.diagnostics.wanted import how_to_state
from rigc.diagnostics.wording import listed
from rigc.model.deck import Deck, LaterRoom
from rigc.model.rig import Rig
from rigc.model.stock import ChosenPlug
from rigc.model.things import Thing
from rigc.record import Record


class Larger(Record):
    """A deck of that size in mm, wider or deeper than the own one, or one of another `name`."""

    width_mm: float
    depth_mm: float
    name: str = ""


class Otherwise(Record):
    """What would let all stand, each tried: on the deck as it is, plugs and sides, all of them together, that the source states otherwise; or any
    one of the things `opened`, were its stated place open; and any of the `larger` decks. The things `together` are proved to have no room."""

    plugs: tuple[ChosenPlug, ...] = ()
    sides: tuple[tuple[str, bool], ...] = ()
    opened: tuple[str, ...] = ()
    together: tuple[str, ...] = ()
    larger: tuple[Larger, ...] = ()


def no_body(thing: Thing, deck: Deck) -> Diagnostic:
    """A thing whose size is not known."""
    return KIND.cant_check(
        thing.declared,
        f"no place on '{deck.name}' can be chosen for '{thing.name}': its width and depth are not stated",
        subject=(thing.name,),
        help=how_to_state(f"the body of '{thing.name}'"),
        asks_for=(f"the place of '{thing.name}'", f"the body of '{thing.name}'"),
    )


def no_room(rig: Rig, deck: Deck, lacking: dict[str, int], otherwise: Otherwise) -> Diagnostic:
    """Things for which there is no room beside the others, with how many tenths of a millimetre each lacks at its best place: one finding
    for all, since it is the deck that is too small."""
    sizes = [_sized(rig, name) for name in lacking]
    nearest = min(lacking, key=lambda name: lacking[name])
    best = f"the best place found is {lacking[nearest] / 10:g} mm too small, plugs and foot room included"
    return KIND.at(
        rig.things[nearest].declared,
        f"there is no room for {sizes[0]} on '{deck.name}': even {best}"
        if len(lacking) == 1
        else f"there is no room for {len(lacking)} things on '{deck.name}' beside the rest: {', '.join(sizes)}; "
        f"for '{nearest}', which lacks least, {best}",
        subject=(*lacking, deck.name),
        label="has no stated place",
        numbers=(Number("lacking", lacking[nearest] / 10, "mm"),),
        note=_together(otherwise.together),
        mends=(*_sides(rig, deck, otherwise), *_opened(rig, otherwise)),
        help=_plugs(deck, otherwise) + _larger(deck, lacking, otherwise),
        asks_for=tuple(f"the place of '{name}'" for name in lacking),
    )


def _sized(rig: Rig, name: str) -> str:
    thing = rig.things[name]
    assert isinstance(thing, Thing) and thing.width_mm is not None and thing.depth_mm is not None
    return f"'{name}' ({thing.width_mm.value:g} x {thing.depth_mm.value:g} mm)"


def _together(names: tuple[str, ...]) -> str:
    if not names:
        return ""
    if len(names) == 1:
        return f"{listed(names)} alone has no place on it: proved"
    return f"{listed(names)} can't stand on it together, whatever else stands there: proved"


def _plugs(deck: Deck, otherwise: Otherwise) -> str:
    """Plugs, with the sides that go with them."""
    if not otherwise.plugs:
        return ""
    kinds: dict[tuple[str, str], list[str]] = {}
    for each in otherwise.plugs:
        kinds.setdefault((each.plug, each.instead), []).append(str(each.port))
    changes = [f"'{plug}' in place of '{instead}' at {listed(ports)}" for (plug, instead), ports in kinds.items()]
    changes += [f"'{name}' {_side(deck, under)}" for name, under in otherwise.sides]
    return f"state {' and '.join(changes)} (tried: all have room then), "


def _side(deck: Deck, under: bool) -> str:
    return f"{'beneath' if under else 'on'} '{deck.name}'"


def _sides(rig: Rig, deck: Deck, otherwise: Otherwise) -> Iterator[Mend]:
    """One thing on the other side than is wished."""
    if otherwise.plugs:
        return
    for name, under in otherwise.sides:
        wish = next((each for each in rig.hints if each.kind == "stands" and each.things == (name,)), None)
        if wish is not None:
            line = f"{name} {'beneath' if under else 'on'} {deck.name}"
            yield Mend(f"wish '{name}' {_side(deck, under)}", (Replace(wish.span, line),))


def _opened(rig: Rig, otherwise: Otherwise) -> Iterator[Mend]:
    for name in otherwise.opened:
        yield Mend(
            f"delete the place of '{name}', and one is chosen with which all have room",
            (Delete(rig.places[name].span),),
        )


def _larger(deck: Deck, lacking: Iterable[str], otherwise: Otherwise) -> str:
    without = f"leave {listed(lacking)} out"
    if not otherwise.larger:
        return f"choose a larger deck (see `rigc show fit`), or {without}"
    tried = "(tried: all have room there)" if len(otherwise.larger) == 1 else "(tried: all have room on each)"
    return f"choose {', or '.join(_sized_deck(deck, each) for each in otherwise.larger)} {tried}, or {without}"


def _sized_deck(deck: Deck, larger: Larger) -> str:
    assert deck.width_mm is not None and deck.depth_mm is not None
    size = f"{larger.width_mm:g} x {larger.depth_mm:g} mm"
    if larger.name:
        return f"a deck like '{larger.name}', {size}"
    wider, deeper = larger.width_mm - deck.width_mm.value, larger.depth_mm - deck.depth_mm.value
    return f"a deck of {size}, {short(wider or deeper)} mm {'wider' if wider else 'deeper'}"


def no_room_for_later(room: LaterRoom, deck: Deck, short: int) -> Diagnostic:
    """No place for a room that shall stay free."""
    size = f"{room.width_mm:g} x {room.depth_mm:g} mm"
    return KIND.at(
        room.span,
        f"no {size} stay free on '{deck.name}' for '{room.what}': even the best place found lacks {short / 10:g} mm",
        subject=(deck.name,),
        label="no room for this",
        level=Level.REMARK,
        numbers=(Number("lacking", short / 10, "mm"),),
        mends=(Mend("reserve no room", (Delete(room.span),)),),
    )


def search_stopped(deck: Deck, steps: int) -> Diagnostic:
    """Someone who had seen enough ended the search after so many steps."""
    return KIND.at(
        deck.declared,
        f"the search for places on '{deck.name}' was interrupted after {steps} steps: what stands there is the best so far",
        subject=(deck.name,),
        label=STOPPED,
        level=Level.REMARK,
        help="run it again and let it end, or state the places that you like",
    )
