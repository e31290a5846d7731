"""Blocks of units, amps, desks, listeners, supplies and mains strips -> the things they describe."""

from __future__ import annotations

import re
from typing import Any

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.near import nearest
from rigc.model.fact import Fact, Provenance
from rigc.model.resolve.context import Context, Item, items_of
from rigc.model.resolve.country import country
from rigc.model.resolve.shared_facts import NOTHING_SHARED, SharedFacts, shared_facts
from rigc.model.resolve.things.contradictions import (
    check_ceiling,
    check_earth,
    check_heat,
    check_mass,
    check_supply_facts,
    check_words,
)
from rigc.model.resolve.things.inside import check_inside
from rigc.model.resolve.things.jacks import jacks_of, loops_of, pairs_of, paths_of
from rigc.model.resolve.things.known_things import KnownThings
from rigc.model.resolve.things.small_currents import check_draws
from rigc.model.resolve.things.supply import mains_range, supply_facts
from rigc.model.scope import UNKNOWN, article, corrected
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY
from rigc.model.things import FUSES, MEASURED, Area, Battery, Fuse, MainsStrip, Paperwork, Spot, Supply, Thing, Unit
from rigc.model.units.measures import (
    CHARGE,
    DEPTH,
    FUSE,
    FUSE_SIZE,
    HEIGHT,
    LARGE,
    LEAD,
    MAINS,
    OFFSET,
    PATCH,
    RADIO,
    TAKES,
    TREADLE,
    VOLTAGE,
    WIDTH,
)
from rigc.model.units.quantities import money, quantities
from rigc.syntax import nodes
from rigc.syntax.nodes import Amount, Node, Text, Word
from rigc.syntax.nodes.written import opening, rule_of
from rigc.syntax.slips.beyond_limits import BEYOND_LIMIT, MOST_LIKES

AMOUNTS = {field.rpartition("_")[0]: (field, measure) for field, measure in MEASURED.items()}
"""The field and the measure of each statement that is one amount, by its rule: `latency 3 ms` is read as `latency_ms`."""
CHOICES, WORDS = (
    frozenset(field for made in (Thing, Unit) for field, told in made.__annotations__.items() if told == kind)
    for kind in ("Choice | None", "str | None")
)
"""The fields that a statement of one word gives which bears their name: with where it stands and how it is known, and without."""


def things(context: Context, known: KnownThings) -> tuple[dict[str, Unit], dict[str, Supply], dict[str, MainsStrip]]:
    """All units (with amps, desks and other listeners), all supplies and all mains strips, by name. What is `known` is not made again."""
    blocks = {
        node.name.text: node
        for node in context.statements
        if isinstance(node, nodes.Unit | nodes.Amp | nodes.Desk | nodes.Listener | nodes.Supply | nodes.MainsStrip)
    }
    shared = shared_facts(context)
    laid = Laid()
    units: dict[str, Unit] = {}
    supplies: dict[str, Supply] = {}
    strips: dict[str, MainsStrip] = {}
    for name, block in blocks.items():
        made_of = made_of_blocks(block, blocks, shared)
        thing = known.of(made_of)
        if thing is None:
            before = context.said
            thing = _made(context, block, inherited(context, block, blocks, shared, laid))
            if context.said == before:
                known.keep(made_of, thing)
        kinds: dict[str, Any] = (
            supplies if isinstance(thing, Supply) else strips if isinstance(thing, MainsStrip) else units
        )
        kinds[name] = thing
    return units, supplies, strips


def _made(context: Context, block: Any, items: list[Item]) -> Any:
    if isinstance(block, nodes.Supply):
        return _thing(context, Supply, "supply", block, items)
    if isinstance(block, nodes.MainsStrip):
        return _thing(context, MainsStrip, "mains strip", block, items)
    return _thing(context, Unit, type(block).__name__.lower(), block, items)


def made_of_blocks(block: Any, blocks: dict[str, Any], shared: SharedFacts = NOTHING_SHARED) -> tuple[Node, ...]:
    """All blocks that a thing is made of: its own, those that it is `like`, in turn, and what holds for all units of their files."""
    line: dict[int, Any] = {}
    each = block
    while each is not None and id(each) not in line and len(line) <= MOST_LIKES:
        line[id(each)] = each
        each = None if each.like is None else blocks.get(each.like.text)
    return (*line.values(), *(common for each in line.values() if (common := shared.of(each)) is not None))


