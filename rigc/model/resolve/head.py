"""The rig block and the scenarios -> what identifies the rig, and where it plays."""

from __future__ import annotations

import re
from typing import Any

from rigc.diagnostics.diagnostic import Diagnostic, Label, Level
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.diagnostics.wording import joined
from rigc.model.records import Change, Frozen, Limit
from rigc.model.resolve.context import Context, items_of
from rigc.model.resolve.country import country
from rigc.model.resolve.ports import Ports
from rigc.model.resolve.record.changes import change
from rigc.model.resolve.things.supply import mains_range
from rigc.model.rig import Head, Scenario
from rigc.model.scope import MISUSED, UNCLEAR
from rigc.model.slips.no_rig import NO_RIG
from rigc.model.slips.unfit_text import UNFIT_TEXT
from rigc.model.things import ENDS
from rigc.model.units.measures import APPARENT, LIMIT_PF, MAINS, MOST_MASS, SHARE_OF_RATING, SHOW
from rigc.model.units.quantities import money
from rigc.model.ways.lift_jacks import lift_jacks
from rigc.syntax import nodes

LIMITS = {
    "load": SHARE_OF_RATING,
    "digital load": SHARE_OF_RATING,
    "total": SHARE_OF_RATING,
    "capacitance": LIMIT_PF,
    "lift": MOST_MASS,
    "airline": MOST_MASS,
    "case": MOST_MASS,
}
_ON_MAINS = ("supply", *ENDS, "unit", "source")
"""What may have a mains lead of its own."""
LABEL_FIELDS = ("id", "here", "far")


def _none(context: Context) -> Diagnostic:
    return NO_RIG.at(
        context.end,
        "no rig is declared",
        label="a rig block goes here",
        help='write: rig NAME "Title" { ... } with a line: revision A 2026-03-02',
    )


def _several(context: Context, blocks: list[nodes.Rig]) -> Diagnostic:
    """Told at one of a used file, or else at the last."""
    own = [block for block in blocks if block.name.span.source is context.end.source]
    other = next((block for block in blocks if block not in own), blocks[-1])
    rest = [block for block in blocks if block is not other]
    names = ", ".join(f"'{block.name}'" for block in blocks)
    return NO_RIG.at(
        other.name.span,
        f"{len(blocks)} rigs are declared ({names}), and a file and all that it uses make one rig",
        label="one too many",
        also=tuple(Label(block.name.span, "declared here") for block in rest),
        help=f"move what both need out of '{other.name.span.source.name}' into a file without a rig block, and use that"
        if own and other not in own
        else "keep one, and put the other into a file of its own",
    )


def head(context: Context) -> Head | None:
    """The one rig block; None after a finding."""
    blocks = list(context.of(nodes.Rig))
    if len(blocks) != 1:
        context.report(_several(context, blocks) if blocks else _none(context))
        return None
    block = blocks[0]
    items_of(context, tuple(i for i in block.items if not isinstance(i, nodes.Limit | nodes.Change)), [])
    fields: dict[str, Any] = {
        "letter": "", "date": "", "revision_text": "", "rig_class": "", "client": "", "drawn": "", "checked": "",
        "frozen": None, "follows": None, "marker_characters": None, "label": None, "show_min": None,
        "rate": None,
    }  # fmt: skip
    limits: list[Limit] = []
    changes: dict[int, Change] = {}
    for item in block.items:
        _item(context, item, fields, limits, changes)
    if not fields["letter"]:
        context.report(
            NO_RIG.at(
                block.name.span,
                f"'{block.name.text}' states no revision",
                label="this rig",
                help="add a line to its block: revision A 2026-03-02",
            )
        )
    title = block.title.value if block.title else block.name.text
    return Head(
        block.name.text, title, **fields, limits=tuple(limits), changes=tuple(changes.values()), span=block.name.span
    )


def _item(context: Context, item: Any, fields: dict[str, Any], limits: list[Limit], changes: dict[int, Change]) -> None:
    if isinstance(item, nodes.Revision):
        text = item.text.value if item.text else ""
        fields.update(letter=item.letter.text, date=item.date.text, dated=item.date.span, revision_text=text)
    elif isinstance(item, nodes.Class):
        fields["rig_class"] = item.kind.text
    elif isinstance(item, nodes.Client):
        fields["client"] = item.code.value
    elif isinstance(item, nodes.Drawn):
        fields["drawn"] = item.who.value
    elif isinstance(item, nodes.Checked):
        fields["checked"] = item.who.value
    elif isinstance(item, nodes.Frozen):
        seal = item.seal.value if item.seal else ""
        fields["frozen"] = Frozen(item.date.text, item.who.value, seal, item.span)
    elif isinstance(item, nodes.Follows):
        fields["follows"] = (item.letter.text, item.path.value)
    elif isinstance(item, nodes.Marker):
        fields["marker_characters"] = context.count(item.characters, "number of characters", 4, 200)
    elif isinstance(item, nodes.ShowLength):
        fields["show_min"] = context.chosen(item.amount, SHOW)
    elif isinstance(item, nodes.WorkRate):
        fields["rate"] = money(item.amount, context.report, None)
    elif isinstance(item, nodes.Label):
        fields["label"] = _label(context, item)
    elif isinstance(item, nodes.Limit):
        amount = context.chosen(item.amount, LIMITS[item.what.text])
        if amount is not None:
            limits.append(Limit(item.what.text, amount, item.source.value if item.source else "", item.span))
    elif isinstance(item, nodes.Change):
        change(context, item, changes)


