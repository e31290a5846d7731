"""The `use` line that a rig lacks, as a mend."""

from __future__ import annotations

from rigc.diagnostics.mend import Add, Mend


def use_line(file: str) -> Mend:
    """The mend that brings in a file of the generic stock, `stock/strips.rig`."""
    return Mend(f'add the line: use "{file}"', (Add(f'use "{file}"', at_start=True),))
