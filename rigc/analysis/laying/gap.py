"""A rig whose things all have places -> the length of each lead beside the least that it could have."""

from __future__ import annotations

from rigc.analysis.deck.unplaced import as_stated, own_deck
from rigc.analysis.laying.board_of_rig import board_of
from rigc.analysis.laying.search.least_lengths import least_lengths
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.model.rig import Rig
from rigc.model.things import Thing
from rigc.record import Record


class LeadGap(Record):
    """A lead of the board: its finished length and the least one, in tenths of a millimetre, and how that would run."""

    mark: str
    signal: str
    start: str
    end: str
    finished: int
    least: int
    how: str


def lead_gaps(rig: Rig, leads: Leads, lengths: CableLengths) -> tuple[LeadGap, ...]:
    """Every lead with a length whose ends are on the deck; chosen places count as free, stated ones do not."""
    deck = own_deck(rig)
    if deck is None or deck.width_mm is None:
        return ()
    free = tuple(
        thing for name, place in rig.places.items() if place.chosen and isinstance(thing := rig.things[name], Thing)
    )
    board = board_of(
        as_stated(rig), deck, leads, free, sides={thing.name: rig.places[thing.name].under for thing in free}
    )
    known = {mark: length.finished for mark, length in lengths.lengths.items()}
    least = least_lengths(board, [known.get(link.mark, 0) for link in board.links])
    ends = {lead.mark: (str(lead.start), str(lead.end)) for lead in leads.all}
    return tuple(
        LeadGap(
            link.mark, link.signal, *ends[link.mark], known[link.mark], min(bound.length, known[link.mark]), bound.how
        )
        for link, bound in zip(board.links, least, strict=True)
        if link.mark in known
    )
