"""The small rigs whose findings, folders and figures are expected whole."""

from __future__ import annotations

from cases import ROOT

RIGS = (
    *(ROOT / "tests/reach" / f"{name}.rig" for name in ("board", "rest", "revision", "sources")),
    ROOT / "tests/reports/askew.rig",
    *(ROOT / "tests/rigs" / f"{name}.rig" for name in ("odd-leads", "round-figures", "salt-pan", "two-cases")),
)
