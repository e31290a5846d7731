"""Chains: their stops in order, and when they hold."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import DESIGN, Aspect
from rigc.model.rig import Rig
from rigc.model.wishes import Chain


def chains(rig: Rig) -> Iterator[Aspect]:
    """A chain without a name is known by its number among those."""
    unnamed = 0
    for chain in rig.chains:
        unnamed += not chain.name
        name = chain.name or ("from the instrument" if unnamed == 1 else f"without a name, number {unnamed}")
        text = _words(chain)
        yield Aspect("chain", name, "", text, text, DESIGN, span=chain.span)
    for plan in rig.bypass_plans:
        name = f"{plan.start} to {plan.end}"
        yield Aspect("bypass plan", name, "", plan.text, plan.text, DESIGN, span=plan.span)
    for intent in rig.intents:
        text = " ".join(filter(None, (intent.word, intent.text))) or "yes"
        yield Aspect("intent", f"{intent.kind} {intent.unit}", "", text, text, DESIGN, span=intent.span)


def _words(chain: Chain) -> str:
    parts: list[str] = []
    for number, stop in enumerate(chain.stops):
        if number:
            stereo = number <= len(chain.stereo) and chain.stereo[number - 1]
            parts.append("=>" if stereo else "->")
        parts.append(stop.thing if stop.jack is None else f"{stop.thing}.{stop.jack}")
    only = [*chain.when.scenarios, *([chain.when.instrument] if chain.when.instrument else [])]
    return " ".join(parts) + (f" (only {', '.join(only)})" if only else "")


ASPECTS = chains
