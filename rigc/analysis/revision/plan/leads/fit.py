"""A lead that is there and a lead that is needed -> whether the one can be the other, and what a hand has to do for
it."""

from __future__ import annotations

from rigc.analysis.leads.lengths.cable_lengths import Length
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.analysis.revision.board import BoardLead
from rigc.analysis.revision.plan.successors import Successors
from rigc.model.jacks import Port
from rigc.model.stock import Cable, Plug
from rigc.record import Record

TOO_SHORT, TOO_LONG, OTHER_CABLE, OTHER_PLUG = "too short", "too long", "other cable", "other plug"
OTHER_WIRING = "wired otherwise"
OTHER_INLET = "for another inlet"
UNKNOWN = "length not known"


class Fit(Record):
    """How a lead that is there serves as a lead that is needed: `ends[i]` is its end that becomes end i; `length` is
    what is left of it in tenths of a millimetre, and `cut` what is cut off beside the plugs. The other fields are the
    ends (of the lead that is needed) on which there is something to do."""

    ends: tuple[int, int]
    length: int
    plugged: tuple[int, ...]
    moved: tuple[int, ...]
    adaptor: tuple[int, ...]
    swapped: tuple[int, ...]
    labelled: tuple[int, ...]
    cut: int = 0

    @property
    def work(self) -> tuple[int, int, int]:
        """Plugs to fit, ends to move, labels to print: in this order of weight."""
        return len(self.plugged), len(self.moved) + len(self.adaptor), len(self.labelled)


class Bench(Record):
    """What fits depend on beside the two leads: the plugs and cables of the stock, and which unit succeeds which."""

    plugs: dict[str, Plug]
    after: Successors
    cables: dict[str, Cable]

    def carries_as_much(self, have: BoardLead, need: BoardLead) -> bool:
        """Whether the cable of `have` does what that of `need` does: as many conductors, and for power as thick ones. Of what is not
        known nobody can say so."""
        if have.cable == need.cable:
            return True
        one, other = self.cables.get(have.cable or ""), self.cables.get(need.cable or "")
        if one is None or other is None or one.conductors is None or other.conductors is None:
            return False
        if one.conductors < other.conductors:
            return False
        if need.signal not in ("dc", "ac"):
            return True
        areas = one.area_mm2, other.area_mm2
        return areas[0] is not None and areas[1] is not None and areas[0].value >= areas[1].value


def fit(have: BoardLead, need: BoardLead, window: Length, bench: Bench) -> Fit | str:
    """How `have` can be `need`, either way round, with the least work; else why not (the reason of the way that comes
    closest).

    A plug that is cut off takes with it what its successor takes in; the lead is then cut as short as the design
    has it, if it is too long. A lead that has the right plugs is only shortened where it lies, under its own number and
    between its own jacks: elsewhere it is worth more whole, as a spare and for the way back. A lead is not turned round where more plugs would have
    to be fitted for it.
    """
    if why := unlike(have, need):
        return why
    refits = {ends: _refitted(have, need, ends, bench) for ends in ((0, 1), (1, 0))}
    fewest = min(len(plugged) for plugged in refits.values())
    ways = [_way(have, need, window, bench, each) for each in refits.items() if len(each[1]) == fewest]
    fits = [way for way in ways if isinstance(way, Fit)]
    if fits:
        return min(fits, key=lambda way: way.work)
    order = (UNKNOWN, TOO_SHORT, TOO_LONG, OTHER_PLUG)
    return min((way for way in ways if isinstance(way, str)), key=order.index)


def unlike(have: BoardLead, need: BoardLead) -> str:
    """Why nothing that is done to its ends makes `have` into `need`; empty where something may."""
    if have.signal != need.signal or have.cable != need.cable:
        return OTHER_CABLE
    if sorted(have.inlets) != sorted(need.inlets):
        return OTHER_INLET
    return OTHER_WIRING if have.make.conductors != need.make.conductors else ""


