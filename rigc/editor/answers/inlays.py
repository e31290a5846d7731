"""Lines of leads and feeds -> what is told behind them: finished and cut length, load in percent."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.editor.computed import Computed
from rigc.editor.draft import Draft
from rigc.model.jacks import Port
from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax import nodes


class Inlay(Record):
    """`text` behind the statement that ends at `offset`; `why` names the figure to ask of."""

    offset: int
    text: str
    why: str


def inlays(
    draft: Draft, computed: Computed | None, source: Source, start: int = 0, end: int | None = None
) -> tuple[Inlay, ...]:
    """Those between two offsets of a source; none before anything was computed."""
    if computed is None:
        return ()
    last = len(source.text) if end is None else end
    found = [*_leads(draft, computed, source), *_feeds(draft, computed, source)]
    return tuple(sorted((each for each in found if start <= each.offset <= last), key=lambda each: each.offset))


def _blocks(
    draft: Draft, source: Source, kind: type[nodes.LeadsBlock] | type[nodes.PowerBlock]
) -> Iterator[nodes.Node]:
    for statement in draft.read.gathered.statements:
        if isinstance(statement, kind) and statement.span.source is source:
            yield from statement.items


def _leads(draft: Draft, computed: Computed, source: Source) -> Iterator[Inlay]:
    lengths = computed.get(CableLengths).lengths
    for item in _blocks(draft, source, nodes.LeadsBlock):
        if isinstance(item, nodes.Lead) and item.mark.text in lengths:
            length = lengths[item.mark.text]
            cut = f", cut {length.cutting.text} mm" if length.cut is not None else ""
            yield Inlay(_end(item.span), f"{length.made.text} mm{cut}", f"{item.mark.text}.finished")


def _feeds(draft: Draft, computed: Computed, source: Source) -> Iterator[Inlay]:
    loads = computed.get(PowerAssignment).loads
    for item in _blocks(draft, source, nodes.PowerBlock):
        if isinstance(item, nodes.Feed):
            told = []
            for end in item.outlets:
                load = None if end.jack is None else loads.get(Port(end.thing.text, end.jack.text))
                if load is not None:
                    told.append(
                        (f"{load.share.text} %" if load.percent is not None else "load not known", load.share.name)
                    )
            if told:
                yield Inlay(_end(item.span), ", ".join(text for text, _ in told), told[0][1])


def _end(span: Span) -> int:
    return span.start + len(span.text.rstrip())
