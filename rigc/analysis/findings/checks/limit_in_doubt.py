"""A limit that is kept by the figures as stated may be broken by what these may be off by, or a broken one may be kept.

Why it matters: a leaflet's current is a typical one, a guess is a guess, and what was measured is known to its tolerance.
What to do: measure the fact that decides before anything is cut or bought, and state it as `measured`.
A fact may be off by what is stated beside it (`350 mA +- 10 %`, `from 40 to 60 mA`); a guess that states nothing, by what guesses of
its kind usually are, and the current of a leaflet by {guesses.LEAFLET_CURRENT_SPREAD}. All facts may be off together, each whichever way is worst: what can't
happen so is not told. Judged so are loads of outlets, totals of supplies, voltages that a unit accepts, drops of leads,
lengths of leads that exist, heights below lids and decks and in cases, the air before vents, heat over a supply, the mass of
the board, where a deck balances, the hold of strips, the cable that an instrument drives, loads on outputs, treble corners,
margins and levels at inputs, and paths side by side.
Source: interval arithmetic; what a guess may be off by is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain

from rigc.analysis.findings.limits.doubt_words import in_words, owner_and_words
from rigc.analysis.findings.limits.judged import Standing
from rigc.analysis.findings.stated_facts import StatedFacts
from rigc.analysis.results import Results
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.diagnostic import MAY_BE, Diagnostic, Kind, Label, Level, Number
from rigc.model.deck import Deck
from rigc.model.fact import facts_within, spread_of
from rigc.model.rig import Rig
from rigc.model.seen_rig import whole
from rigc.model.things import Instrument, Supply, Unit
from rigc.traced.ranged import Part
from rigc.traced.revalued import Place, place_of

KIND = Kind(
    "limit-in-doubt",
    Level.WARNING,
    __doc__,
    "what facts may be off by carries no result over its limit",
    "interval arithmetic; what a guess may be off by is common practice, no source",
    once=("guess-near-limit",),
)
_ALSO = 2


def limit_in_doubt(rig: Rig, stated: StatedFacts, results: Results) -> Iterator[Diagnostic]:
    """One finding for each fact that decides limits: the one of which least room is left, and what else it decides. What limits
    judge is not reckoned for it where no fact may be off."""
    known = chain.from_iterable((*stated.things.values(), *stated.decks.values()))
    others = facts_within(whole(rig), Instrument, Unit, Supply, Deck)
    if all(spread_of(fact) is None for fact in chain(known, others)):
        return
    from rigc.analysis.findings.limits_in_doubt import LimitsInDoubt  # it loads all that limits judge

    found: dict[Place, list[Standing]] = {}
    for each in (one for one in results.get(LimitsInDoubt).in_doubt if not one.told_elsewhere):
        found.setdefault(place_of(each.parts[0].fact.fact.span), []).append(each)
    for decided in found.values():
        yield _told(sorted(decided, key=lambda each: each.room))


def _told(decided: list[Standing]) -> Diagnostic:
    """Its subject names all limits that the fact decides, and its figures hold all that they may come to: who accepts it signs for these."""
    first, *others = decided
    part = first.parts[0]
    fact = part.fact.fact
    owner, words = owner_and_words(part.fact)
    numbers = {  # an `accept` is signed for just these: nearer to the limit is no better
        "value": float(first.judged.value),
        "limit in doubt": float(first.judged.limit),
        MAY_BE: first.edge,
        "where that is": first.limit_edge,
    }
    signed = [Number(name, value, first.judged.unit) for name, value in numbers.items()]
    signed += [Number(f"{each.judged.what} {MAY_BE}", each.edge, each.judged.unit) for each in others]
    return KIND.at(
        fact.span,
        f"{in_words(first)}: {words}, {fact.typed}, {_known(part)}",
        subject=(owner, *sorted(each.judged.what.rstrip(",") for each in decided)),
        label=_turn(first),
        also=tuple(
            Label(each.fact.fact.span, f"{owner_and_words(each.fact)[1]} makes some of it, and {_known(each)}")
            for each in first.parts[1 : 1 + _ALSO]
        ),
        numbers=tuple(signed),
        note="; ".join(in_words(each) for each in others),
        help=f"measure {words}{_closer(part)} before anything is cut or bought, and write it with `measured DATE`",
    )


def _turn(each: Standing) -> str:
    """From where on the deciding fact by itself passes the limit."""
    part, turn = each.parts[0], each.turn
    if turn is None:
        return f"alone it does not {'keep' if each.broken else 'break'} the limit; with what else may be off it does"
    fact = part.fact.fact
    at = f"{decimals(float(f'{turn:.4g}'), 3)}{'' if fact.measure is None else f' {fact.measure.unit}'}"
    way = "more" if turn > fact.value else "less"
    return f"{at} or {way} keeps the limit" if each.broken else f"{way} than {at} breaks the limit"


def _closer(part: Part) -> str:
    known = part.fact.fact.provenance
    return " more closely" if known is not None and known.kind == "measured" else ""


def _known(part: Part) -> str:
    fact = part.fact.fact
    kind = "" if fact.provenance is None else fact.provenance.kind
    if fact.spread is not None:
        return "may be off by so much"
    return (
        f"is {'from a leaflet' if kind == 'leaflet' else kind} and may be off by {part.spread.typed.removeprefix('± ')}"
    )


CHECK = limit_in_doubt