def _way(
    have: BoardLead, need: BoardLead, window: Length, bench: Bench, turned: tuple[tuple[int, int], tuple[int, ...]]
) -> Fit | str:
    ends, plugged = turned
    shortened = not plugged and _is_shortened(have, need, ends, window, bench)
    if shortened:
        plugged = _shortened_at(have, need, ends, bench)
    lost = [_cut_in(bench.plugs, need.plugs[end]) for end in plugged]
    if None in lost or (plugged and have.leg_of is not None):
        return OTHER_PLUG
    if have.length is None:
        return UNKNOWN
    left = have.length - sum(each for each in lost if each is not None)
    if left < window.least:
        return TOO_LONG if shortened else TOO_SHORT
    if left > window.longest_kept and not plugged:
        return TOO_LONG
    cut = max(0, left - window.finished) if left > window.longest_kept else 0
    stands = [_stands(have, need, end, ends, bench.after) for end in (0, 1)]
    return Fit(
        ends,
        left - cut,
        plugged,
        tuple(e for e in (0, 1) if stands[e] == "moved"),
        tuple(e for e in (0, 1) if have.via[ends[e]] != need.via[e] and stands[e] != "moved"),
        tuple(e for e in (0, 1) if stands[e] == "swapped"),
        tuple(e for e in (0, 1) if have.labels[ends[e]] != need.labels[e] or (cut and e == plugged[-1])),
        cut,
    )


def _is_shortened(have: BoardLead, need: BoardLead, ends: tuple[int, int], window: Length, bench: Bench) -> bool:
    if have.length is None or have.length <= window.longest_kept or have.mark != need.mark:
        return False
    return all(_stands(have, need, end, ends, bench.after) != "moved" for end in (0, 1))


def _shortened_at(have: BoardLead, need: BoardLead, ends: tuple[int, int], bench: Bench) -> tuple[int, ...]:
    """The end at which a lead is shortened: one that is in a hand anyway before one that stays, a plug before what is
    soldered to a panel; none where no plug can be fitted, or where it is a leg of a Y lead."""
    able = [end for end in (0, 1) if _cut_in(bench.plugs, need.plugs[end]) is not None and have.leg_of is None]
    stays = {end: not _stands(have, need, end, ends, bench.after) for end in able}
    soldered = {end: (plug := bench.plugs.get(need.plugs[end] or "")) is not None and plug.soldered for end in able}
    return tuple(sorted(able, key=lambda end: (soldered[end], stays[end], -end))[:1])


def _stands(have: BoardLead, need: BoardLead, end: int, ends: tuple[int, int], after: Successors) -> str:
    """Whether an end stays (``), goes to the same jack of a successor (`swapped`), or elsewhere (`moved`)."""
    assert need.ends is not None
    old: Port | None = None if have.ends is None else have.ends[ends[end]]
    if old == need.ends[end]:
        return ""
    return "moved" if old is None or after.port(old) != need.ends[end] else "swapped"


def _refitted(have: BoardLead, need: BoardLead, ends: tuple[int, int], bench: Bench) -> tuple[int, ...]:
    """The ends at which a plug is to be fitted: another kind, or one that is soldered where the lead no longer goes."""

    def soldered_elsewhere(end: int) -> bool:
        plug = bench.plugs.get(have.plugs[ends[end]] or "")
        return plug is not None and plug.soldered and _stands(have, need, end, ends, bench.after) == "moved"

    return tuple(e for e in (0, 1) if have.plugs[ends[e]] != need.plugs[e] or soldered_elsewhere(e))


def _cut_in(plugs: dict[str, Plug], name: str | None) -> int | None:
    """What a plug takes in, in tenths of a millimetre; None where it comes on premade leads only, or is not known."""
    plug = plugs.get(name or "")
    return None if plug is None or plug.cut_in_mm is None else tenths(plug.cut_in_mm.value)
