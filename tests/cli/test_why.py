"""`rigc why`: how a value came about, as text and as JSON; run with the true compiler on the example rigs."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from cases import ROOT
from jsonschema import Draft202012Validator

from cli.conftest import Run
from rigc.cli import main

HOME, TOURING = "examples/back-bedroom/board.rig", "examples/long-haul/board.rig"
PLACE = {
    "type": ["object", "null"],
    "required": ["file", "line", "column"],
    "properties": {
        "file": {"type": "string", "pattern": "^[^/].*[.]rig$"},
        "line": {"type": "integer", "minimum": 1},
        "column": {"type": "integer", "minimum": 1},
    },
    "additionalProperties": False,
}
INPUT = {
    "type": "object",
    "required": ["name", "value", "unit", "place", "provenance", "assumed", "why", "source"],
    "properties": {
        "name": {"type": "string", "minLength": 1},
        "value": {"type": "string"},
        "unit": {"type": "string"},
        "place": PLACE,
        "provenance": {
            "type": ["object", "null"],
            "required": ["kind", "date", "by", "place"],
            "properties": {
                "kind": {"enum": ["measured", "leaflet", "assumed"]},
                "date": {"type": ["string", "null"], "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"},
                "by": {"type": ["string", "null"], "minLength": 1},
                "place": PLACE,
            },
            "additionalProperties": False,
        },
        "assumed": {"type": "boolean"},
        "why": {"type": ["string", "null"], "minLength": 1},
        "source": {"type": ["string", "null"], "minLength": 1},
    },
    "additionalProperties": False,
}
TEXT = {"type": "string", "minLength": 1}
AMOUNT = {"type": ["number", "null"]}
OFF = {
    "type": "object",
    "required": ["name", "value", "off_by", "least", "most", "place"],
    "properties": {"name": TEXT, "value": TEXT, "off_by": TEXT, "least": AMOUNT, "most": AMOUNT, "place": PLACE},
    "additionalProperties": False,
}
RANGE = {
    "type": ["object", "null"],
    "required": ["least", "most", "at_most", "facts", "beside"],
    "properties": {
        "least": AMOUNT,
        "most": AMOUNT,
        "at_most": {"type": "boolean"},
        "facts": {"type": "array", "items": OFF},
        "beside": {"type": "array", "items": OFF},
    },
    "additionalProperties": False,
}
SCHEMA = {
    "type": "object",
    "required": ["format", "reasons"],
    "properties": {
        "format": {"const": 1},
        "reasons": {
            "type": "array",
            "minItems": 1,
            "items": {
                "type": "object",
                "required": ["name", "value", "unit", "formula", "assumed", "range", "inputs", "rule", "source"],
                "properties": {
                    "name": TEXT,
                    "value": TEXT,
                    "unit": {"type": "string"},
                    "formula": TEXT,
                    "assumed": {"type": "boolean"},
                    "range": RANGE,
                    "inputs": {"type": "array", "items": INPUT},
                    "rule": TEXT,
                    "source": TEXT,
                },
                "additionalProperties": False,
            },
        },
    },
    "additionalProperties": False,
}

Why = Callable[..., Run]


@pytest.fixture
def why(monkeypatch: pytest.MonkeyPatch, capfdbinary: pytest.CaptureFixture[bytes]) -> Why:
    """Run `rigc why` in this process, from the project's folder."""
    monkeypatch.chdir(ROOT)

    def run(*arguments: str) -> Run:
        code = main(["-q", "why", *arguments])
        out, err = capfdbinary.readouterr()
        return Run(code, out.decode(), err.decode())

    return run


def held(run: Run) -> list[dict[str, Any]]:
    """The reasons of an answer in JSON, which is held against the schema."""
    answer = json.loads(run.out)
    Draft202012Validator(SCHEMA).validate(answer)
    reasons: list[dict[str, Any]] = answer["reasons"]
    return reasons


def test_value_formula_inputs_rule_and_source(why: Why) -> None:
    code, out, err = why("plumb.needed", HOME)
    assert (code, err) == (0, "")
    lines = out.splitlines()
    assert lines[:2] == ["plumb.needed = 3.11 cm²", "  formula: 0.19 × 20 × 9.81 / 120 × 10 = 3.11"]
    assert lines[2].startswith("  from plumb mass ")
    assert lines[2].endswith("measured 2026-02-14 by R.K.")
    assert f"  {HOME}:" in lines[2]
    assert "a number of rigc: physics: a/g is about height of fall / travel" in lines[3]
    assert "  examples/bench/stock.rig:" in lines[5]
    assert lines[6] == "  rule: needed = mass × deceleration × g / pull (1 kPa = 1000 N per m²)"
    assert lines[7].startswith("  source: physics: ")
    assert len(lines) == 8


UNSURE = """language 1
rig sample {
  revision A 2026-01-01
}
supply mill {
  ceiling 20 W
  connector barrel 5.5 x 2.1 mm
  polarity centre-negative
  outlet o1 9 V dc 500 mA isolated
}
unit marl {
  inlet dc barrel 5.5 x 2.1 mm
  needs 9 V dc
  polarity centre-negative
  ground negative
  draws from 40 to 60 mA
}
unit fen {
  inlet dc barrel 5.5 x 2.1 mm
  needs 9 V dc
  polarity centre-negative
  ground negative
  draws 300 mA assumed
}
power {
  marl, fen from mill.o1 shared
}
"""


