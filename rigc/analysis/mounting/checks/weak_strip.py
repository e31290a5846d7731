"""A unit's strips hold less than a fall asks for, lie over a part that must stay free, meet only one rail, or don't stick to
its base.

Why it matters: the unit comes off when the case is dropped, or must come off to change a battery.
What to do: put it on a bridge plate (`NAME bridged`), bolt down what has a door in the way of its strips, take a strip with more pull, or move it so that it meets two rails.
The area needed is m · {fastening.SHOCK_G.value} · {weight.GRAVITY_M_PER_S2.value} / σ, with σ the working pull of the strip; what counts is the area that meets tape, not the
length of strip. On a base whose rubber feet stay, or that is textured, strip does not hold at all. Adhesive fails before the tape on oily or powder-coated bases: wipe them first.
Source: physics ({fastening.SHOCK_G} is a case that falls 150 mm onto foam giving way by 7 to 8 mm); the rule for laying strips is common
practice, no source; the pull is that of the stock: measure your own.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.body_clash import BodyClash
from rigc.analysis.mounting.mounting_strip import KEPT_FREE, MountingStrip, StrippedUnit, Unstripped, needed_cm2
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.diagnostics.mend import AddTo, Mend, Replace
from rigc.diagnostics.wanted import how_to_state
from rigc.diagnostics.wording import listed
from rigc.facts.fastening import SHOCK_G
from rigc.facts.weight import GRAVITY_M_PER_S2
from rigc.loader import STOCK
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.model.stock import Strip
from rigc.model.things import Thing
from rigc.source import Span

KIND = Kind(
    "weak-strip",
    Level.WARNING,
    __doc__,
    f"engaged strip area ≥ m·{SHOCK_G.value:g}·{GRAVITY_M_PER_S2.value:g}/σ, on two rails or more, no strip over a battery door, vent or trim, none on feet or texture",
    f"physics: {SHOCK_G}; rule for laying strips: common practice, no source",
)
_ON_FEET = "keeps its rubber feet, on which strip does not hold"


def weak_strip(rig: Rig, strips: MountingStrip, clash: BodyClash) -> Iterator[Diagnostic]:
    """One finding for each unit, and one for all of which a single statement says that their feet stay, or for want of one fact; bridged
    units and those that are bolted as well are held otherwise; what leaves the deck meets less of it for that reason."""
    on_feet: dict[Span, list[StrippedUnit]] = {}
    unknown: dict[str, list[StrippedUnit]] = {}
    for unit in strips.units:
        if unit.bridged or unit.fixing is not None or unit.thing in clash.beyond:
            continue
        faults = [*_base(rig, unit), *_faults(unit)]
        feet = _standing_feet(rig, unit)
        if feet is not None and faults == [_ON_FEET]:
            same = next((span for span in on_feet if (span.source, span.start) == (feet.source, feet.start)), feet)
            on_feet.setdefault(same, []).append(unit)
        elif faults:
            yield _told(rig, unit, faults)
        elif unit.engaged_cm2 is None or unit.needed_cm2 is None:
            deck = _deck(rig, unit) if unit.engaged_cm2 is None else None
            fact = f"the pull of the strip '{unit.strip}'" if deck is None else f"the size of deck '{deck.name}'"
            unknown.setdefault(fact, []).append(unit)
    for feet, units in on_feet.items():
        yield _told(rig, units[0], [_ON_FEET]) if len(units) == 1 else _all_on_feet(feet, units)
    for fact, units in unknown.items():
        yield _unknown(rig, fact, units)
    yield from _unstripped(rig, [unit for unit in strips.unknown if not _bridged(rig, unit)])


def _deck(rig: Rig, unit: StrippedUnit) -> Deck | None:
    """The deck on which, or under which, it is held."""
    return rig.decks.get(rig.places[unit.thing].deck or "", rig.deck)


def _base(rig: Rig, unit: StrippedUnit) -> list[str]:
    """What keeps strip from holding on a base, however large it is."""
    thing = rig.things[unit.thing]
    faults = [] if _standing_feet(rig, unit) is None else [_ON_FEET]
    if isinstance(thing, Thing) and thing.base is not None and thing.base.value == "textured":
        faults.append("has a textured base, on which strip does not hold")
    tape = _strange_tape(rig, unit)
    if tape is not None:
        faults.append(f"is held by '{unit.strip}', which does not hold on the rails' tape of '{tape}'")
    return faults


def _standing_feet(rig: Rig, unit: StrippedUnit) -> Span | None:
    """Where it is said that its feet stay."""
    thing = rig.things[unit.thing]
    if isinstance(thing, Thing) and thing.feet is not None and thing.feet.value == "stay":
        return thing.feet.span
    return None


def _all_on_feet(feet: Span, units: list[StrippedUnit]) -> Diagnostic:
    """One statement for several units: that of `all-units`, or of the unit that others are like."""
    names = tuple(unit.thing for unit in units)
    return KIND.at(
        feet,
        f"{listed(names)} keep their rubber feet, on which strip does not hold",
        subject=names,
        label="said here for all of them",
        mends=(Mend(f"take the feet off {listed(names)}: write `feet removed`", (Replace(feet, "removed"),)),),
        help="put each on a bridge plate: `NAME bridged`",
    )


def _strange_tape(rig: Rig, unit: StrippedUnit) -> str | None:
    """A stated tape of its deck's rails with which its strip does not mate: one strip wants loops, the other mates with itself."""
    place, strip, deck = rig.places[unit.thing], rig.stock.strips[unit.strip], _deck(rig, unit)
    if deck is None or place.tier is not None or strip.mates != "loop":
        return None
    kinds = (rail.strip for rail in deck.rails if rail.strip is not None)
    return next((kind for kind in kinds if rig.stock.strips[kind].mates == "itself"), None)


