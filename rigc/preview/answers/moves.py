"""What a move would do, and where else its thing would be in nobody's way."""

from __future__ import annotations

from typing import Any

from rigc.analysis.laying.place_finder import PlaceFinder
from rigc.preview.answers.state import finding
from rigc.preview.effects import Effect
from rigc.preview.look import Look


def told(found: Effect) -> dict[str, Any]:
    """An effect as plain values; `words` are for who listens."""
    return {
        "thing": found.thing,
        "x": found.x_mm,
        "y": found.y_mm,
        "free": not found.against,
        "words": found.words,
        "come": [finding(each) for each in found.come],
        "gone": [finding(each) for each in found.gone],
        "lengths": [{"lead": each.mark, "before": each.before, "after": each.after} for each in found.lengths],
        "stated": list(found.stated_with),
    }


def free(look: Look, name: str) -> dict[str, Any] | None:
    """Front-left corners in mm, and how far apart they are sought; None for what has no place."""
    if look.computed is None or name not in look.computed.results.rig.places:
        return None
    spots, step = PlaceFinder(look.computed.results).free(name)
    return {"thing": name, "step": step, "spots": [list(spot) for spot in spots]}
