"""One JSON object a finding."""

from __future__ import annotations

import json

from rigc.diagnostics.diagnostic import Acceptance, Kind, Label, Level, Number
from rigc.diagnostics.machine import jsonl
from rigc.source import Source, Span

KIND = Kind("overloaded-supply", Level.ERROR, None, "load <= rating", "arithmetic")
SOURCE = Source("a.rig", "supply mäin {\n  ceiling 100 mA\n}\n")


def test_every_field() -> None:
    finding = KIND.at(
        Span(SOURCE, 7, 30),
        "'mäin' is overloaded",
        subject=("mäin",),
        label="this",
        also=(Label(Span(SOURCE, 24, 30), "all of it"),),
        numbers=(Number("draws", 170.0, "mA"),),
        help="feed less",
    )
    line = jsonl([finding])
    assert line.count("\n") == 1
    assert line.isascii()
    assert json.loads(line) == {
        "rule": "overloaded-supply",
        "level": "error",
        "message": "'mäin' is overloaded",
        "file": "a.rig",
        "line": 1,
        "column": 8,
        "end_line": 2,
        "end_column": 17,
        "label": "this",
        "related": [
            {"message": "all of it", "file": "a.rig", "line": 2, "column": 11, "end_line": 2, "end_column": 17}
        ],
        "numbers": [{"name": "draws", "value": 170.0, "unit": "mA"}],
        "note": "",
        "help": "feed less",
        "mends": [],
        "follow": [],
        "condition": "load <= rating",
        "source": "arithmetic",
        "fingerprint": finding.fingerprint,
        "accepted": None,
    }


def test_no_place_and_an_acceptance() -> None:
    accepted = Acceptance("it is in the lid", "R.K.", "2026-12-31", Span(SOURCE, 0, 1))
    got = json.loads(jsonl([KIND.at(None, "m").replace(accepted=accepted)]))
    assert [got[key] for key in ("file", "line", "column", "end_line", "end_column")] == [None] * 5
    assert got["accepted"] == {"reason": "it is in the lid", "by": "R.K.", "until": "2026-12-31"}


def test_a_lone_surrogate_and_a_shown_name() -> None:
    got = jsonl([KIND.at(Span(SOURCE, 0, 1), "x\ud800")], lambda name: f"rigs/{name}")
    assert '"x\\ud800"' in got
    assert json.loads(got)["file"] == "rigs/a.rig"


def test_the_fingerprint_stays_when_the_line_moves() -> None:
    moved = Source("a.rig", "\n\n" + SOURCE.text)
    one, two = (
        KIND.at(Span(src, at, at + 4), text, subject=("mäin",)) for src, at, text in ((SOURCE, 7, "m"), (moved, 9, "n"))
    )
    assert one.fingerprint == two.fingerprint
    assert one.fingerprint != KIND.at(None, "m", subject=("other",)).fingerprint
