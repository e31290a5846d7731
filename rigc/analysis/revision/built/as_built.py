"""The board of the revision before, as it was built: as designed, with the lengths, plugs and names that are really
there."""

from __future__ import annotations

import re

from rigc.analysis.leads.labels import TEMPLATE, label_text
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.analysis.previous import Previous
from rigc.analysis.results import Results
from rigc.analysis.revision.board import Board, BoardAdaptor, BoardLead
from rigc.model.jacks import Port
from rigc.model.records import BuiltLead


def as_built(previous: Previous, results: Results) -> Board:
    """The board of `results`, which are those of `previous`. Measured lengths and plugs take the place of designed
    ones, the latest counts; labels bear the names that things had when they were printed. Changes that are done
    since are no part of it."""
    designed = results.get(Board)
    measured = {lead.mark: lead for block in previous.as_built for lead in block.leads}
    template = results.rig.head.label or TEMPLATE
    then = dict(previous.renamed)
    leads = {mark: _built(lead, measured.get(mark), template, then) for mark, lead in designed.leads.items()}
    adaptors = {mark: _named_then(each, then) for mark, each in designed.adaptors.items()}
    ys = {mark: _label_then(label, then) for mark, label in designed.y_labels.items()}
    built: Board = designed.replace(leads=leads, adaptors=adaptors, y_labels=ys)
    return built


def _built(lead: BoardLead, measured: BuiltLead | None, template: str, then: dict[str, str]) -> BoardLead:
    found = lead
    if measured is not None:
        found = found.replace(length=tenths(measured.length_mm.value), plugs=measured.plugs or lead.plugs)
    if found.ends is not None and any(end.thing in then for end in found.ends):
        start, end = (Port(then.get(port.thing, port.thing), port.jack) for port in found.ends)
        flag = lead.make.flag
        texts = (label_text(template, lead.mark, start, end, flag), label_text(template, lead.mark, end, start, flag))
        found = found.replace(labels=texts)
    return found


def _named_then(adaptor: BoardAdaptor, then: dict[str, str]) -> BoardAdaptor:
    renamed: BoardAdaptor = adaptor.replace(label=_label_then(adaptor.label, then))
    return renamed


def _label_then(label: str, then: dict[str, str]) -> str:
    for now, name in then.items():
        label = re.sub(rf"(?<![\w-]){re.escape(now)}(?![\w-])", name, label)
    return label
