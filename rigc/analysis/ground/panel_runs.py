"""Shields that end at insulated panel jacks -> runs from ground to ground through them, and the jacks left open."""

from __future__ import annotations

from rigc.model.jacks import Port
from rigc.model.ways.ground_link import GroundLink, Pole

PANEL_JACK = "jack "
"""How the part of a pole begins that is no ground but the sleeve of an insulated panel jack."""


def through_panels(
    shields: list[GroundLink], plugged: dict[Port, int]
) -> tuple[list[GroundLink], list[tuple[Port, Pole]]]:
    """Joins the two shields that meet at an insulated panel jack into one run; a shield that ends there joins nothing.

    `plugged` counts the leads at each panel jack: one with a single lead is open, and is told with the ground it shows.
    """
    links, open_ends = list(shields), []
    for port, leads in plugged.items():
        sleeve = (port.thing, f"{PANEL_JACK}{port.jack}")
        here = [link for link in links if sleeve in link.ends]
        links = [link for link in links if sleeve not in link.ends]
        if len(here) == 2:
            links.append(_run(here[0], here[1], sleeve))
        elif len(here) == 1 and leads == 1:
            open_ends.append((port, here[0].other(sleeve)))
    return links, open_ends


def _run(one: GroundLink, two: GroundLink, sleeve: Pole) -> GroundLink:
    first, second = (one, two) if one.ends[1] == sleeve or two.ends[0] == sleeve else (two, one)
    return GroundLink(
        (first.other(sleeve), second.other(sleeve)),
        "audio",
        (*(first.marks if first.ends[1] == sleeve else first.marks[::-1]),
         *(second.marks if second.ends[0] == sleeve else second.marks[::-1])),
        (*first.lifts, *second.lifts),
        (*first.isolators, *second.isolators),
        first.unsure or second.unsure,
        first.span,
    )  # fmt: skip
