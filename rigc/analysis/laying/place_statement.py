"""A place -> the statement of a place block that says so."""

from __future__ import annotations

from rigc.model.deck import Place


def place_statement(place: Place) -> str:
    """Where a thing stands, which way it is turned, on which tier, and to which side its jacks look."""
    under = " under" if place.under else ""
    degrees = place.turned + place.skew_deg
    turned = f" turned {degrees:g} deg" if degrees else ""
    tier = f" on {place.tier}" if place.tier else ""
    jacks = f" jacks {place.jacks}" if place.jacks else ""
    return f"{place.thing}{under} at {place.x_mm:.10g}, {place.y_mm:.10g} mm{turned}{tier}{jacks}"