def inherited(
    context: Context,
    block: Any,
    blocks: dict[str, Any],
    shared: SharedFacts = NOTHING_SHARED,
    laid: Laid | None = None,
) -> list[Item]:
    """A block's facts laid over those of what it is `like`, and below both what is `shared` by all units of their files; a circle
    of likes is a finding. What was `laid` for one that is like the same is taken for the next."""
    line, seen = [block], {block.name.text}
    while line[-1].like is not None:
        like = line[-1].like
        base = blocks.get(like.text)
        if base is None or type(base) is not type(block):
            kind = opening(type(block))
            near = nearest(like.text, [name for name, each in blocks.items() if type(each) is type(block)])
            context.unsure.add(block.name.text)
            other = f"'{like.text}' is {article(type(base).__name__.lower())}; {article(kind)} can only be like {article(kind)}"
            context.report(
                UNKNOWN.at(
                    like.span,
                    f"no {kind} '{like.text}' is declared that '{line[-1].name.text}' could be like"
                    if base is None
                    else other,
                    subject=(like.text,),
                    label=f"did you mean '{near}'?" if near else "this name",
                    help="" if near else f"name {article(kind)} that is declared, or delete 'like {like.text}'",
                    mends=corrected(like, near) if near else (),
                )
            )
            break
        if base.name.text in seen:
            _like_circle(context, block, [each.name.text for each in line], like, blocks)
            break
        if len(line) > MOST_LIKES:
            context.unsure.add(block.name.text)
            if laid is not None and not laid.too_deep:
                laid.too_deep = True
                context.report(_too_deep(block))
            break
        seen.add(base.name.text)
        line.append(base)
    bases, alone = tuple(map(id, line[1:])), not any(map(shared.items, line))
    below = laid.by_bases.get(bases) if laid is not None and alone else None
    if below is None:
        below = _laid(Context(context.statements, frozenset(), context.end), line, shared)
    if laid is not None and alone:
        laid.by_bases[bases] = below
    return items_of(context, block.items, below, shared.provenance(block))


def _too_deep(block: Any) -> Diagnostic:
    return BEYOND_LIMIT.at(
        block.like.span,
        f"'{block.name.text}' is like another that is like another, more than {MOST_LIKES} deep",
        subject=(block.name.text,),
        label="not followed to its end",
        help="write out what one of them is",
    )


def _laid(quiet: Context, line: list[Any], shared: SharedFacts) -> list[Item]:
    """What the first block of a line is laid over: what is shared, and the blocks that it is like, the farthest first."""
    items: list[Item] = []
    unfed = _takes_no_power([fact for each in line for fact in each.items])
    for each in line:
        common = shared.items(each)
        items = items_of(quiet, tuple(it for it in common if not (unfed and isinstance(it, _POWER))), items)
    for each in reversed(line[1:]):
        items = items_of(quiet, each.items, items, shared.provenance(each))
    return items


class Laid:
    """What the things of a rig are laid over, `by_bases`: by the ids of the blocks that one is like, in turn, where nothing is shared by all units of a
    file. `too_deep` is whether likes that go on too deep were told of."""

    def __init__(self) -> None:
        self.by_bases: dict[tuple[int, ...], list[Item]] = {}
        self.too_deep = False


_POWER = nodes.Needs | nodes.Accepts | nodes.Polarity | nodes.Ground | nodes.Unpowered
"""What `all-units` may say of the power of its units, which a passive one has no use for."""


def _takes_no_power(facts: list[Node]) -> bool:
    """Whether a unit says itself that it needs none: it is passive and has no inlet."""
    plain = [fact.fact if isinstance(fact, nodes.Sourced) else fact for fact in facts]
    passive = any(isinstance(fact, nodes.Flag) and fact.words.text == "passive" for fact in plain)
    return passive and not any(isinstance(fact, nodes.Inlet) for fact in plain)


def _like_circle(context: Context, block: Any, line: list[str], like: Word, blocks: dict[str, Any]) -> None:
    """Tells a circle once: at the first block of it."""
    circle = line[line.index(like.text) :]
    context.unsure.update(circle)
    if block.name.text == next(name for name in blocks if name in circle):
        context.report(
            UNKNOWN.at(
                like.span,
                f"these are like each other in a circle: {' -> '.join([*circle, like.text])}",
                label="closes the circle",
                help="write out one of them",
            )
        )