def _faults(unit: StrippedUnit) -> list[str]:
    faults = []
    if unit.too_small:
        faults.append(f"engages {unit.engaged.text} cm² of '{unit.strip}' and needs {unit.needed.text} cm²")
    if unit.tapes_met == 1:
        faults.append("meets only one rail")
    covered = [area for area in dict.fromkeys(unit.covered) if area in KEPT_FREE]
    if covered:
        faults.append(f"has a strip over its {' and '.join(covered)}")
    return faults


def _told(rig: Rig, unit: StrippedUnit, faults: list[str]) -> Diagnostic:
    return KIND.at(
        unit.span,
        f"'{unit.thing}' " + ", and ".join(faults),
        subject=(unit.thing,),
        label=f"{unit.count} strips of {unit.piece_mm:g} mm"
        if unit.count > 1
        else f"one strip of {unit.piece_mm:g} mm",
        numbers=tuple(
            Number(name, round(area, 2), "cm²")
            for name, area in (("engaged", unit.engaged_cm2), ("needed", unit.needed_cm2))
            if area is not None
        ),
        mends=tuple(_stronger(rig, unit)),
    )


def _stronger(rig: Rig, unit: StrippedUnit) -> Iterator[Mend]:
    """Its feet off, the strip that mates with the tape, one that holds better, bolts, a bridge plate."""
    thing = rig.things[unit.thing]
    if isinstance(thing, Thing) and thing.feet is not None and thing.feet.value == "stay":
        yield Mend(f"take the feet off '{unit.thing}': write `feet removed`", (Replace(thing.feet.span, "removed"),))
    tape = _strange_tape(rig, unit)
    if tape is not None:
        yield Mend(f"use '{tape}' under '{unit.thing}'", (AddTo("mounting", "", f"{unit.thing} with {tape}"),))
        return
    better = _better(rig, unit)
    if better is not None:
        strip, area = better
        line = f"{unit.thing} with {strip}"
        yield Mend(f"use '{strip}' under '{unit.thing}', which needs {area:.2f} cm²", (AddTo("mounting", "", line),))
    covered = any(area in KEPT_FREE for area in unit.covered)
    if covered and not unit.too_small and unit.tapes_met != 1:  # on a plate its strips would lie where they lie
        yield Mend(f"bolt '{unit.thing}' down in place of strip", (AddTo("mounting", "", f"{unit.thing} bolted"),))
        return
    yield Mend(f"put '{unit.thing}' on a bridge plate", (AddTo("mounting", "", f"{unit.thing} bridged"),))


def _better(rig: Rig, unit: StrippedUnit) -> tuple[str, float] | None:
    """A strip of the stock under which the area that engages would do, and the area that it needs in cm²."""
    thing = rig.things[unit.thing]
    if not unit.too_small or not isinstance(thing, Thing) or thing.mass_kg is None:
        return None
    for strip in rig.stock.strips.values():
        if not _wide_enough(rig, unit, strip) or strip.pull_kpa is None:
            continue
        area: float = needed_cm2(thing.mass_kg.value, strip.pull_kpa.value)
        if area <= (unit.engaged_cm2 or 0.0):
            return strip.name, area
    return None


def _wide_enough(rig: Rig, unit: StrippedUnit, strip: Strip) -> bool:
    """Whether the engaged area would stay: the strip is as wide as the present one."""
    present = rig.stock.strips[unit.strip].width_mm
    return strip.width_mm is not None and present is not None and strip.width_mm.value == present.value


def _unknown(rig: Rig, fact: str, units: list[StrippedUnit]) -> Diagnostic:
    """One for all units that want the same fact."""
    names = tuple(unit.thing for unit in units)
    return KIND.cant_check(
        units[0].span,
        f"whether the strips hold {listed(names)} is not known, for want of {fact}",
        subject=names,
        help=_how_to_state(rig, fact, units[0]),
    )


def _how_to_state(rig: Rig, fact: str, unit: StrippedUnit) -> str:
    """In its own block; but that of a strip that ships with rigc nobody edits."""
    strip = rig.stock.strips[unit.strip]
    if unit.engaged_cm2 is not None and strip.declared.source.name.startswith(STOCK):
        own = f"{strip.name}-measured"
        return (
            f"measure it with a spring balance, write a strip of your own, `strip {own} like {strip.name} {{` with the line "
            f"`pull ___ kPa`, and use '{own}' in the mounting block"
        )
    return how_to_state(fact)


def _want(unit: Unstripped) -> str:
    """The fact in the words by which other findings ask for it."""
    whose = unit.missing.removeprefix("its ")
    return unit.missing if whose == unit.missing else f"the {whose} of '{unit.thing}'"


def _bridged(rig: Rig, unit: Unstripped) -> bool:
    return any(name == unit.thing for name, _ in rig.mounting.bridged)


def _unstripped(rig: Rig, unknown: list[Unstripped]) -> Iterator[Diagnostic]:
    """One for each unit; where no strip is stated for anything, a single one for all."""
    if unknown and rig.mounting.all_with is None and not rig.mounting.strips:
        names = [unit.thing for unit in unknown]
        yield KIND.cant_check(
            unknown[0].span,
            f"what holds {listed(names)} is not known: no strip is stated",
            subject=tuple(names),
            help="say in a mounting block what holds them: `all with` a strip, or `bolted`",
            asks_for=tuple(f"the strips of '{name}'" for name in names),
        )
        return
    for unit in unknown:
        yield KIND.cant_check(
            unit.span,
            f"whether strips hold '{unit.thing}' is not known, for want of {unit.missing}",
            subject=(unit.thing,),
            help=how_to_state(_want(unit)),
            wants=(_want(unit),),
        )


CHECK = weak_strip
