"""Spares, field notes and accepted findings, as stated."""

from __future__ import annotations

from collections.abc import Container

from rigc.diagnostics.diagnostic import Label, Level
from rigc.diagnostics.mend import Mend, Replace
from rigc.model.records import Accept, FieldNote, Spare
from rigc.model.resolve.context import Context
from rigc.model.scope import MISUSED, twice
from rigc.model.slips.unfit_text import UNFIT_TEXT
from rigc.model.units.measures import LEAD
from rigc.syntax import nodes
from rigc.syntax.nodes import Word

_CARRIED = ("unit", "supply", "mains strip", "amp", "desk", "listener", "instrument", "source")


def spares(context: Context, used: Container[str]) -> tuple[Spare, ...]:
    """Spares carried; a thing that sound goes through, among those `used`, is none."""
    found = []
    named: dict[str, Word] = {}
    bags: dict[str, nodes.Text] = {}
    for block in context.of(nodes.SparesBlock):
        for node in block.items:
            if isinstance(node, nodes.SpareUnit | nodes.SpareLead | nodes.SparePlug | nodes.SpareThing) and node.bag:
                _one_spelling(context, bags, node.bag)
            if isinstance(node, nodes.SpareUnit):
                found += _thing(context, node, named, used)
                continue
            if not isinstance(node, nodes.SpareLead | nodes.SparePlug | nodes.SpareThing):
                continue
            count = context.count(node.number, "number of spares", 1, 999)
            bag = node.bag.value if node.bag else ""
            length = context.chosen(node.length, LEAD) if isinstance(node, nodes.SpareLead) else None
            if isinstance(node, nodes.SpareLead):
                what = f"{node.signal} lead"
            elif isinstance(node, nodes.SparePlug):
                what = f"plug {context.scopes['plug'].find(node.plug, (), 'a plug kind') or ''}".strip()
            else:
                what = node.what.value
            if count is not None:
                found.append(Spare(count, what, length, bag, node.span))
    return tuple(found)


def _one_spelling(context: Context, bags: dict[str, nodes.Text], bag: nodes.Text) -> None:
    """A finding where a bag's name differs from that of an earlier one by capitals alone."""
    first = bags.setdefault(bag.value.casefold(), bag)
    if first.value != bag.value:
        context.report(
            MISUSED.at(
                bag.span,
                f"the bags {first} and {bag} differ in capitals only",
                label="another bag, or the same?",
                also=(Label(first.span, "first here"),),
                mends=(Mend(f"write {first}", (Replace(bag.span, str(first)),)),),
                otherwise="if they are two bags, give one a name of its own",
                level=Level.REMARK,
            )
        )


def _thing(context: Context, node: nodes.SpareUnit, named: dict[str, Word], used: Container[str]) -> list[Spare]:
    """A thing that is declared; named twice it is told."""
    name = context.scopes["thing"].find(node.name, _CARRIED, "a thing that travels")
    if name is None:
        return []
    if name in named:
        context.report(twice(f"the spare '{name}'", node.name, named[name], "delete one of them"))
        return []
    named[name] = node.name
    if name in used:
        _, first = context.scopes["thing"].declared[name]
        context.report(
            MISUSED.at(
                node.name.span,
                f"'{name}' is played on this rig, so it is no spare of it",
                subject=(name,),
                label="in use",
                also=(Label(first.span, "declared here"),),
                help=f"declare what travels, for example as unit {name}-spare like {name}, and name that",
                level=Level.WARNING,
            )
        )
    return [Spare(1, name, None, node.bag.value if node.bag else "", node.span, name)]


def field_notes(context: Context) -> tuple[FieldNote, ...]:
    """Field notes in order."""
    found: dict[int, FieldNote] = {}
    for node in context.of(nodes.FieldNote):
        number = context.count(node.number, "field note number", 1, 9999)
        if number is None:
            continue
        if number in found:
            context.report(
                twice(
                    f"field note {number}", node.number, Word("", found[number].span), "give one of them another number"
                )
            )
        state = node.state.text if node.state else ""
        by = node.who.value if node.who else ""
        found[number] = FieldNote(number, node.date.text, node.text.value, by, state, node.span)
    return tuple(found.values())


def accepts(context: Context) -> tuple[Accept, ...]:
    """Accepted findings; what they are about, a thing, a lead or the rig itself, must exist."""
    found = []
    rigs = {node.name.text for node in context.of(nodes.Rig)}
    for node in context.of(nodes.Accept):
        target: str | None = None
        if isinstance(node.target, nodes.LeadMark):
            target = node.target.mark.text
        elif node.target is not None:
            target = str(node.target)
            name = node.target.thing
            families = [scope for scope in context.scopes.values() if name.text in scope.declared]
            if not families and name.text not in rigs:
                context.scopes["thing"].find(name, (), "what the finding is about")
                continue
        if not node.reason.value.strip() or not node.who.value.strip():
            context.report(
                UNFIT_TEXT.at(
                    node.span,
                    f"{node.rule} is accepted without a reason or a name",
                    label="empty",
                    help="write why it may stay, and who says so",
                )
            )
            continue
        found.append(
            Accept(
                node.rule.text,
                target,
                node.reason.value,
                node.who.value,
                node.date.text,
                node.span,
                node.rule.span,
                "" if node.seal is None else node.seal.value,
                None if node.seal is None else node.seal.span,
            )
        )
    return tuple(found)
