"""The leads and mounting blocks -> stated leads, numbers that are taken, and how things are held down."""

from __future__ import annotations

from typing import Any

from rigc.diagnostics.diagnostic import Diagnostic, Label, Level
from rigc.diagnostics.mend import AddTo, Delete, Mend, Replace
from rigc.diagnostics.near import nearest
from rigc.model.jacks import Port
from rigc.model.resolve.apart import two_things
from rigc.model.resolve.context import Context
from rigc.model.resolve.ports import Ports
from rigc.model.resolve.wishes.loose.loose_lead import Joints, LooseLead
from rigc.model.resolve.wishes.loose.told import told
from rigc.model.resolve.wishes.power import ALL
from rigc.model.scope import LOOSE_LEAD, SAID_TWICE, TAKEN, UNCLEAR, UNKNOWN, corrected, stated_twice, twice
from rigc.model.slips.unclear_feed import UNCLEAR_FEED
from rigc.model.things import Supply
from rigc.model.units.measures import LEAD, OFFSET, SLACK
from rigc.model.wishes import Adaptor, Connection, LeadFacts, LeadWishes, MountWishes, PowerWishes, When
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Word

_AUDIO = frozenset(("input", "output", "panel"))
MOUNTED = ("unit", "supply", "mains strip", "amp", "desk", "listener", "panel")


