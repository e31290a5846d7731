"""Fact: a number that rigc relies on, with where it comes from: the value cannot be had without its source."""

from __future__ import annotations

from rigc.record import Record


class Fact(Record):
    """`value` in `unit`; `says` what it is in words; `source` names a publication, or says `common practice, no source` or `from memory`."""

    value: float
    unit: str
    says: str
    source: str

    def __str__(self) -> str:
        return f"{self.value:g} {self.unit}".rstrip().replace("-", "−")
