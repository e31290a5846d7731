"""The touring rig's planted mistake on MIDI: told once, with the free channels; the corrected rigs without any of these rules."""

from __future__ import annotations

import pytest
from written import compiled_with

from rigc.diagnostics.diagnostic import Diagnostic, Level

MINE = (
    "shared-midi-channel",
    "tangled-midi",
    "long-midi-chain",
    "unlike-control-wiring",
    "two-conductor-expression",
    "stale-preset",
)
HOME, TOURING = "examples/back-bedroom/board.rig", "examples/long-haul/board.rig"


def found(path: str, *changes: tuple[str, str]) -> list[Diagnostic]:
    """The findings of these rules."""
    return [finding for finding in compiled_with(path, *changes).findings if finding.kind.name in MINE]


@pytest.mark.parametrize("path", [HOME, TOURING, "tests/rigs/back-bedroom-as-ordered.rig"])
def test_rigs_without_a_mistake_of_these_rules(path: str) -> None:
    assert found(path) == []


def test_two_units_on_channel_three() -> None:
    """lantxl and rotundaxl both on 3, weathervane on 1: free are 2 and 4 to 16."""
    (told,) = found("tests/rigs/long-haul-as-ordered.rig")
    assert (told.kind.name, told.level) == ("shared-midi-channel", Level.WARNING)
    assert told.subject == ("lantxl", "rotundaxl")
    assert told.message == "'lantxl' and 'rotundaxl' listen on MIDI channel 3; free are 2, 4…16"


def test_a_stale_preset() -> None:
    """Loop 9 of an eight-loop switcher; a program that a unit counting from 1 can't have."""
    changes = (
        ("loops 3, 6 of signalbox", "loops 3, 9 of signalbox"),
        ("program 6 on rotundaxl", "program 0 on rotundaxl"),
    )
    told = {finding.subject[0]: finding.message for finding in found(TOURING, *changes)}
    assert told == {
        "signalbox": "preset 4 names loop 9 of 'signalbox', which has only loops 1…8",
        "rotundaxl": "preset 3 names program 0 on 'rotundaxl', which has 1…128",
    }
