"""An inductance and a capacitance -> the formula of their resonance, with digits from which it can be reckoned."""

from __future__ import annotations

from rigc.analysis.reasons.operands import operands
from rigc.analysis.signal.source_network import unloaded_hz
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.figures import plain


def resonance_formula(henry: float, picofarad: float, hertz: float) -> str:
    """`1 / (2π √(4.2 H × 768.9 pF)) = 2801 Hz`."""
    (pf,) = operands(lambda pf: decimals(unloaded_hz(henry, pf), 0), picofarad, least=1)
    return f"1 / (2π √({plain(henry)} H × {pf} pF)) = {decimals(hertz, 0)} Hz"