def test_a_range_tells_the_fact_that_makes_most_of_it_first(
    why: Why, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """50 +- 10 mA and 300 mA, a guessed current, by 30 %: 350 less 100, and 100 more; of 500 mA 50 to 90 %."""
    (tmp_path / "board.rig").write_text(UNSURE, "utf-8")
    monkeypatch.chdir(tmp_path)
    lines = why("mill.o1.percent", "board.rig").out.splitlines()
    at = lines.index("  range: 50 to 90 %")
    first, second = lines[at + 1 : at + 3]
    assert first.split()[:5] == ["what", "current", "fen", "draws", "300"]
    assert "± 30 %, as assumed  makes ± 18 %" in first and first.endswith("board.rig:23")
    assert "from 40 to 60 mA" in second and "makes ± 2 %" in second and "assumed" not in second
    (reason,) = held(why("mill.o1.percent", "board.rig", "--to", "json"))
    told = reason["range"]
    assert (told["least"], told["most"], told["at_most"], told["beside"]) == (50, 90, False, [])
    assert [(each["off_by"], each["least"], each["most"]) for each in told["facts"]] == [
        ("± 30 %", 52, 88),
        ("from 40 to 60 mA", 68, 72),
    ]
    assert held(why("mill.o1.limit", "board.rig", "--to", "json"))[0]["range"] is None


def test_a_lead_in_short(why: Why) -> None:
    code, out, _ = why("A14", TOURING)
    lines = [line.split(maxsplit=1) for line in out.splitlines()]
    assert code == 0
    assert ["A14.finished", "830 mm"] in lines
    assert ["A14.cut", "858 mm"] in lines
    assert "formula" not in out


def test_deep_goes_down_to_the_facts_and_tells_each_once(why: Why) -> None:
    out = why("A14.cut", TOURING, "--deep").out
    assert out.count("formula: 751 + 75.1 = 826.1 → 830") == 1
    assert out.count("formula: 20 + 266, 15 + 110 = 286, 125") == 1
    deep = next(line for line in out.splitlines() if "signalbox.s7 on the rear side" in line)
    assert deep.startswith(" " * 12)
    assert "formula: 20 + 266" not in why("A14.cut", TOURING).out


def test_stock_that_ships_is_named_as_it_is_used(why: Why) -> None:
    assert "  stock/plugs.rig:" in why("A14.cut", TOURING).out


def test_json_holds_places_and_provenance(why: Why) -> None:
    (reason,) = held(why("mill5.o2.load", HOME, "--to", "json"))
    assert (reason["name"], reason["value"], reason["unit"], reason["assumed"]) == ("mill5.o2.load", "30", "mA", False)
    assert [each["why"] for each in reason["inputs"]] == ["marl.draws", "millpond.draws", None]
    (draws,) = held(why("marl.draws", HOME, "--to", "json"))
    (fact,) = draws["inputs"]
    number = fact["place"]["line"]
    line = (ROOT / HOME).read_text("utf-8").splitlines()[number - 1]
    assert fact["place"]["file"] == HOME
    assert line[fact["place"]["column"] - 1 :].startswith(fact["value"])
    assert fact["provenance"]["kind"] == "measured"


@pytest.mark.parametrize(("rig", "name"), [(HOME, "rig"), (HOME, "guitar"), (TOURING, "A14"), (TOURING, "weir8")])
def test_json_follows_its_schema(why: Why, rig: str, name: str) -> None:
    shallow = [each["name"] for each in held(why(name, rig, "--to", "json"))]
    reasons = {each["name"]: each for each in held(why(name, rig, "--to", "json", "--deep"))}
    assert set(shallow) < set(reasons)
    assert all(each["why"] in reasons for reason in reasons.values() for each in reason["inputs"] if each["why"])


def test_what_is_assumed_is_marked(why: Why, tmp_path: Path) -> None:
    text = (ROOT / HOME).read_text("utf-8").replace("draws 22 mA", "draws 22 mA assumed")
    text = text.replace('"../bench/stock.rig"', '"stock.rig"')
    (tmp_path / "stock.rig").write_text((ROOT / "examples" / "bench" / "stock.rig").read_text("utf-8"), "utf-8")
    (tmp_path / "board.rig").write_text(text, "utf-8")
    rig = str(tmp_path / "board.rig")
    assert "ASSUMED" in why("millpond.draws", rig).out
    assert why("mill5.o2.load", rig).out.startswith("mill5.o2.load = 30 mA (rests on something assumed)\n")
    short = [" ".join(line.split()) for line in why("mill5.o2", rig).out.splitlines()]
    assert "mill5.o2.percent 30 % rests on something assumed" in short
    assert "mill5.o2.rating 100 mA" in short
    assert why("mill5.o2.load", HOME).out.startswith("mill5.o2.load = 30 mA\n")


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("A14.finishd", "'A14' has no value 'finishd'; did you mean 'A14.finished'?"),
        ("a14", "nothing named 'a14' has a value; did you mean 'A14'?"),
        ("nosuch", "nothing named 'nosuch' has a value"),
    ],
)
def test_an_unknown_name_is_refused_with_the_nearest(why: Why, name: str, said: str) -> None:
    code, out, err = why(name, TOURING)
    assert (code, out) == (2, "")
    assert err == f"rigc why: {said} (rigc why --help says more)\n"


def test_a_rig_that_means_nothing_has_no_answer(why: Why, tmp_path: Path) -> None:
    rig = tmp_path / "a.rig"
    rig.write_text("language 1\nrig a {\n  revision A 2026-03-02\n}\nchain one -> two\n")
    code, out, err = why("one", str(rig))
    assert (code, out) == (2, "")
    assert "nothing is computed while names or quantities are wrong\n" in err


def test_findings_and_the_reason_do_not_share_a_stream(why: Why) -> None:
    code, out, err = why("rig.mass", HOME, "--findings", "jsonl")
    assert (code, out) == (2, "")
    assert "standard output is for the reason" in err