class Leads:
    """Reads the leads blocks."""

    def __init__(self, context: Context, ports: Ports, connections: dict[tuple[Port, Port], Connection]) -> None:
        self.context = context
        self.ports = ports
        self.connections = connections
        self.marks: dict[str, Word] = {}
        self.leads: dict[tuple[Port, Port], LeadFacts] = {}
        self.loose: list[LooseLead] = []
        self.adaptors: list[Adaptor] = []
        self.lists: dict[str, list[Any]] = {k: [] for k in ("retired", "ties", "lanes", "cables", "plugs", "cutting")}

    def read(self, power: PowerWishes, broken: frozenset[str] = frozenset()) -> LeadWishes:
        """All lead statements; a number given twice, retired and used, or on a lead that joins nothing is a finding.

        Leads of things that stand on a `broken` way join nothing for that reason, which is told already.
        """
        items = [node for block in self.context.of(nodes.LeadsBlock) for node in block.items]
        for node in items:
            if isinstance(node, nodes.Lead):
                self._lead(node, power)
            elif isinstance(node, nodes.Adaptor):
                self._adaptor(node, power)
        loose = [each for each in self.loose if not {each.start.thing, each.end.thing} & broken]
        free = tuple(joint for ends, joint in self.connections.items() if ends not in self.leads)
        chains = tuple(self.context.of(nodes.Chain))
        joints = Joints(self.ports.things, chains, self.connections, free, power)
        for finding in tuple(told(loose, joints, self.context)):
            self.context.report(finding)
        for node in items:
            self._other(node)
        return LeadWishes(
            tuple(self.leads.values()), tuple(self.adaptors), **{k: tuple(v) for k, v in self.lists.items()}
        )

    def _take(self, mark: Word) -> bool:
        if mark.text in self.marks:
            self.context.report(
                twice(
                    f"the number {mark.text}",
                    mark,
                    self.marks[mark.text],
                    "give one of them a fresh number; gaps are fine",
                )
            )
            return False
        self.marks[mark.text] = mark
        return True

    def _lead(self, node: nodes.Lead, power: PowerWishes) -> None:
        fresh = self._take(node.mark)
        start, end = self._end(node.start, "out"), self._end(node.end, "in")
        if start is None or end is None or not fresh:
            return
        if self._again(node, start, end) or self._into_no_inlet(node, start, end, power):
            return
        if self._through_air(node, start, end) or not self._joins(node, start, end, power):
            return
        if node.through is not None and node.run is not None and node.run.text == "over":
            self._over_and_through(node)
        self._captive(node, start, end)
        plugs = None
        if node.plugs is not None:
            found = [
                self.context.scopes["plug"].find(w, (), "a plug kind") for w in (node.plugs.first, node.plugs.second)
            ]
            plugs = (found[0], found[1]) if found[0] and found[1] else None
        cable = self.context.scopes["cable"].find(node.cable, (), "a cable") if node.cable else None
        self.leads[start, end] = LeadFacts(
            node.mark.text,
            start,
            end,
            plugs,
            cable,
            node.run.text if node.run else None,
            self.context.amount(node.slack.amount, SLACK) if node.slack else None,
            self.context.amount(node.made.length, LEAD) if node.made else None,
            node.made is not None and node.made.how.text == "premade",
            node.made.revision.value if node.made and node.made.revision else "",
            node.span,
            node.mark.span,
            (node.start.span, node.end.span),
            (node.plugs.first.span, node.plugs.second.span) if node.plugs is not None else (),
            node.cable.span if node.cable is not None else None,
            tuple(self.context.shared_values(OFFSET, *node.through.lines)) if node.through else (),
        )

    def _again(self, node: nodes.Lead, start: Port, end: Port) -> bool:
        """Whether another number is stated between these jacks: a finding then, for one lead goes there."""
        first = self.leads.get((start, end))
        if first is None:
            return False
        mends = tuple(
            Mend(f"delete {mark}", (Delete(span),))
            for mark, span in ((node.mark.text, node.span), (first.mark, first.span))
        )
        self.context.report(
            SAID_TWICE.at(
                node.span,
                f"{node.mark.text} joins {start} to {end}, as {first.mark} does: one lead goes there",
                subject=(node.mark.text, first.mark, start.thing, end.thing),
                label="stated again here",
                also=(Label(first.span, "first stated here"),),
                mends=mends,
            )
        )
        return True

    def _into_no_inlet(self, node: nodes.Lead, start: Port, end: Port, power: PowerWishes) -> bool:
        """Whether a lead from an outlet goes into a jack that takes no power; a finding then."""
        thing, supply = self.ports.things[end.thing], self.ports.things[start.thing]
        jack = thing.jack(end.jack)
        if jack is None or jack.role == "inlet" or not _feeds(power, start, end) or not isinstance(supply, Supply):
            return False
        inlets = [each.name for each in thing.jacks if each.role == "inlet"]
        self.context.report(
            UNCLEAR.at(
                node.end.span,
                f"{node.mark.text} goes from an outlet, {start}, into '{end}', which takes no power",
                subject=(node.mark.text, str(end), end.thing),
                label="a power inlet goes here",
                also=(Label(jack.span, f"declared as {jack.role}"),),
                mends=tuple(
                    Mend(
                        f"write `{node.mark.text} {start} -> {end.thing}.{name}`",
                        (Replace(node.end.span, f"{end.thing}.{name}"),),
                    )
                    for name in inlets[:1]
                ),
                help="" if inlets else f"declare the power inlet of '{end.thing}' in its block",
            )
        )
        return True

    def _captive(self, node: nodes.Lead, start: Port, end: Port) -> None:
        """A finding where a lead that grows out of a supply or a unit is said to be made, in another length than it has."""
        for port in (start, end):
            thing = self.ports.things[port.thing]
            jack = thing.outlet(port.jack) if isinstance(thing, Supply) else None
            captive = getattr(jack or thing.jack(port.jack), "captive_mm", None)
            said = self.context.amount(node.made.length, LEAD) if node.made and captive is not None else None
            if node.made is None or said is None or captive is None or said.value == captive.value:
                continue
            blank = Span(node.made.span.source, node.made.span.start - 1, node.made.span.end)
            self.context.report(
                SAID_TWICE.at(
                    node.made.span,
                    f"{node.mark.text} grows out of '{port}' and is {captive.typed} long; it is not made, in {said.typed} either",
                    subject=(node.mark.text, str(port), port.thing),
                    label="this can't be",
                    also=(Label(captive.span, "with this"),),
                    mends=(Mend(f"delete '{node.made}'", (Replace(blank, ""),)),),
                    help=f"if it was cut, write its length as `captive {said.typed}`",
                )
            )

    def _over_and_through(self, node: nodes.Lead) -> None:
        assert node.through is not None and node.run is not None
        gone = [Span(each.span.source, each.span.start - 1, each.span.end) for each in (node.run, node.through)]
        self.context.report(
            SAID_TWICE.at(
                node.through.span,
                f"{node.mark.text} goes over the deck and through it; what goes over it stays above",
                subject=(node.mark.text,),
                label="this can't be",
                also=(Label(node.run.span, "with this"),),
                mends=tuple(Mend(f"delete '{span.text.strip()}'", (Replace(span, ""),)) for span in gone),
            )
        )

    def _end(self, node: nodes.Endpoint, direction: str) -> Port | None:
        thing = self.ports.thing(node.thing)
        if thing is None:
            return None
        if isinstance(thing, Supply) and node.jack is not None and thing.outlet(node.jack.text) is not None:
            return Port(thing.name, node.jack.text)
        if node.jack is None:
            return self.ports.audio(thing, direction, None, node.span)
        jack = self.ports.jack(thing, node.jack)
        return Port(thing.name, jack.name) if jack else None

    def _through_air(self, node: nodes.Lead, start: Port, end: Port) -> bool:
        """Whether one of the jacks is no jack, but what comes through the air; a finding then."""
        jacks = [(port, self.ports.things[port.thing].jack(port.jack)) for port in (start, end)]
        for port, jack in jacks:
            if jack is not None and jack.connector.kind == "wireless":
                self.context.report(
                    LOOSE_LEAD.at(
                        node.span,
                        f"{node.mark.text} goes to '{port}', which is wireless: no lead goes there",
                        subject=(node.mark.text, start.thing, end.thing),
                        label="this lead",
                        also=(Label(jack.span, "wireless"),),
                        mends=(Mend(f"delete {node.mark.text}", (Delete(node.span),)),),
                        help="the lead to a body-pack is told in the instrument's block: `lead ___ m of ___`",
                    )
                )
                return True
        return False

    def _joins(self, node: nodes.Lead, start: Port, end: Port, power: PowerWishes) -> bool:
        if (start, end) in self.connections or _feeds(power, start, end):
            return True
        roles = [jack.role for port in (start, end) if (jack := self.ports.things[port.thing].jack(port.jack))]
        if roles == ["inlet", "inlet"]:
            self.connections[start, end] = Connection(start, end, "mains", False, "lead", When(), node.span)
            return True
        if isinstance(self.ports.things[start.thing], Supply):
            carries = "power"
        else:
            carries = "midi" if any("midi" in role for role in roles) else "audio" if {*roles} <= _AUDIO else "control"
        spans = (node.start.span, node.end.span)
        self.loose.append(LooseLead(node.mark.text, start, end, carries, node.span, spans))
        return False

    def _adaptor(self, node: nodes.Adaptor, power: PowerWishes) -> None:
        unit = self.context.scopes["thing"].find(node.unit, MOUNTED, "a unit")
        if self._take(node.mark) and unit is not None:
            self._of_use(node, power)
            self.adaptors.append(Adaptor(node.mark.text, node.kind.text, unit, node.span))

    def _of_use(self, node: nodes.Adaptor, power: PowerWishes) -> None:
        """A finding where a unit has an adaptor that joins two outlets, and is fed by a statement from one."""
        feed = next((each for each in power.feeds if node.unit.text in each.units), None)
        if feed is None or node.kind.text not in ("series", "parallel") or feed.how == node.kind.text:
            return
        self.context.report(
            UNCLEAR_FEED.at(
                node.span,
                f"{node.mark.text} joins two outlets in {node.kind.text} for '{node.unit.text}', which {feed.outlets[0]} feeds"
                if len(feed.outlets) == 1
                else f"{node.mark.text} joins two outlets in {node.kind.text} for '{node.unit.text}', which is fed in {feed.how}",
                subject=(node.mark.text, node.unit.text),
                label="this adaptor",
                also=(Label(feed.span, "fed so"),),
                mends=(Mend(f"delete '{node}'", (Delete(node.span),)),),
            )
        )

    def _other(self, node: Any) -> None:
        if isinstance(node, nodes.Retired):
            if node.mark.text in self.marks:
                used = self.marks[node.mark.text]
                self.context.report(
                    TAKEN.at(
                        used.span,
                        f"{used.text} is retired and can't be used again",
                        subject=(used.text,),
                        label="used here",
                        also=(Label(node.span, "retired here"),),
                        help="give this lead a fresh number; gaps are fine",
                    )
                )
            self.lists["retired"].append((node.mark.text, node.mark.span))
        elif isinstance(node, nodes.Tie):
            self.lists["ties"].append((node.first.text, node.second.text))
            two_things(self.context, node.first, node.second, "leads")
            for mark in (node.first, node.second):
                known_mark(self.context, mark, self.marks)
        elif isinstance(node, nodes.Lane):
            self.lists["lanes"].append((node.signal.text, self.context.value(node.y, OFFSET)))
        elif isinstance(node, nodes.StockChoice):
            if self.context.scopes["cable"].find(node.cable, (), "a cable"):
                self.lists["cables"].append((node.signal.text, node.cable.text))
        elif isinstance(node, nodes.PlugChoice):
            if self.context.scopes["plug"].find(node.plug, (), "a plug kind"):
                self.lists["plugs"].append((node.signal.text, node.plug.text))
        elif isinstance(node, nodes.Cutting):
            self.lists["cutting"].append((node.signal.text, node.how.text))