def _label(context: Context, item: nodes.Label) -> str:
    template = item.template.value
    unknown = [field for field in re.findall(r"\{([^}]*)\}?", template) if field not in LABEL_FIELDS]
    if unknown:
        fields = joined((f"{{{field}}}" for field in dict.fromkeys(unknown)), "and")
        context.report(
            UNFIT_TEXT.at(
                item.template.span,
                f"a label knows no {fields}",
                label="in this template",
                help="use {id}, {here} and {far}",
            )
        )
    if "{id}" not in template and not unknown:
        context.report(
            UNFIT_TEXT.at(
                item.template.span, "this label does not bear the lead's number", label="no {id}", help="add {id}"
            )
        )
    return template


LIFTED = ("unit", "amp", "desk", "listener", "source", "supply", "panel")
"""What may have a ground lift: an instrument's jack has none."""


def _lifted(context: Context, ports: Ports, item: nodes.GroundLift) -> bool:
    """Whether a scenario's lift is at a jack; a finding where it is not, and where nothing says that this jack has one."""
    name = context.scopes["thing"].find(item.at.thing, LIFTED, "a thing with a ground lift")
    thing = ports.things.get(name) if name else None
    if thing is None:
        return False
    lifts = lift_jacks(thing)
    if item.at.jack is None:
        context.report(
            UNCLEAR.at(
                item.at.span,
                f"a ground lift is at a jack; which one of '{thing.name}' is meant?",
                subject=(thing.name,),
                label="the jack is missing",
                also=(Label(thing.declared, "declared here"),),
                mends=tuple(
                    Mend(f"write {thing.name}.{jack}", (Replace(item.at.span, f"{thing.name}.{jack}"),))
                    for jack in lifts
                ),
                help="" if lifts else f"name it: {thing.name}.___",
            )
        )
        return False
    jack = ports.jack(thing, item.at.jack)
    if jack is not None and jack.name not in lifts:
        context.report(
            MISUSED.at(
                item.at.span,
                f"nothing says that '{item.at}' has a ground lift: its block states none, and no way through a transformer ends there",
                subject=(str(item.at), thing.name),
                label="a jack with a ground lift goes here",
                also=(Label(jack.span, "this jack"),),
                mends=(Mend(f"delete '{item}'", (Delete(item.span),)),),
                help=f"if it has one, state in the block of '{thing.name}' how it leaves its maker: "
                f"lift {jack.name} open, or lift {jack.name} closed",
                level=Level.WARNING,
            )
        )
    return jack is not None


def scenarios(context: Context, ports: Ports) -> dict[str, Scenario]:
    """All scenarios by name."""
    return {block.name.text: _scenario(context, ports, block) for block in context.of(nodes.Scenario)}


def _scenario(context: Context, ports: Ports, block: nodes.Scenario) -> Scenario:
    scope = context.scopes["thing"]
    fields: dict[str, Any] = {
        "mains": None, "country": None, "selectors": (), "transformers": (), "lifts": (), "amps": None, "notes": (),
        "lift_spans": (),
    }  # fmt: skip
    for item in block.items:
        if isinstance(item, nodes.Mains):
            fields["mains"] = mains_range(context, item)
        elif isinstance(item, nodes.Country):
            fields["country"] = country(context, item.code)
        elif isinstance(item, nodes.Selector):
            supply, volts = (
                scope.find(item.supply, _ON_MAINS, "a supply or an amp"),
                context.chosen(item.voltage, MAINS),
            )
            if supply is not None and volts is not None:
                fields["selectors"] = (*fields["selectors"], (supply, volts))
        elif isinstance(item, nodes.Transformer):
            supply = scope.find(item.supply, _ON_MAINS, "a supply or an amp")
            amounts = (
                context.chosen(item.primary, MAINS),
                context.chosen(item.secondary, MAINS),
                context.chosen(item.rating, APPARENT),
            )
            if supply is not None and all(amounts):
                fields["transformers"] = (*fields["transformers"], (supply, *amounts))
        elif isinstance(item, nodes.GroundLift):
            if _lifted(context, ports, item):
                fields["lifts"] = (*fields["lifts"], (str(item.at), item.position.text))
                fields["lift_spans"] = (*fields["lift_spans"], (str(item.at), item.position.span))
        elif isinstance(item, nodes.Amps):
            names = tuple(n for word in item.names if (n := scope.find(word, ENDS, "an amp, a desk or a listener")))
            fields["amps"] = (*(fields["amps"] or ()), *names)
        elif isinstance(item, nodes.Note):
            fields["notes"] = (*fields["notes"], item.text.value)
    title = block.title.value if block.title else ""
    return Scenario(block.name.text, title, block.name.span, **fields)
