"""outside-body: a jack, switch, knob or part of the base that lies outside its body."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Kind, Level

OUTSIDE_BODY = Kind(
    "outside-body",
    Level.ERROR,
    """A jack, a switch, a knob or a part of the base lies outside its body, or a keep-out, hole, tier, drop line
    or lane beyond its deck.

    Why it matters: every lead length and every plug clearance is reckoned from that place.
    What to do: measure again from the edge that the language counts from (the front edge for left and right, the left edge for front
    and rear; on a deck from its front-left corner).
    Source: geometry.
    """,
    "0 < offset < the side's length, 0 < height < the body's height; nothing of a deck lies beyond its edges",
    "geometry of the stated figures",
)