def known_mark(context: Context, mark: Word, marks: dict[str, Word], may_be_gone: bool = False) -> bool:
    """Whether a lead number is stated; a finding where not. One that `may_be_gone` may be retired instead."""
    if mark.text in marks:
        return True
    near = nearest(mark.text, marks)
    context.report(
        UNKNOWN.at(
            mark.span,
            f"no lead bears the number {mark.text}",
            subject=(mark.text,),
            label=f"did you mean {near}?" if near else "no such lead",
            mends=(
                Mend(f"write `retired {mark.text}` if it is taken off", (AddTo("leads", "", f"retired {mark.text}"),)),
            )
            if may_be_gone
            else (),
            help=f"write {near}" if near else "state the lead in a leads block",
        )
    )
    return False


def _feeds(power: PowerWishes, start: Port, end: Port) -> bool:
    return any(start in feed.outlets for feed in power.feeds_of.get(end.thing, ()))


_FIXINGS = {
    "bolts": "bolted", "bolt": "bolted", "screws": "screwed", "screw": "screwed", "bracket": "brackets", "brackets": "brackets",
}  # fmt: skip


def _fixing_meant(context: Context, node: nodes.Mount) -> Diagnostic | None:
    """`pedal with bolts`: how a thing is held beside strips stands straight behind its name."""
    how = _FIXINGS.get(node.strip.text, "")
    if not how or node.strip.text in context.scopes["strip"].declared:
        return None
    names = ", ".join(word.text for word in node.things)
    return UNKNOWN.at(
        node.strip.span,
        f"'{node.strip.text}' is no strip; what is held by {node.strip.text} is {how if how != 'brackets' else 'in brackets'}",
        subject=(node.strip.text,),
        label="not a strip",
        mends=(Mend(f"write {names} {how}", (Replace(node.span, f"{names} {how}"),)),),
    )


