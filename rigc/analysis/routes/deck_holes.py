"""Stated holes, ways of leads, panels and feet -> every hole of the decks with its number, place and size."""

from __future__ import annotations

from rigc.analysis.deck.feet import feet_of
from rigc.analysis.deck.placement import Placement
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.routes.hole_sizes import diameter, drilled, round_size, slot_size, stated_size
from rigc.analysis.routes.route_paths import RoutePath, RoutePaths
from rigc.facts.bench import WEB_MM
from rigc.model.deck import Deck, Hole
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Figure, Several

STATED, PASSAGE, PANEL, FOOT = "stated", "passage", "panel", "foot"
"""What a hole is for: what the source says, leads, a jack of a panel, a foot of the deck."""


class Through(Record):
    """Where leads go through a hole, in mm along x: the numbers of those at one place, and the diameter that the widest of their plugs
    needs, None where that is not known."""

    x_mm: float
    leads: tuple[str, ...]
    needs_mm: float | None


class DeckHole(Record):
    """A hole of a deck: its centre in mm from the front left corner, seen from above; of a slot the centre at its left end,
    and in `to_x_mm` that at its right one.

    `size` is None where it has to suit a part that is not known. An `open` one needs no drilling: it is a gap between rails. `kind`
    says what it is for, `purpose` in words.
    """

    number: str
    x_mm: float
    y_mm: float
    to_x_mm: float | None
    size: Several | None
    open: bool
    kind: str
    purpose: str
    through: tuple[Through, ...] = ()

    @property
    def diameter_mm(self) -> float | None:
        """Its diameter, or the width of a slot."""
        return None if self.size is None else float(self.size.of[0])  # type: ignore[arg-type]

    @property
    def right_mm(self) -> float:
        """The centre at its right end."""
        return self.x_mm if self.to_x_mm is None else self.to_x_mm


class DeckHoles(Record):
    """The holes of each deck by its name, in the order of their numbers."""

    decks: dict[str, tuple[DeckHole, ...]]

    def of(self, deck: str) -> tuple[DeckHole, ...]:
        """The holes of a deck."""
        return self.decks.get(deck, ())


def deck_holes(rig: Rig, placement: Placement, leads: Leads, paths: RoutePaths) -> DeckHoles:
    """Stated holes, passages along the drop lines, jacks of panels, feet: numbered in that order."""
    found: dict[str, list[_Passage]] = {}
    for lead in leads.all:
        path = paths.paths.get(lead.mark)
        point = placement.points.get(lead.start)
        if path is not None and point is not None and point.deck is not None:
            found.setdefault(point.deck, []).extend(_passages(rig, lead, path))
    return DeckHoles({deck.name: _numbered(rig, deck, found.get(deck.name, [])) for deck in rig.decks.values()})


class _Passage(Record):
    """Where one lead goes through a deck, and the hole that its plug needs."""

    x_mm: float
    y_mm: float
    mark: str
    plug: Figure | None


def _passages(rig: Rig, lead: Lead, path: RoutePath) -> list[_Passage]:
    """Of the two plugs the one that is nearer along the lead goes through."""
    spots = path.passages
    kinds = (lead.ends[0], lead.ends[-1])
    near = [kinds[0] if at < len(spots) / 2 else kinds[1] for at in range(len(spots))]
    if len(spots) == 1:
        near = [kinds[0] if path.above[0] else kinds[1]]
    return [_Passage(x, y, lead.mark, drilled(rig, kind)) for (x, y), kind in zip(spots, near, strict=True)]


def _numbered(rig: Rig, deck: Deck, passages: list[_Passage]) -> tuple[DeckHole, ...]:
    stated = [_stated(hole, f"{deck.name}.H{at}") for at, hole in enumerate(deck.holes, 1)]
    groups = enumerate(_for_leads(deck, passages), 1 + len(stated))
    holes = [*stated, *(_hole(*group, f"{deck.name}.H{at}") for at, group in groups), *_panel(rig, deck), *_feet(deck)]
    return tuple(hole.replace(number=f"H{at}") for at, hole in enumerate(holes, 1))


def _stated(hole: Hole, name: str) -> DeckHole:
    size = stated_size(name, hole)
    return DeckHole("", hole.x_mm, hole.y_mm, None, size, False, STATED, hole.purpose or "not said")


def _for_leads(deck: Deck, passages: list[_Passage]) -> list[tuple[list[_Passage], bool]]:
    """Line by line from the player on, from left to right: what would leave too thin a web becomes one slot. Of each hole the
    passages, and whether it is a gap between rails."""
    holes: list[tuple[list[_Passage], bool]] = []
    for line in sorted({passage.y_mm for passage in passages}):
        between = any(rail.front_mm < line < rail.rear_mm for rail in deck.rails)
        gap = bool(deck.rails) and not between
        group: list[_Passage] = []
        for passage in sorted(
            (each for each in passages if each.y_mm == line), key=lambda each: (each.x_mm, each.mark)
        ):
            if group and not gap and not _one(group, passage):
                holes.append((group, gap))
                group = []
            group.append(passage)
        holes.append((group, gap))
    return holes


def _one(group: list[_Passage], further: _Passage) -> bool:
    """Whether a passage belongs to the hole of those before it: it is at one place with them, or the web would be too thin."""
    if further.x_mm == group[-1].x_mm:
        return True
    known = [each.plug for each in group if each.x_mm == group[-1].x_mm and each.plug is not None]
    if not known or further.plug is None:
        return False
    return further.x_mm - group[-1].x_mm < float(max(known) + further.plug) / 2 + WEB_MM.value


def _hole(group: list[_Passage], gap: bool, name: str) -> DeckHole:
    known = [each.plug for each in group if each.plug is not None]
    at: dict[float, list[_Passage]] = {}
    for each in group:
        at.setdefault(each.x_mm, []).append(each)
    through = tuple(
        Through(x, tuple(dict.fromkeys(each.mark for each in here)), _needs(here)) for x, here in at.items()
    )
    first, last = group[0].x_mm, group[-1].x_mm
    size = None
    if len(known) == len(group) and not gap:
        width = diameter(name, known)
        size = round_size(width) if first == last else slot_size(width, first, last)
    return DeckHole("", first, group[0].y_mm, None if first == last else last, size, gap, PASSAGE, "leads", through)


def _needs(passages: list[_Passage]) -> float | None:
    plugs = [None if each.plug is None else float(each.plug) for each in passages]
    return None if None in plugs else max(plug for plug in plugs if plug is not None)


def _panel(rig: Rig, deck: Deck) -> list[DeckHole]:
    return [
        DeckHole("", jack.x_mm, jack.y_mm, None, None, False, PANEL, f"{panel.name}.{jack.name}, {jack.connector}")
        for panel in rig.panels.values()
        if (panel.deck or (rig.deck.name if rig.deck is not None else None)) == deck.name
        for jack in panel.jacks
    ]


def _feet(deck: Deck) -> list[DeckHole]:
    feet = feet_of(deck)
    if feet is None:
        return []
    return [
        DeckHole("", x, y, None, None, False, FOOT, "foot")
        for y in (feet.front_mm, feet.rear_mm)
        for x in (feet.left_mm, feet.right_mm)
    ]


COMPUTE = deck_holes
