"""The names of the rules on power and mains: of each check of these rooms."""

from __future__ import annotations

from rigc.analysis.every_check import homes

POWER_RULES = frozenset(
    name.replace("_", "-") for name, home in homes().items() if home.split(".")[2] in ("power", "mains")
)
