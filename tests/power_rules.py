"""The names of the rules on power and mains."""

from __future__ import annotations

POWER_RULES = frozenset(
    (
        "overloaded-outlet",
        "nearly-full-outlet",
        "overloaded-supply",
        "wrong-voltage",
        "wrong-polarity",
        "ac-on-dc",
        "shared-positive-ground",
        "unfit-series-lead",
        "unfit-parallel-lead",
        "mixed-outlet",
        "unfit-power-plug",
        "unpowered-unit",
        "no-spare-outlet",
        "unfit-mains",
        "lossy-lead",
        "unregulated-supply",
        "battery-only",
        "battery-left-in",
        "brick-out-of-reach",
        "moved-switch",
        "tapped-series-pair",
        "stray-supply-current",
    )
)
