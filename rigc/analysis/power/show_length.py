"""Rig -> how long a show keeps things plugged in, in h: `rig.show`; and what a battery's life comes to in shows."""

from __future__ import annotations

from rigc.facts.power import SHOW_H
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import AnyFigure, Figure, figure, known_figure
from rigc.traced.given import ours, stated
from rigc.traced.means import becomes
from rigc.traced.reason import ARITHMETIC, STATED
from rigc.traced.term import Term, Traced, known
from rigc.traced.units import COUNT, HOURS_STATED


class Lasting(Record):
    """How long a battery lasts: `life` in h, `lasts` in whole shows, a `show` in h. `lacking` is what is not known where its life is not,
    in words of the trade."""

    life: AnyFigure
    lasts: AnyFigure
    show: Figure
    lacking: str

    @property
    def hours(self) -> Term | None:
        """Its life in h; None where what it holds or gives is not known, or nothing is drawn."""
        return known(self.life)

    @property
    def shows(self) -> int | None:
        """Whole shows that it lasts; None where its life is not known."""
        lasts = known(self.lasts)
        return None if lasts is None else int(lasts)


class ShowLength(Record):
    """The hours of a show, as the rig states them or as is usual; `source` is that of what rests on them."""

    hours: Figure
    source: str

    def whole_shows(self, name: str, life: Traced) -> AnyFigure:
        """How many whole shows a life of so many h lasts."""
        rule = "whole shows that it lasts"
        return figure(name, becomes(life / self.hours, _whole), COUNT, rule=rule, source=self.source)


def show_length(rig: Rig) -> ShowLength:
    """As stated, else what is usual."""
    said = rig.head.show_min
    if said is None:
        rule, usual = "where the rig says nothing, what is usual", ours(SHOW_H)
        hours = known_figure("rig.show", usual, HOURS_STATED, rule=rule, source=SHOW_H.source, label="show")
        return ShowLength(hours, SHOW_H.source)
    length = stated("how long a show is", said) / 60
    rule = "minutes of a show / 60"
    return ShowLength(
        known_figure("rig.show", length, HOURS_STATED, rule=rule, source=STATED, label="show"), ARITHMETIC
    )


def _whole(shows: float) -> int:
    return int(shows + 1e-9)


COMPUTE = show_length
