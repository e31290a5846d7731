"""What a cable takes of its reels: `mini-coax.spare-ends`, `.take`, `.reels`, `.least-reels`, `.left`; its heat-shrink; `A4.premade-more`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.cables.cut_batches import with_waste_cm
from rigc.analysis.cables.heat_shrink import shrink_cm, shrink_pieces, shrunk_mm
from rigc.analysis.cables.reel_use import ReelUse, reel_uses
from rigc.analysis.computations.cable_lengths import CableLengths, Length
from rigc.analysis.computations.leads import Leads
from rigc.analysis.reasons.as_stated import as_stated
from rigc.analysis.reasons.inputs import derived, ours, stated
from rigc.diagnostics.figures import metres_cut, metres_with_waste, millimetres, plain, signed_millimetres
from rigc.facts.bench import REEL_MM, SHRINK_SHARE, SHRINK_TO_MM, SPARE_ENDS
from rigc.facts.leads import WASTE_SHARE
from rigc.model.rig import Rig
from rigc.traced.reason import ARITHMETIC, NOT_KNOWN, Reason

_PRACTICE = "common practice, no source"


def reel_use(rig: Rig, leads: Leads, lengths: CableLengths) -> Iterator[Reason]:
    """Nine reasons for each cable that is cut, one for each lead that could be bought."""
    for use in reel_uses(rig, leads, lengths):
        if use.cable is not None:
            yield from (_spare_ends(rig, use), _take(use), *_reels(use), *_heat_shrink(rig, use))
    for length in lengths.lengths.values():
        if length.premade is not None:
            yield _more(length)


def _spare_ends(rig: Rig, use: ReelUse) -> Reason:
    kinds = dict.fromkeys(plug for lead in use.leads for plug in lead.ends if plug is not None)
    inputs = tuple(stated(f"{kind} takes in", rig.stock.plugs[kind].cut_in_mm) for kind in kinds)
    value, count = millimetres(use.spare_ends), plain(SPARE_ENDS.value)
    formula = f"{count} × {millimetres(use.end)} = {value}"
    rule = "ends that may have to be made anew, each the most that a plug of the batch takes in"
    return Reason(f"{use.cable}.spare-ends", value, "mm", formula, (*inputs, ours(SPARE_ENDS)), rule, SPARE_ENDS.source)


def _take(use: ReelUse) -> Reason:
    waste, value = metres_with_waste(with_waste_cm(use.cut)), metres_with_waste(use.taken_cm)
    ends = millimetres(use.spare_ends)
    inputs = (
        derived("with waste", waste, "m", f"{use.cable}.with-waste"),
        derived("spare ends", ends, "mm", f"{use.cable}.spare-ends"),
    )
    formula = f"{waste} + {ends} / 1000 → {value}"
    rule = "the cut lengths with the waste, and the spare ends, rounded up to a centimetre"
    return Reason(f"{use.cable}.take", value, "m", formula, inputs, rule, ARITHMETIC)


def _reels(use: ReelUse) -> Iterator[Reason]:
    plan = use.plan
    usable, reel = metres_cut(plan.length), plain(REEL_MM.value / 1000)
    inputs = (
        ours(REEL_MM),
        ours(WASTE_SHARE),
        derived("spare ends", millimetres(use.spare_ends), "mm", f"{use.cable}.spare-ends"),
        derived("cut", metres_cut(use.cut), "m", f"{use.cable}.cut"),
    )
    room = f"({reel} − {millimetres(use.spare_ends)} / 1000) / {plain(1 + WASTE_SHARE.value)} = {usable}"
    count, least = str(len(plan.raws)), str(plan.least)
    rule = "leads on full reels, of which the waste and the spare ends are set aside: as few reels as will do"
    cut = " + ".join(metres_cut(sum(raw)) for raw in plan.raws) or "0"
    yield Reason(f"{use.cable}.reels", count, "", f"{room}; {cut} on {count}", inputs, rule, _PRACTICE)
    rule = "no plan has fewer reels: what the leads take at least, rounded up"
    yield Reason(f"{use.cable}.least-reels", least, "", f"{room}; {plan.bound:.4f} → {least}", inputs, rule, ARITHMETIC)
    if use.last_cm is not None and use.left_cm is not None:
        value = metres_with_waste(use.left_cm)
        formula = f"{reel} − {metres_with_waste(use.last_cm)} = {value}"
        rule = "a reel less the leads of the last one with their waste and the spare ends"
        yield Reason(f"{use.cable}.left", value, "m", formula, inputs, rule, ARITHMETIC)


def _heat_shrink(rig: Rig, use: ReelUse) -> Iterator[Reason]:
    cable = rig.stock.cables[use.cable or ""]
    yield as_stated(f"{use.cable}.jacket", f"the diameter of {use.cable}", cable.outer_mm, "mm")
    rule = "the shrunk inside must be below this to grip the jacket"
    if cable.outer_mm is None:
        yield Reason(f"{use.cable}.shrunk", NOT_KNOWN, "mm", "for want of the jacket", (), rule, _PRACTICE)
    else:
        below = plain(shrunk_mm(cable.outer_mm.value))
        formula = f"{plain(SHRINK_SHARE.value)} × {plain(cable.outer_mm.value)} = {below}"
        inputs = (stated(f"{use.cable} outer", cable.outer_mm), ours(SHRINK_SHARE))
        yield Reason(f"{use.cable}.shrunk", below, "mm", formula, inputs, rule, SHRINK_SHARE.source)
    pieces = shrink_pieces(use)
    count, value = str(pieces), metres_with_waste(shrink_cm(pieces))
    marks = ", ".join(lead.mark for lead in use.leads)
    each = tuple(
        derived(lead.mark, millimetres(cut), "mm", f"{lead.mark}.cut")
        for lead, cut in zip(use.leads, use.cuts, strict=True)
    )
    rule = "a piece at each end that is made here"
    yield Reason(f"{use.cable}.shrink-pieces", count, "", f"the ends of {marks}: {count}", each, rule, ARITHMETIC)
    formula = f"{count} × {plain(SHRINK_TO_MM.value)} / 1000 → {value}"
    inputs = (derived("pieces", count, "", f"{use.cable}.shrink-pieces"), ours(SHRINK_TO_MM))
    yield Reason(f"{use.cable}.shrink", value, "m", formula, inputs, "each at its longest", SHRINK_TO_MM.source)


def _more(length: Length) -> Reason:
    assert length.premade is not None and length.premade_more is not None
    premade, finished = millimetres(length.premade), millimetres(length.finished)
    inputs = (
        derived("next premade", premade, "mm", f"{length.mark}.premade"),
        derived("finished", finished, "mm", f"{length.mark}.finished"),
    )
    value = signed_millimetres(length.premade_more)
    formula = f"{premade} − {finished} = {value}"
    return Reason(f"{length.mark}.premade-more", value, "mm", formula, inputs, "bought less made here", ARITHMETIC)


REASONS = reel_use
