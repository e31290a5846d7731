"""Pulled: one line of what stores hand out: `pull.flat-angle.quantity`, `.spare`, `.total`; an item's words are joined with `-`."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.leads.leads import Lead
from rigc.model.records import Spare
from rigc.record import Record
from rigc.traced.figure import Basis, Figure, known_figure
from rigc.traced.given import at_place, mentioned
from rigc.traced.means import found, total
from rigc.traced.reason import ARITHMETIC
from rigc.traced.shown import places
from rigc.traced.term import Term

_COUNTED = "what the sheets and the source ask for, counted"
_CARRIED = "spares that the source says are carried"
_MORE = "what is taken or ordered, less what is used"


class Pulled(Record):
    """So much of an item, and so much more: spares, waste; None where there is none. `unit` is `m`, `sets`, or empty for pieces.

    `at` names the things and jacks that it goes to, where it is for these alone.
    """

    item: str
    kind: str
    unit: str
    quantity: Figure | None
    spare: Figure | None
    total: Figure | None
    at: tuple[str, ...] = ()


def pulled(
    item: str,
    kind: str,
    quantity: Term | None,
    *about: Basis,
    carried: Iterable[Spare] = (),
    taken: Term | None = None,
    unit: str = "",
    at: Iterable[str] = (),
) -> Pulled:
    """So much of an item, and more: the spares of it that are `carried`, or what is `taken` in all less the quantity.

    `about` is what the quantity was counted from.
    """
    name, shown = f"pull.{item.replace(' ', '-')}", places(unit if unit == "m" else "", 4)

    def figure(field: str, value: Term, rule: str, *beside: Basis) -> Figure:
        return known_figure(f"{name}.{field}", value, shown, *beside, rule=rule, source=ARITHMETIC, label=field)

    asked = figure("quantity", quantity, _COUNTED, *about) if quantity else None
    counts = [at_place(f"carried in {each.bag or 'no bag'}", each.count, each.span) for each in carried]
    more = figure("spare", total(counts), _CARRIED) if counts else None
    if taken is not None and asked is not None:
        more = figure("spare", taken - asked, _MORE)
    parts = [each for each in (asked, more) if each is not None]
    return Pulled(
        item, kind, unit, asked, more, figure("total", total(parts), "quantity and spare") if parts else None, tuple(at)
    )


def counted(names: Iterable[str]) -> Term:
    """How many these are."""
    every = tuple(names)
    return found(len(every), lambda: f"{', '.join(every)}: {len(every)}")


def of_leads(own: Iterable[Lead]) -> tuple[Basis, ...]:
    """Leads as what a quantity was counted from."""
    return tuple(mentioned(lead.mark, f"{lead.start} -> {lead.end}", lead.span) for lead in own)
