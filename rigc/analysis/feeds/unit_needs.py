"""What a unit says it needs of an outlet, as figures: `hedge.volts`, `hedge.draws`, `hedge.starts`; and the words for its current."""

from __future__ import annotations

from rigc.model.things import Unit
from rigc.traced.figure import AnyFigure, figure
from rigc.traced.given import stated
from rigc.traced.reason import AS_STATED, STATED
from rigc.traced.units import MILLIAMPS, VOLTS


def current_of(unit: str) -> str:
    """`the current that 'tern' draws`."""
    return f"the current that '{unit}' draws"


def needs_of(unit: str) -> str:
    """`what 'tern' needs of an outlet`: volts, and of which kind."""
    return f"what '{unit}' needs of an outlet"


def inlet_of(unit: str) -> str:
    """`the inlet of 'tern'`: where power goes in, and which pole is in its middle."""
    return f"the inlet of '{unit}'"


def needs_volts(unit: Unit) -> AnyFigure:
    """The voltage that it needs, in V."""
    value = stated(f"what voltage {unit.name} needs", unit.volts)
    return figure(f"{unit.name}.volts", value, VOLTS, rule=AS_STATED, source=STATED, label=f"{unit.name} needs")


def draws(unit: Unit) -> AnyFigure:
    """The current that it draws, in mA."""
    value = stated(f"what current {unit.name} draws", unit.draws_ma)
    return figure(f"{unit.name}.draws", value, MILLIAMPS, rule=AS_STATED, source=STATED, label=f"{unit.name} draws")


def starts(unit: Unit) -> AnyFigure:
    """The current that it draws at switch-on, in mA."""
    value = stated(f"what current {unit.name} draws at switch-on", unit.starts_ma)
    return figure(f"{unit.name}.starts", value, MILLIAMPS, rule=AS_STATED, source=STATED)
