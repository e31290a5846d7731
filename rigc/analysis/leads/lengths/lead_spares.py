"""The class of the rig, its leads and lengths -> how many spare leads of each signal it shall carry, how long, and how many it does."""

from __future__ import annotations

from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.facts import spares
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.source import Span


class SparesAsked(Record):
    """So many spare leads of a signal, each at least `longest` tenths of a millimetre long, as the lead `longest_mark` is.

    `carried` counts those that are long enough, `too_short` are the statements of others; `unknown` names leads without
    a length.
    """

    signal: str
    number: int
    longest: int
    longest_mark: str
    carried: int
    too_short: tuple[Span, ...]
    unknown: tuple[str, ...]


def spares_asked(rig: Rig, leads: Leads, lengths: CableLengths) -> tuple[SparesAsked, ...]:
    """What the class asks, of the signals that leads of the board carry; nothing where no class is stated. Leads for which no straight
    one stands in don't count."""
    found = []
    for signal in ("audio", "dc", "ac", "midi"):
        own = [lead for lead in leads.all if lead.signal == signal and straight_stands_in(lead)]
        number = _number(rig.head.rig_class, signal, own)
        if own and number:
            found.append(_asked(rig, signal, number, own, lengths))
    return tuple(found)


def straight_stands_in(lead: Lead) -> bool:
    """Whether a straight spare lead, long enough, can take the place of a lead on the board: not of one that is turned, of a leg of a Y
    lead, or of one that is fixed to a unit or a brick."""
    return not (lead.stage or lead.make.turned or lead.leg_of or lead.captive is not None)


def spare_tenths(lengths: CableLengths, lead: Lead) -> int | None:
    """How long a spare of that lead is: as long as it is; of one that is stated longer than its way takes up (unfit-lead-length), as it would
    be made."""
    length, existing = lengths.lengths.get(lead.mark), lead.existing_mm
    if length is not None and existing is not None and tenths(existing.value) > length.most:
        return length.finished
    return lengths.supplied_tenths(lead.mark)


def _number(rig_class: str, signal: str, own: list[Lead]) -> int:
    if signal in ("dc", "ac") and rig_class in spares.DC_PER_PLUG:
        kinds = {plug for lead in own for plug in lead.ends[1:] if plug is not None}
        return round(spares.DC_PER_PLUG[rig_class].value) * max(1, len(kinds))
    facts = {"audio": spares.AUDIO, "dc": spares.DC, "ac": spares.DC, "midi": spares.MIDI}[signal]
    return round(facts[rig_class].value) if rig_class in facts else 0


def _asked(rig: Rig, signal: str, number: int, own: list[Lead], lengths: CableLengths) -> SparesAsked:
    known = {lead.mark: length for lead in own if (length := spare_tenths(lengths, lead)) is not None}
    longest, mark = max(((length, mark) for mark, length in known.items()), default=(0, ""), key=lambda each: each[0])
    stated = [
        (spare, spare.length_mm.value) for spare in rig.spares if spare.length_mm and spare.what == f"{signal} lead"
    ]
    return SparesAsked(
        signal,
        number,
        longest,
        mark,
        sum(spare.count for spare, length_mm in stated if tenths(length_mm) >= longest),
        tuple(spare.span for spare, length_mm in stated if tenths(length_mm) < longest),
        tuple(lead.mark for lead in own if lead.mark not in known),
    )
