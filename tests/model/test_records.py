"""What the revision's statements mean: changes, freezing, field notes, readings."""

from __future__ import annotations

import pytest
from records_board import board
from small_rigs import HEAD, results_of

from rigc.model.records import FieldNote


@pytest.mark.parametrize(
    ("date", "state", "is_open"),
    [
        ("2026-03-02", "", False),  # the very day of the revision
        ("2026-03-03", "", True),
        ("2026-03-03", "folded", False),
        ("2026-03-03", "open", True),
        ("2026-01-01", "open", True),
        ("2026-01-01", "folded", False),
    ],
)
def test_a_note_is_open_if_newer_or_said_so(date: str, state: str, is_open: bool) -> None:
    note = results_of(f'field-note 1 {date} "a strip more" by "T.O." {state}\n').rig.field_notes[0]
    assert isinstance(note, FieldNote)
    assert note.open_at("2026-03-02") is is_open


def test_frozen_and_its_seal() -> None:
    line = '  frozen 2026-03-05 by "R.K."'
    for seal, told in (("", ""), (' seal "9a1f03-7c41d0"', "9a1f03-7c41d0")):
        frozen = results_of("", HEAD.replace("}\n", f"{line}{seal}\n}}\n")).rig.head.frozen
        assert frozen is not None
        assert (frozen.date, frozen.by, frozen.seal) == ("2026-03-05", "R.K.", told)


def test_what_a_change_touches_and_how_readings_are_held() -> None:
    rig = board().rig
    assert rig.head.changes[0].touches == ("stepladder", "A14", "D08")
    held = {(each.test, each.point): (each.reading.value, each.unit) for each in rig.readings}
    assert held[3, "A18"] == (0.41, "ohm")
    assert held[4, "A18"] == (200e6, "ohm")
    assert held[9, "rear-panel.l"] == (-0.2, "dB")
    assert held[16, "lever"] == (127.0, "")
    assert held[21, "long-haul"] == (7.0, "mA")
