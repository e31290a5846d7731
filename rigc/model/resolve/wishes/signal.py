"""Chains, loops, blends, MIDI and control links -> connections from jack to jack."""

from __future__ import annotations

from typing import Any

from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.diagnostic import Diagnostic, Label, Level
from rigc.diagnostics.mend import Mend, Replace
from rigc.model.jacks import LoopJacks, Port
from rigc.model.resolve.context import Context
from rigc.model.resolve.ports import Ports
from rigc.model.scope import UNCLEAR, UNKNOWN, article, stated_twice, twice
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY
from rigc.model.things import Instrument, Unit
from rigc.model.units.measures import SHARE
from rigc.model.wishes import Blend, BlendPath, Chain, Connection, LoopUse, Stop, When
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Word

_ROUNDED_BY = 0.5
"""Percent: a share that is stated in whole percents is off by no more."""
PLAYED = ("unit", "amp", "desk", "instrument", "panel")


class Signal:
    """What the signal statements amount to."""

    def __init__(self, context: Context, ports: Ports) -> None:
        self.context = context
        self.ports = ports
        self.chains: list[Chain] = []
        self.loops: list[LoopUse] = []
        self.blends: list[Blend] = []
        self.connections: dict[tuple[Port, Port], Connection] = {}

    def read(self) -> Signal:
        """Reads every statement."""
        for chain in self.context.of(nodes.Chain):
            self._chain(chain)
        for held in self.context.of(nodes.LoopHolds):
            self._loop(held, held.path)
        for empty in self.context.of(nodes.LoopEmpty):
            self._loop(empty, None)
        for blend in self.context.of(nodes.Blend):
            self._blend(blend)
        for block in self.context.of(nodes.MidiBlock):
            self._links(block, nodes.MidiLink, "midi", ("midi out", "midi thru"), ("midi in",))
        for control in self.context.of(nodes.ControlBlock):
            self._links(
                control,
                nodes.ControlLink,
                "control",
                ("expression out", "control out"),
                ("expression in", "control in"),
            )
        return self

    def _chain(self, node: nodes.Chain) -> None:
        when = self._when(node.head)
        name = node.head.name.text if node.head and node.head.name else ""
        stops, stereo = self._path(node.path, when, f"chain {name}".strip())
        if len(node.path.hops) == 0:
            self.context.report(
                UNCLEAR.at(
                    node.span,
                    f"a chain of '{node.path.first}' alone leads nowhere",
                    label="one stop",
                    help="go on with -> and the next stop",
                )
            )
        again = next((each for each in self.chains if name and (each.name, each.when) == (name, when)), None)
        if again is not None and node.head is not None and node.head.name is not None:
            help = "give one of them another name, or say by `for` and `with` when each holds"
            self.context.report(twice(f"the chain '{name}'", node.head.name, Word("", again.span), help))
        self.chains.append(Chain(name, when, stops, stereo, node.span))

    def _when(self, head: nodes.ChainHead | None) -> When:
        if head is None:
            return When()
        scope = self.context.scopes["scenario"]
        scenarios = tuple(found for word in head.scenarios or () if (found := scope.find(word, (), "a scenario")))
        instrument = None
        if head.instrument is not None:
            instrument = self.context.scopes["thing"].find(head.instrument, ("instrument", "source"), "an instrument")
        return When(scenarios, instrument)

    def _path(self, path: nodes.Path, when: When, origin: str) -> tuple[tuple[Stop, ...], tuple[bool, ...]]:
        written = [path.first, *(hop.stop for hop in path.hops)]
        stereo = tuple(hop.link.text == "=>" for hop in path.hops)
        stops = [Stop(stop.thing.text, stop.jack.text if stop.jack else None, stop.span) for stop in written]
        things = [self.ports.thing(stop.thing) for stop in written]
        jacks = [
            self.ports.jack(thing, stop.jack) if thing is not None and stop.jack is not None else None
            for thing, stop in zip(things, written, strict=True)
        ]
        wrong = [self._ends(written[0], jacks[0], "input", "leaves")]
        wrong += [False] * (len(written) - 2) + [self._ends(written[-1], jacks[-1], "output", "arrives")]
        for at, hop in enumerate(path.hops):
            start, end = things[at], things[at + 1]
            if hop.link.text == "=>":
                start, end = _with_pair_of(start, jacks[at]), _with_pair_of(end, jacks[at + 1])
            lost = any(written[k].jack is not None and jacks[k] is None for k in (at, at + 1))
            if start is None or end is None or lost or wrong[at] or wrong[at + 1]:
                continue
            backwards = isinstance(things[0], Unit) and things[0].ends  # which is told of the whole chain
            if not backwards and self._into_a_source(end, written[at], hop, written[at + 1]):
                continue
            self._hop(
                start, end, jacks[at], jacks[at + 1], hop.link, when, origin, written[at].span, written[at + 1].span
            )
        return tuple(stops), stereo

    def _into_a_source(self, end: Any, before: nodes.Stop, hop: nodes.Hop, stop: nodes.Stop) -> bool:
        """Whether a hop goes into an instrument or another source, where sound begins; a finding then."""
        if not isinstance(end, Instrument):
            return False
        gone = Span(stop.span.source, before.span.end, stop.span.end)
        self.context.report(
            UNCLEAR.at(
                stop.span,
                f"'{end.name}' is {article(end.kind)}: sound begins there, and nothing goes into it",
                subject=(end.name, before.thing.text),
                label="no sound goes here",
                also=(Label(end.declared, "declared here"),),
                mends=(Mend(f"delete `{hop.link} {stop}`", (Replace(gone, ""),)),),
                help="write the instrument first, and what it plays into last",
            )
        )
        return True

    def _ends(self, stop: nodes.Stop, jack: Any, wrong: str, verb: str) -> bool:
        """Whether a path begins or ends at a jack of the other direction; a finding then."""
        if jack is not None and jack.role == wrong:
            self.context.report(
                UNCLEAR.at(
                    stop.span,
                    f"the path {verb} at '{stop}', which is an {wrong}",
                    subject=(str(stop), stop.thing.text),
                    label=f"an {wrong}",
                    also=(Label(jack.span, "declared here"),),
                    help="name a jack of the other direction, or the thing alone",
                )
            )
            return True
        return False

    def _hop(
        self,
        start: Any,
        end: Any,
        out: Any,
        into: Any,
        arrow: Word,
        when: When,
        origin: str,
        start_span: Any,
        end_span: Any,
    ) -> None:
        if arrow.text == "=>":
            pairs = self.ports.pairs(start, end, arrow, start_span, end_span)
            for ends in zip(*pairs, strict=True) if pairs is not None else ():
                self._join(Connection(*ends, "audio", True, origin, when, end_span))
            return
        out = out if out is not None and out.role != "input" else None
        into = into if into is not None and into.role != "output" else None
        leaves = self.ports.audio(start, "out", out, start_span)
        enters = self.ports.audio(end, "in", into, end_span)
        if leaves is not None and enters is not None:
            self._join(Connection(leaves, enters, "audio", False, origin, when, end_span))

    def _join(self, connection: Connection) -> None:
        ends = (connection.start, connection.end)
        before = self.connections.get(ends)
        if before is None:
            self.connections[ends] = connection
            return
        one, other = before.when, connection.when
        scenarios = (*one.scenarios, *other.scenarios) if one.scenarios and other.scenarios else ()
        instrument = one.instrument if one.instrument == other.instrument else None
        self.connections[ends] = before.replace(when=When(tuple(dict.fromkeys(scenarios)), instrument))

    def _loop(self, node: nodes.LoopHolds | nodes.LoopEmpty, path: nodes.Path | None) -> None:
        switcher = self.ports.switcher(node.switcher, "a switcher")
        number = self.context.count(node.number, "loop number", 1, 99)
        if switcher is None or number is None:
            return
        jacks = switcher.loop(number)
        if jacks is None and switcher.name in self.context.unsure:
            if path is not None:  # what its leads join is not known either
                self.context.unsure.update((path.first.thing.text, *(hop.stop.thing.text for hop in path.hops)))
            return
        if jacks is None:
            self.context.report(self._no_loop(node, switcher, number))
            return
        before = next((loop for loop in self.loops if (loop.switcher, loop.number) == (switcher.name, number)), None)
        if before is not None:
            again, first = Word(f"loop {number} of {switcher.name}", node.span), Word("", before.span)
            told = stated_twice(f"what loop {number} of '{switcher.name}' holds", again, first)
            there = {stop.thing for stop in before.stops}
            once = path is not None and not there & {path.first.thing.text, *(hop.stop.thing.text for hop in path.hops)}
            free = self._free_loops(switcher) if once else []
            mends = (Mend(f"write loop {free[0]}", (Replace(node.number.span, str(free[0])),)),) if free else ()
            self.context.report(told.replace(mends=(*mends, *told.mends)))
            return
        stops: tuple[Stop, ...] = ()
        if path is not None and (through := self._through_one(switcher, jacks, path)) is not None:
            self.context.report(through)
            return
        if path is not None:
            origin = f"loop {number} of {switcher.name}"
            stops = self._between(switcher, jacks.send, jacks.back, path, origin, When())
        self.loops.append(LoopUse(switcher.name, number, stops, node.span))

    def _free_loops(self, switcher: Unit) -> list[int]:
        """The numbers of its loops that no statement tells of."""
        holds, empty = self.context.of(nodes.LoopHolds), self.context.of(nodes.LoopEmpty)
        used = [(each.switcher.text, each.number.text) for each in holds]
        used += [(each.switcher.text, each.number.text) for each in empty]
        return [loop.number for loop in switcher.loops if (switcher.name, str(loop.number)) not in used]

    def _through_one(self, host: Any, jacks: LoopJacks, path: nodes.Path) -> Diagnostic | None:
        """A finding for a path from one thing's input to its own output: a way within the thing, where chains say what is plugged."""
        first, last = path.first, path.hops[-1].stop if path.hops else path.first
        thing = self.ports.things.get(first.thing.text)
        if (
            thing is None
            or len(path.hops) != 1
            or first.thing.text != last.thing.text
            or not (first.jack and last.jack)
        ):
            return None
        into, out = thing.jack(first.jack.text), thing.jack(last.jack.text)
        if into is None or out is None or (into.role, out.role) != ("input", "output"):
            return None
        chains = f"`chain {host.name}.{jacks.send} -> {first}` and `chain {last} -> {host.name}.{jacks.back}`"
        return UNCLEAR.at(
            first.span,
            f"'{first} -> {last}' is a way within '{thing.name}', and no lead",
            subject=(str(first), thing.name),
            label="an input",
            also=(Label(out.span, "and its own output"),),
            help=f"write in place of this line what is plugged, as chains: {chains}",
        )

    def _between(self, host: Any, send: str, back: str, path: nodes.Path, origin: str, when: When) -> tuple[Stop, ...]:
        """Joins a path to the send and the return jack of its host."""
        stops, _ = self._path(path, when, origin)
        first, last = path.first, ([path.first] + [hop.stop for hop in path.hops])[-1]
        entry, leave = self.ports.things.get(first.thing.text), self.ports.things.get(last.thing.text)
        if entry is not None:
            named = entry.jack(first.jack.text) if first.jack else None
            named = named if named is not None and named.role == "input" else None
            into = self.ports.audio(entry, "in", named, first.span)
            if into is not None:
                self._join(Connection(Port(host.name, send), into, "audio", False, origin, when, first.span))
        if leave is not None:
            named = leave.jack(last.jack.text) if last.jack else None
            named = named if named is not None and named.role == "output" else None
            out = self.ports.audio(leave, "out", named, last.span)
            if out is not None:
                self._join(Connection(out, Port(host.name, back), "audio", False, origin, when, last.span))
        return stops

    def _no_loop(self, node: Any, switcher: Any, number: int) -> Any:
        numbers = [str(loop.number) for loop in switcher.loops]
        return UNKNOWN.at(
            node.number.span,
            f"'{switcher.name}' has no loop {number}",
            subject=(switcher.name,),
            label=f"its loops are {', '.join(numbers)}" if numbers else "it declares no loops",
            also=(Label(switcher.declared, "declared here"),),
            help="correct the number, or declare the loop: loop 1..8 send s1..s8 return r1..r8",
        )

    def _blend(self, node: nodes.Blend) -> None:
        unit = self.ports.switcher(Word(node.name.text, node.name.span), "a blender")
        if unit is None:
            return
        before = next((blend for blend in self.blends if blend.unit == unit.name), None)
        if before is not None:
            self.context.report(
                twice(f"the blend of '{unit.name}'", node.name, Word("", before.span), "put both into one block")
            )
            return
        paths: list[BlendPath] = []
        free = [loop.number for loop in unit.loops]
        for item in node.items:
            if isinstance(item, nodes.BlendDry):
                share = self.context.amount(item.share, SHARE)
                if share is not None:
                    paths.append(BlendPath(share, False, None, False, (), item.span))
            elif isinstance(item, nodes.BlendWet):
                paths += self._wet(item, unit, free)
        self._whole(unit, paths, node)
        self.blends.append(Blend(unit.name, tuple(paths), node.span))

    def _whole(self, unit: Unit, paths: list[BlendPath], node: nodes.Blend) -> None:
        """A finding where the shares of a blend, each rounded to a whole percent, can't be those of one whole."""
        shares = [path.share for path in paths]
        if (
            len(shares) < sum(isinstance(item, nodes.BlendDry | nodes.BlendWet) for item in node.items)
            or len(shares) < 2
        ):
            return  # one of them is told to be wrong, or there is nothing to mix
        total = sum(share.value for share in shares)
        if abs(total - 100) <= _ROUNDED_BY * len(shares):
            return
        added = " + ".join(decimals(share.value, 2) for share in shares)
        over = total > 100
        self.context.report(
            WRONG_QUANTITY.at(
                shares[-1].span,
                f"the shares of '{unit.name}' are {added} = {decimals(total, 2)} %, and {'no mix is more than' if over else 'a whole mix is'} 100 %",
                subject=(unit.name,),
                label=f"{decimals(abs(total - 100), 2)} % too {'much' if over else 'little'} with this",
                also=tuple(Label(share.span, "and this") for share in shares[:-1]),
                help=f"correct one of them: {decimals(shares[-1].value + 100 - total, 2)} % here, if the others are right"
                if 0 < shares[-1].value + 100 - total <= 100
                else "correct them, so that they make 100 % together",
                level=Level.ERROR if over else Level.WARNING,
            )
        )

    def _wet(self, item: nodes.BlendWet, unit: Unit, free: list[int]) -> list[BlendPath]:
        share = self.context.amount(item.share, SHARE)
        number = self.context.count(item.number, "loop number", 1, 99) if item.number else (free[0] if free else None)
        jacks = unit.loop(number) if number is not None else None
        if jacks is None:
            self.context.report(
                UNKNOWN.at(
                    item.span,
                    f"'{unit.name}' has no loop for this wet path",
                    subject=(unit.name,),
                    label="no send and return left",
                    also=(Label(unit.declared, "declared here"),),
                    help="declare its jacks in its block: loop 1 send s1 return r1",
                )
            )
            return []
        if number in free:
            free.remove(number)
        stops = self._between(unit, jacks.send, jacks.back, item.path, f"blend {unit.name}", When())
        return [BlendPath(share, True, number, item.inverted is not None, stops, item.span)] if share else []

    def _links(self, block: Any, kind: type[Any], signal: str, outs: tuple[str, ...], ins: tuple[str, ...]) -> None:
        for node in block.items:
            if isinstance(node, nodes.ControlLink) and (ends := self._usb(node)) is not None:
                self._join(Connection(*ends, "usb", False, signal, When(), node.span))
            elif isinstance(node, nodes.ControlLink) and self._one_is_usb(node):
                for each in (node.start, node.end):
                    self.ports.of_roles(each, ("usb",), "USB jack")
            elif isinstance(node, kind):
                what = "MIDI" if signal == "midi" else "control or expression"
                if self._turned(node, outs, ins, what):
                    continue
                start = self.ports.of_roles(node.start, outs, f"{what} output")
                end = self.ports.of_roles(node.end, ins, f"{what} input")
                shield = isinstance(node, nodes.MidiLink) and node.shield is not None
                if start is not None and end is not None:
                    crossed = node.crossover is not None
                    self._join(Connection(start, end, signal, False, signal, When(), node.span, crossed, shield))

    def _turned(self, node: Any, outs: tuple[str, ...], ins: tuple[str, ...], what: str) -> bool:
        """Whether a lead is written from its input to its output; a finding then."""
        roles = []
        for end in (node.start, node.end):
            thing = self.ports.things.get(end.thing.text)
            if thing is None:
                return False
            named = thing.jack(end.jack.text) if end.jack is not None else None
            mine = {jack.role for jack in thing.jacks if jack.role in (*outs, *ins)}
            roles.append({named.role} if named is not None else mine if end.jack is None else set())
        if not (roles[0] and roles[1] and roles[0] <= {*ins} and roles[1] <= {*outs}):
            return False
        whole = Span(node.start.span.source, node.start.span.start, node.end.span.end)
        right = f"{node.end.span.text} -> {node.start.span.text}"
        self.context.report(
            UNCLEAR.at(
                whole,
                f"this {what} lead runs from an input to an output",
                subject=(node.start.thing.text, node.end.thing.text),
                label="the wrong way round",
                mends=(Mend(f"turn it round: {right}", (Replace(whole, right),)),),
            )
        )
        return True

    def _usb(self, node: nodes.ControlLink) -> tuple[Port, Port] | None:
        """The two USB jacks that a control statement names."""
        start, end = self._usb_at(node.start), self._usb_at(node.end)
        return None if start is None or end is None else (start, end)

    def _one_is_usb(self, node: nodes.ControlLink) -> bool:
        """Whether one end of a control statement is a USB jack, so that the other was to be one."""
        return (self._usb_at(node.start) is None) != (self._usb_at(node.end) is None)

    def _usb_at(self, end: Any) -> Port | None:
        """The USB jack that an end names, or that is the only one of its thing which a lead of control could go into."""
        thing = self.ports.things.get(end.thing.text)
        if thing is None:
            return None
        if end.jack is not None:
            named = thing.jack(end.jack.text)
            return Port(thing.name, named.name) if named is not None and named.role == "usb" else None
        mine = [jack for jack in thing.jacks if jack.role.startswith(("usb", "control", "expression"))]
        return Port(thing.name, mine[0].name) if [jack.role for jack in mine] == ["usb"] else None


def _with_pair_of(thing: Any, named: Any) -> Any:
    """The thing with only that pair of which a named jack is one side: so a `=>` says which of several pairs it takes."""
    if thing is None or named is None:
        return thing
    return thing.replace(pairs=tuple(pair for pair in thing.pairs if named.name in pair))