def _thing(context: Context, made: type[Any], kind: str, block: Any, items: list[Item]) -> Any:
    fields: dict[str, Any] = {"notes": tuple(i.fact.text.value for i in items if isinstance(i.fact, nodes.Note))}
    for item in items:
        if isinstance(item.fact, nodes.Body):
            fields.update(_body(context, item, kind))
        else:
            _common(context, item, fields)
    jacks = jacks_of(context, items, kind == "listener")
    fields["jacks"] = jacks
    fields["pairs"] = pairs_of(context, items, jacks)
    fields["loops"] = loops_of(context, items, jacks)
    if made is Unit:
        fields["paths"] = paths_of(context, items, jacks)
        fields["mains"] = tuple(mains_range(context, i.fact) for i in items if isinstance(i.fact, nodes.Mains))
        _window(context, fields)
        check_supply_facts(context, block.name.text, block.span, fields)
    elif made is Supply:
        fields.pop("polarity", None)
        fields.update(supply_facts(context, items))
    context.unsure_if_lost(block.name.text)
    fields["papers"] = papers_of(context, items)
    check_words(context, block, items)
    check_earth(context, block.name.text, items)
    flags = [i.fact.words.text for i in items if isinstance(i.fact, nodes.Flag)]
    fields["flags"] = frozenset((*flags, *("headphones" for i in items if isinstance(i.fact, nodes.Headphones))))
    title = block.title.value if block.title else ""
    thing = made(kind, block.name.text, title, block.name.span, **{k: v for k, v in fields.items() if k in made.FIELDS})
    check_inside(context, thing)
    check_mass(context, thing)
    if made is Unit:
        check_draws(context, thing)
        check_heat(context, thing)
    elif made is Supply:
        check_ceiling(context, thing)
    return thing


def _common(context: Context, item: Item, fields: dict[str, Any]) -> None:
    fact, known = item.fact, item.provenance
    rule, said = rule_of(type(fact)), getattr(fact, fact.FIELDS[0])
    if rule in AMOUNTS:
        field, measure = AMOUNTS[rule]
        fields[field] = context.amount(said, measure, known)
    elif rule in CHOICES:
        fields[rule] = Fact(said.text, said.text, said.span, known)
    elif isinstance(fact, nodes.FootSwitch | nodes.Knob):
        spot = context.shared_chosen(OFFSET, fact.x, fact.y)
        if spot[0] is None or spot[1] is None:
            return
        x, y = spot[0].value, spot[1].value
        switch = isinstance(fact, nodes.FootSwitch)
        name = "" if isinstance(fact, nodes.FootSwitch) or fact.name is None else fact.name.value
        action = fact.action.text if isinstance(fact, nodes.FootSwitch) and fact.action else None
        place = "switches" if switch else "knobs"
        fields[place] = (*fields.get(place, ()), Spot(name, x, y, action, fact.span))
    elif isinstance(fact, nodes.NoTape):
        width, depth = context.shared_values(PATCH, fact.width, fact.depth)
        x, y = context.shared_values(OFFSET, fact.x, fact.y)
        area = Area(fact.what.text, x, y, width, depth, fact.span)
        fields["no_tape"] = (*fields.get("no_tape", ()), area)
    elif isinstance(fact, nodes.Vents):
        fields["vents"] = (*fields.get("vents", ()), fact.side.text)
    else:
        _rest(context, item, fields)


def papers_of(context: Context, items: list[Item]) -> Paperwork:
    """What the statements of a block say for insurance, customs and the crew."""
    papers = [item for item in items if rule_of(type(item.fact)) in Paperwork.FIELDS]
    for each in papers:
        if isinstance(each.fact, nodes.Origin):
            country(context, each.fact.code)
    return Paperwork(
        **{
            rule_of(type(each.fact)): _paper(context, getattr(each.fact, each.fact.FIELDS[0]), each.provenance)
            for each in papers
        }
    )


def _paper(context: Context, said: Word | Text | Amount, known: Provenance | None) -> Fact[str] | None:
    if isinstance(said, Amount):
        return money(said, context.report, known)
    text = said.text if isinstance(said, Word) else said.value
    return Fact(text, text, said.span, known)


def _body(context: Context, item: Item, kind: str) -> dict[str, Any]:
    fact, sizes = item.fact, (LARGE, LARGE, LARGE) if kind in ("amp", "desk") else (WIDTH, DEPTH, HEIGHT)
    found = context.of_all_alike(
        fact,
        item.provenance,
        lambda: quantities((fact.width, fact.depth, fact.height), sizes, context.report, item.provenance),
        kind,
    )
    return dict(zip(("width_mm", "depth_mm", "height_mm"), found, strict=True))


