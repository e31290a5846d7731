"""Jacks and the stock -> the plug kind that would fit where another one is in the way."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from rigc.analysis.leads.lead_plugs import fitting_plugs, socket
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.stock import Plug


def narrower_plug(rig: Rig, ports: Iterable[Port], fits: Callable[[Plug], bool]) -> Plug | None:
    """The narrowest kind of the stock that goes into all these jacks and passes `fits`, the shorter one first.

    Narrow before short, since a wide plug meets the next jack. Kinds without a stated size are left out; None if no kind
    is left or a jack's connector is not known.
    """
    kinds: dict[str, Plug] | None = None
    for port in ports:
        jack = socket(rig, port)
        if jack is None or jack.connector is None:
            return None
        going = {plug.name: plug for plug in fitting_plugs(rig, jack.connector)}
        kinds = going if kinds is None else {name: plug for name, plug in kinds.items() if name in going}
    sized = [plug for plug in (kinds or {}).values() if plug.width_mm and plug.stand_out_mm]
    return next((plug for plug in sorted(sized, key=_size) if fits(plug)), None)


def reach_mm(plug: Plug) -> float:
    """How far a plug and the bend of its cable reach from the jack's face, in mm; its stand-out must be stated."""
    assert plug.stand_out_mm is not None
    return plug.stand_out_mm.value + (plug.bend_mm.value if plug.bend_mm is not None else 0.0)


def _size(plug: Plug) -> tuple[float, float]:
    assert plug.width_mm is not None
    return plug.width_mm.value, reach_mm(plug)