def mounting(context: Context) -> MountWishes:
    """All mounting statements."""
    all_with: str | None = None
    strips: dict[str, str] = {}
    fixings: dict[str, str] = {}
    bridged: dict[str, str] = {}
    stripped: dict[str, Word] = {}
    fixed: dict[str, Word] = {}
    scope = context.scopes["thing"]
    for block in context.of(nodes.MountingBlock):
        for node in block.items:
            if isinstance(node, nodes.MountAll):
                all_with = context.scopes["strip"].find(node.strip, (), "a strip")
            elif isinstance(node, nodes.Mount):
                if (told := _fixing_meant(context, node) or _all_meant(context, node)) is not None:
                    context.report(told)
                    continue
                strip = context.scopes["strip"].find(node.strip, (), "a strip")
                for word in node.things:
                    if scope.find(word, MOUNTED, "a unit or a supply") and strip:
                        _once(context, f"the strip of '{word.text}'", stripped, word)
                        strips[word.text] = strip
            elif isinstance(node, nodes.Fixing):
                for word in node.things:
                    if scope.find(word, MOUNTED, "a unit or a supply"):
                        _once(context, f"how '{word.text}' is held beside strips", fixed, word)
                        fixings[word.text] = node.how.text
            elif isinstance(node, nodes.Bridged) and scope.find(node.thing, MOUNTED, "a unit or a supply"):
                bridged[node.thing.text] = node.text.value if node.text else ""
    for name, word in fixed.items():
        if name in stripped and fixings[name] != "brackets":
            context.report(_held_by_both(name, fixings[name], strips[name], word, stripped[name]))
    return MountWishes(all_with, tuple(strips.items()), tuple(fixings.items()), tuple(bridged.items()))


def _all_meant(context: Context, node: nodes.Mount) -> Diagnostic | None:
    """`everything with mushroom`: no thing bears that name, and `all` is meant."""
    word = node.things[0]
    if len(node.things) > 1 or word.text not in ALL or word.text in context.scopes["thing"].declared:
        return None
    return UNKNOWN.at(
        word.span,
        f"nothing declares '{word.text}'; all that no other line names are called 'all' here",
        subject=(word.text,),
        label="here it is 'all'",
        mends=corrected(word, "all"),
    )


def _held_by_both(name: str, fixing: str, strip: str, fixed: Word, stripped: Word) -> Diagnostic:
    """What bolts or screws draw down needs no strip, and does not lie flat on it."""
    mends = tuple(
        Mend(f"delete `{line}`", (Delete(each.span),))
        for each in (stripped, fixed)
        if "," not in (line := each.span.source.line(each.span.line).partition("#")[0].strip())
    )
    return SAID_TWICE.at(
        fixed.span,
        f"'{name}' is {fixing}, and is given the strip '{strip}' too",
        subject=(name,),
        label=f"{fixing} here",
        also=(Label(stripped.span, "given strip here"),),
        mends=mends,
        help="" if len(mends) == 2 else f"take '{name}' out of one of the two lines",
        level=Level.REMARK,
    )


def _once(context: Context, what: str, told: dict[str, Word], word: Word) -> None:
    """A finding where two lines tell the same of a thing."""
    first = told.setdefault(word.text, word)
    if first is not word:
        context.report(stated_twice(what, word, first))
