"""A state of grounds -> which units an isolator keeps apart: joined by leads, but not by any conductor beside a supply's common."""

from __future__ import annotations

from rigc.analysis.ground.states import GroundState
from rigc.analysis.leads.leads import Leads
from rigc.model.graphs import ground_graph, joined_grounds, parts
from rigc.model.ways.ground_link import EARTH, GROUND
from rigc.record import Record

_SIGNALS = ("audio", "midi", "control", "usb")


class GroundsApart(Record):
    """By unit: the `system` of grounds that it is in without any shared outlet, and the `web` of leads that it is in."""

    system: dict[str, int]
    web: dict[str, int]

    def between(self, one: str, other: str) -> bool:
        """Whether an isolator stands between two units."""
        apart = self.system.get(one, one) != self.system.get(other, other)
        return apart and one in self.web and self.web[one] == self.web.get(other)


def grounds_apart(leads: Leads, state: GroundState) -> GroundsApart:
    """Mains earths are left out, too: they join what an isolator in the signal keeps apart."""
    links = [link for link in state.links if link.kind not in ("common", "earth")]
    poles = [pole for pole in state.poles if pole != EARTH]
    system = {
        thing: number
        for number, joined in enumerate(joined_grounds(ground_graph(poles, links)))
        for thing, part in joined
        if part == GROUND
    }
    ends = [(lead.start.thing, lead.end.thing) for lead in leads.all if lead.signal in _SIGNALS]
    webs = parts((name for pair in ends for name in pair), ends)
    return GroundsApart(system, {name: number for number, web in enumerate(webs) for name in web})
