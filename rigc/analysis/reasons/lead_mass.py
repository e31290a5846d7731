"""What the leads of a class weigh: `audio.mass`."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.lead_mass import LeadMass
from rigc.analysis.reasons.inputs import stated
from rigc.analysis.reasons.supplied_input import supplied_input
from rigc.diagnostics.figures import grams, kilograms, plain
from rigc.model.rig import Rig
from rigc.traced.reason import ARITHMETIC, NOT_KNOWN, Input, Reason


def lead_mass(rig: Rig, lengths: CableLengths, masses: LeadMass) -> Iterator[Reason]:
    """One reason for each class of lead on the board."""
    for signal, total_g in masses.grams.items():
        own = [each for each in masses.weighed if each.lead.signal == signal]
        ready = {each.lead.mark: each.ready for each in own if each.ready is not None}
        made = [each for each in own if each.ready is None]
        terms = [grams(mass.value) for mass in ready.values()]
        inputs: list[Input] = [stated(f"{mark}, ready", mass) for mark, mass in ready.items()]
        for cable in dict.fromkeys(each.lead.cable for each in made if each.lead.cable is not None):
            batch = [each for each in made if each.lead.cable == cable]
            inputs += [supplied_input(rig, each.lead, lengths.lengths.get(each.lead.mark)) for each in batch]
            metres = sum(each.length_mm or 0.0 for each in batch) / 1000
            per_metre = rig.stock.cables[cable].mass_g_per_m
            inputs.append(stated(f"{cable} weighs", per_metre))
            terms.append(f"{plain(metres)} × {plain(per_metre.value) if per_metre else '?'}")
        for name, count in Counter(plug for each in made for _, plug in each.plugs if plug is not None).items():
            mass = rig.stock.plugs[name].mass_kg
            if mass is not None:
                inputs.append(stated(f"plug {name} weighs", mass))
                terms.append(f"{count} × {grams(mass.value)}")
        missing = masses.missing.get(signal)
        value = NOT_KNOWN if missing else kilograms(total_g / 1000)
        formula = f"for want of {missing}" if missing else f"({' + '.join(terms) or '0'}) / 1000 = {value}"
        rule = "cable by its length × its mass per metre, and the plugs; a ready lead as its stock says; the legs of a Y lead share the plug at the outlet"
        yield Reason(f"{signal}.mass", value, "kg", formula, tuple(inputs), rule, ARITHMETIC)


REASONS = lead_mass
