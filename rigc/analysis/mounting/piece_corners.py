"""The deck's pieces of strip under one unit -> their sizes and front-left corners in words, and where strips lie on its base."""

from __future__ import annotations

from rigc.analysis.computations.mounting_strip import StrippedUnit
from rigc.diagnostics.figures import nearest_tenth
from rigc.model.rectangle import Rectangle


def strip_centres(width_mm: float, count: int) -> tuple[float, ...]:
    """The middles of a unit's strips across its base, in mm from its left edge: evenly spread."""
    return tuple(width_mm * (number - 0.5) / count for number in range(1, count + 1))


def on_deck(unit: StrippedUnit) -> str:
    """The deck's pieces by size, each with its front-left corner."""
    if not unit.deck_pieces:
        return f"the tape of {unit.tapes_met or 0} rails"
    sizes: dict[tuple[float, float], list[Rectangle]] = {}
    for piece in unit.deck_pieces:
        sizes.setdefault((piece.width_mm, piece.depth_mm), []).append(piece)
    return "; ".join(
        f"{len(pieces)} of {width:g} × {depth:g} at {_corners(pieces)}" for (width, depth), pieces in sizes.items()
    )


def _corners(pieces: list[Rectangle]) -> str:
    """Front-left corners; what all have in common is said once."""
    across, along = (
        list(map(nearest_tenth, values)) for values in zip(*((each.x_mm, each.y_mm) for each in pieces), strict=True)
    )
    if len(set(across)) == 1 or len(set(along)) == 1:
        return f"x {', '.join(dict.fromkeys(across))} · y {', '.join(dict.fromkeys(along))}"
    return " and ".join(f"x {x} · y {y}" for x, y in zip(across, along, strict=True))
