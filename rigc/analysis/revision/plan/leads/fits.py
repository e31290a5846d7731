"""Leads that are there and leads that are needed -> every fit of the one for the other, without trying all pairs by hand.

Most pairs are strangers: no jack and no label is common to both. How strangers fit hangs on their kinds alone (cable,
plugs, lengths), and of kinds a board has few.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.leads.lengths.cable_lengths import Length
from rigc.analysis.revision.board import BoardLead
from rigc.analysis.revision.plan.leads.fit import Bench, Fit, fit
from rigc.model.jacks import Port

_Word = Port | str
_Kind = tuple[object, ...]
_Cable = tuple[str, str | None]


def all_fits(
    needs: tuple[BoardLead, ...], windows: dict[str, Length], haves: tuple[BoardLead, ...], bench: Bench
) -> dict[str, dict[int, Fit]]:
    """By the number of each needed lead, the ranks in `haves` of what can serve as it, and how.

    The legs of Y leads only ever serve as themselves.
    """
    known, peers = _known(haves, bench), _peers(haves)
    of_kinds: dict[_Kind, dict[_Kind, Fit | str]] = {}
    found: dict[str, dict[int, Fit]] = {}
    for need in needs:
        window = windows[need.mark]
        near = {at for word in _words(need) for at in known.get(word, ())}
        row: dict[int, Fit] = {}
        if need.leg_of is None:
            kind = (
                need.signal,
                need.cable,
                need.plugs,
                window.least,
                window.longest_kept,
                window.finished,
                window.supplied,
                need.make.conductors,
            )
            fits = of_kinds.setdefault(kind, {})
            for other, ranks in peers.get((need.signal, need.cable), {}).items():
                if other not in fits:
                    stranger = next((at for at in ranks if at not in near), None)
                    if stranger is None:
                        continue
                    fits[other] = fit(haves[stranger], need, window, bench)
                if isinstance(one := fits[other], Fit):
                    row |= dict.fromkeys(ranks, one)
        for at in near:
            row.pop(at, None)
            if isinstance(one := _fit(haves[at], need, window, bench), Fit):
                row[at] = one
        found[need.mark] = row
    return found


def _fit(have: BoardLead, need: BoardLead, window: Length, bench: Bench) -> Fit | str:
    if (have.leg_of or need.leg_of) and have.mark != need.mark:
        return ""
    return fit(have, need, window, bench)


def _peers(haves: tuple[BoardLead, ...]) -> dict[_Cable, dict[_Kind, list[int]]]:
    """All but legs, by signal and cable, then by all else on which it hangs how strangers fit."""
    peers: dict[_Cable, dict[_Kind, list[int]]] = {}
    for at, have in enumerate(haves):
        if have.leg_of is None:
            kinds = peers.setdefault((have.signal, have.cable), {})
            kinds.setdefault((have.plugs, have.length, have.make.conductors), []).append(at)
    return peers


def _known(haves: tuple[BoardLead, ...], bench: Bench) -> dict[_Word, list[int]]:
    """Which leads bear a number or a label, and which are plugged in at a jack or at the one that it succeeds."""
    known: dict[_Word, list[int]] = {}
    for at, have in enumerate(haves):
        for word in {*_words(have), *map(bench.after.port, have.ends or ())}:
            known.setdefault(word, []).append(at)
    return known


def _words(lead: BoardLead) -> Iterator[_Word]:
    yield lead.mark
    yield from lead.ends or ()
    yield from lead.labels
