"""Numbers of the wiring sheet that are counted or stated: `chain-1.step-3`, `preset-2.number`, `preset-2.tempo`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.signal_steps import ChainSteps, SignalSteps
from rigc.analysis.reasons.as_stated import as_stated
from rigc.analysis.reasons.inputs import placed
from rigc.diagnostics.decimals import decimals
from rigc.model.rig import Rig
from rigc.model.wishes import Preset
from rigc.traced.reason import STATED, Reason

_RULE = "stops are counted in the order of the sound, every loop expanded where its switcher is entered"


def chain_step(rig: Rig, steps: SignalSteps) -> Iterator[Reason]:
    """A reason for each step of each chain (chains counted in the order of the source), two for each preset."""
    for number, chain in enumerate(steps.chains, 1):
        yield from _steps(rig, number, chain)
    for preset in rig.presets.values():
        yield from _preset(preset)


def _steps(rig: Rig, number: int, chain: ChainSteps) -> Iterator[Reason]:
    span = rig.chains[number - 1].span
    for at, step in enumerate(chain.steps, 1):
        before = f"{at - 1} stops before '{step.thing}'" if at > 1 else f"the chain begins at '{step.thing}'"
        inputs = (
            placed("chain", chain.name or str(number), span),
            placed(step.thing, step.loop or "stop", rig.things[step.thing].declared),
        )
        yield Reason(
            f"chain-{number}.step-{at}",
            str(at),
            "",
            f"{before}, and 1 = {at}" if at > 1 else f"{before}: {at}",
            inputs,
            _RULE,
            "counting",
        )


def _preset(preset: Preset) -> Iterator[Reason]:
    name, number = f"preset-{preset.number}", str(preset.number)
    here = placed(name, preset.title, preset.span)
    yield Reason(f"{name}.number", number, "", f"{number}, as stated", (here,), "a stated number stands", STATED)
    if preset.tempo_bpm is not None:
        shown = decimals(preset.tempo_bpm.value)
        yield as_stated(f"{name}.tempo", f"the tempo of preset {number}", preset.tempo_bpm, "bpm", shown)


REASONS = chain_step
