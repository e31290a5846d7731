"""Fewer spare leads are carried than the class of the rig asks.

Why it matters: on the road a lead fails in the middle of a set, and no shop is open.
What to do: carry leads as long as the longest of the board, and say so in a spares block: `2 audio lead 1300 mm in "lid pocket"`.
A gigging rig carries an audio lead and a DC lead; a touring or fly rig two audio leads, a DC lead for each kind of DC plug and
a MIDI lead; none of a signal that the board does not use. Stage leads don't count, nor does a lead for which a straight one is no spare: one that is
reversed or crossed, a leg of a Y lead, a captive one.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.meant_places import wholly_off
from rigc.analysis.deck.placement import Placement
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.lengths.lead_spares import SparesAsked, spares_asked
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.model.rig import Rig

KIND = Kind(
    "too-few-spares",
    Level.REMARK,
    __doc__,
    "spare leads as long as the longest: gigging 1 audio, 1 DC; touring, fly 2 audio, 1 DC per plug kind, 1 MIDI",
    "common practice, no source",
)


def too_few_spares(rig: Rig, leads: Leads, lengths: CableLengths, placement: Placement) -> Iterator[Diagnostic]:
    """One finding for all signals that lack spares; a can't-check where a longest lead is not known and could be longer. Nothing while a thing
    lies wholly off its deck: leads are as long as to there."""
    decks = rig.decks
    if any(body.deck in decks and wholly_off(body, decks[body.deck]) for body in placement.outlines.values()):
        return
    asked = spares_asked(rig, leads, lengths)
    short = [each for each in asked if each.carried < each.number]
    if short:
        yield _told(rig, short)
    unsure = [each for each in asked if each.carried >= each.number and each.unknown]
    if unsure:
        marks = ", ".join(mark for each in unsure for mark in each.unknown)
        yield KIND.cant_check(
            rig.head.span,
            f"whether the spare leads of '{rig.head.name}' are long enough is not known, for want of the length of {marks}",
            subject=(rig.head.name,),
            help="the cable list says what is missing to reckon it",
            wants=tuple(f"the length of {mark}" for each in unsure for mark in each.unknown),
        )


def _told(rig: Rig, short: list[SparesAsked]) -> Diagnostic:
    lacking = "; ".join(f"{each.signal} {each.carried} of {each.number}{_as_long(each)}" for each in short)
    statements = ", ".join(_statement(each) for each in short)
    return KIND.at(
        rig.head.span,
        f"'{rig.head.name}' carries too few spare leads for a {rig.head.rig_class} rig: {lacking}",
        subject=(rig.head.name, *(each.signal for each in short)),
        label=f"class {rig.head.rig_class}",
        also=tuple(Label(span, "too short") for each in short for span in each.too_short),
        numbers=tuple(
            Number(f"longest {each.signal} lead", each.longest / 10, "mm") for each in short if each.longest_mark
        ),
        help=f"carry them, and say so in a spares block: {statements}",
    )


def _as_long(each: SparesAsked) -> str:
    length = f" as long as {each.longest_mark} ({_millimetres(each)})" if each.longest_mark else ""
    return length + (
        f", one for each kind of {each.signal.upper()} plug" if each.signal in ("dc", "ac") and each.number > 1 else ""
    )


def _statement(each: SparesAsked) -> str:
    length = _millimetres(each) if each.longest_mark else "... mm"
    return f"`{each.number - each.carried} {each.signal} lead {length}`"


def _millimetres(each: SparesAsked) -> str:
    return f"{each.longest / 10:g} mm"


CHECK = too_few_spares
