"""The deck's pieces of strip under one unit -> their sizes and front-left corners (askew: middles) in words."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.mounting.laid_pieces import middle
from rigc.diagnostics.figures import nearest_tenth
from rigc.model.polygon import Spot
from rigc.model.rectangle import Rectangle


def on_deck(pieces: tuple[Rectangle, ...], skew_deg: float, tapes_met: int | None) -> str:
    """The deck's pieces by size, each with its front-left corner; with its middle and angle where they lie askew. Where there are
    none, the tape of so many rails holds."""
    if not pieces:
        return f"the tape of {tapes_met or 0} rail{'' if tapes_met == 1 else 's'}"
    sizes: dict[tuple[float, float], list[Rectangle]] = {}
    for piece in pieces:
        sizes.setdefault((piece.width_mm, piece.depth_mm), []).append(piece)
    at = f"turned {skew_deg:g}°, middles at" if skew_deg else "at"
    return "; ".join(
        f"{len(alike)} of {nearest_tenth(width)} × {nearest_tenth(depth)} {at} {_spots(spots(alike, skew_deg))}"
        for (width, depth), alike in sizes.items()
    )


def spots(pieces: Iterable[Rectangle], skew_deg: float) -> list[Spot]:
    """What a piece is laid by: its front-left corner, or its middle where it lies askew."""
    return [middle(each) if skew_deg else (each.x_mm, each.y_mm) for each in pieces]


def _spots(found: list[Spot]) -> str:
    """What all have in common is said once."""
    across, along = (list(map(nearest_tenth, values)) for values in zip(*found, strict=True))
    if len(set(across)) == 1 or len(set(along)) == 1:
        return f"x {', '.join(dict.fromkeys(across))} · y {', '.join(dict.fromkeys(along))}"
    return " and ".join(f"x {x} · y {y}" for x, y in zip(across, along, strict=True))