def _rest(context: Context, item: Item, fields: dict[str, Any]) -> None:
    fact, known = item.fact, item.provenance
    if isinstance(fact, nodes.Treadle):
        low, high = context.shared_values(TREADLE, fact.low, fact.high)
        _moves(context, fact, low, high)
        fields["treadle_mm"] = (low, high)
        fields.setdefault("flags", frozenset())
    elif isinstance(fact, nodes.Band):
        low, high = context.shared_values(RADIO, fact.low, fact.high)
        context.rising(fact.span, low, high, "MHz")
        allowed = tuple(code for word in fact.countries if (code := country(context, word)))
        fields.update(band_mhz=(low, high), band_countries=allowed)
    elif isinstance(fact, nodes.Needs):
        fields.update(volts=context.amount(fact.voltage, VOLTAGE, known), current=fact.current.text)
    elif isinstance(fact, nodes.Accepts):
        low_v, high_v = context.shared_chosen(VOLTAGE, fact.low, fact.high, provenance=known)
        fields.update(accepts_low_v=low_v, accepts_high_v=high_v)
    elif isinstance(fact, nodes.Battery):
        fields["battery"] = battery_of(context, item)
    elif isinstance(fact, nodes.Takes):
        fields.update(taken_of_mains(context, item))
    elif isinstance(fact, nodes.Was):
        fields.update(was=fact.name.text, was_at=fact.span)
    elif isinstance(fact, nodes.StandsIn):
        fields.update(stands_in=fact.name.text, stands_in_at=fact.span)
    elif isinstance(fact, nodes.Fuse):
        fields["fuses"] = (*fields.get("fuses", ()), *fuse_of(context, item))
    elif isinstance(fact, nodes.Sockets):
        fields["sockets"] = context.count(fact.count, "number of sockets", 1, 99)
    elif isinstance(fact, nodes.Cord):
        fields["cord_mm"] = context.amount(fact.length, LEAD, known)
    elif (rule := rule_of(type(fact))) in WORDS:
        fields[rule] = getattr(fact, fact.FIELDS[0]).text


def battery_of(context: Context, item: Item) -> Battery:
    """The battery that a statement tells of."""
    fact = item.fact
    return Battery(
        fact.kind.value, context.amount(fact.capacity, CHARGE, item.provenance), fact.only is not None, fact.span
    )


def taken_of_mains(context: Context, item: Item) -> dict[str, Any]:
    """What a thing takes of the mains, by the unit in which its plate says so: VA, or watts, of which one is no measure of the other."""
    amount = item.fact.amount
    unit = "" if amount.own_unit is None else amount.own_unit.text
    return {"takes_va" if unit.endswith("VA") else "takes_w": context.amount(amount, TAKES, item.provenance)}


def fuse_of(context: Context, item: Item) -> tuple[Fuse, ...]:
    """The fuse that a statement tells of; none where its rating can't be read."""
    fact, known = item.fact, item.provenance
    kind = "" if fact.kind is None else fact.kind.text
    if fact.kind is not None and kind not in FUSES:
        context.report(
            UNKNOWN.at(
                fact.kind.span,
                f"'{kind}' is no characteristic of a fuse",
                label="how fast it blows goes here",
                help=f"one of {', '.join(FUSES)}, as marked on it: T is slow, F is quick; what else is marked goes into a text at the end",
            )
        )
    if (told := _with_its_speed(fact)) is not None:
        context.report(told)
        return ()
    rating = context.chosen(fact.rating, FUSE, known)
    size = None
    if fact.size is not None:
        across, length = context.shared_values(FUSE_SIZE, fact.size.across, fact.size.length)
        size = (across, length)
    volts = context.chosen(fact.voltage, MAINS, known)
    marked = "" if fact.marked is None else fact.marked.value
    return () if rating is None else (Fuse(kind, rating, size, volts, marked, fact.span),)


def _with_its_speed(fact: nodes.Fuse) -> Diagnostic | None:
    """`10AT`: the characteristic stands right behind the unit."""
    unit = fact.rating.own_unit
    found = None if unit is None else re.fullmatch(r"(m?A)(FF|F|M|TT|T)", unit.text)
    if found is None or fact.kind is not None:
        return None
    text = f"{found[2]} {fact.rating.number.text} {found[1]}"
    return WRONG_QUANTITY.at(
        fact.rating.span,
        f"'{fact.rating.span.text}' holds how fast the fuse blows, which goes before its rating",
        label="as marked on it",
        mends=(Mend(f"write fuse {text}", (Replace(fact.rating.span, text),)),),
    )


def _window(context: Context, fields: dict[str, Any]) -> None:
    low, high = fields.get("accepts_low_v"), fields.get("accepts_high_v")
    if low is not None and high is not None:
        context.rising(low.span, low.value, high.value, "V")


def _moves(context: Context, fact: nodes.Treadle, low: float, high: float) -> None:
    """A finding where a treadle stands as high heel down as toe down, or lower toe down."""
    context.rising(fact.span, low, high, "mm")
    if 0 < low == high:
        context.report(
            WRONG_QUANTITY.at(
                fact.span,
                f"a treadle from {low:g} to {high:g} mm does not move",
                label="as high heel down as toe down",
                help="measure its height with the heel down, and with the toe down",
            )
        )
