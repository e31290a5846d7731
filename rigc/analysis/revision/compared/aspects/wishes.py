"""What the source wishes of the choices that are left to the compiler."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import DESIGN, Aspect
from rigc.analysis.revision.compared.words import exact, words
from rigc.model.rig import Rig


def wishes(rig: Rig) -> Iterator[Aspect]:
    """What comes of a wish is told where it comes of it; here it is read."""
    power, leads = rig.power, rig.lead_wishes
    for name, value in (
        ("others from", power.others),
        ("alone", power.alone),
        ("reversing leads", power.turned),
        ("may share", power.may_share),
        ("spare", power.spare),
        ("reserved", power.reserved),
        ("retired numbers", tuple(mark for mark, _ in leads.retired)),
        ("tied leads", leads.ties),
        ("lanes", leads.lanes),
        ("cable by signal", leads.cables),
        ("plug by signal", leads.plugs),
        ("cut or premade", leads.cutting),
        ("strip for all", rig.mounting.all_with),
        ("rooms kept free", tuple(room for room in rig.reserved_rooms if not room.chosen)),
        ("rooms for later", rig.later_rooms),
        ("weights of places", rig.weights),
        ("joined things", rig.joins),
    ):
        yield Aspect("wish", name, "", words(value), exact(value), DESIGN)
    said = tuple(f"{', '.join(hint.things)} {hint.words}" for hint in rig.hints)
    yield Aspect("wish", "hints for places", "", words(said), exact(rig.hints), DESIGN)


ASPECTS = wishes
