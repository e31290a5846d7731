"""`rigc swap`: what it says of substitutes for the pitch unit of the touring example, and of wrong words; with the true compiler."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from touring_copy import touring

from cli.conftest import Run
from rigc.cli import main

Swap = Callable[..., Run]
SWAPPED = """
field-note 1 2026-05-02 "the pitch unit fell" by "R.K."
as-built C {
  swap stepladder for twin field-note 1
}
"""


@pytest.fixture
def swap(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfdbinary: pytest.CaptureFixture[bytes]) -> Swap:
    """Run `rigc swap` in the folder of the touring board."""
    touring(tmp_path)
    monkeypatch.chdir(tmp_path / "long-haul")

    def run(*arguments: str) -> Run:
        code = main(["swap", *arguments])
        out, err = capfdbinary.readouterr()
        return Run(code, out.decode(), err.decode())

    return run


def verdict(run: Run) -> str:
    return run.out.split("\n")[0]


def records(run: Run, table: str) -> list[dict[str, Any]]:
    held: list[dict[str, Any]] = json.loads(run.out)["tables"][table]["records"]
    return held


def fit(run: Run, what: str) -> tuple[str, str]:
    """Answer and note of the first row of that name."""
    row = next(row for row in records(run, "fit") if row["what"] == what)
    return row["answer"], row["note"] or ""


def test_twin(swap: Swap) -> None:
    """The same unit once more: 190 of 250 mA are 76 %."""
    run = swap("stepladder", "twin")
    assert (run.code, run.err, verdict(run)) == (0, "", "yes")
    assert "What is new among the findings" not in run.out
    told = swap("stepladder", "twin", "--to", "json")
    assert fit(told, "current") == ("yes", "76 %")
    assert {row["answer"] for row in records(told, "fit")} == {"yes"}
    assert [(row["lead"], row["do"]) for row in records(told, "leads")] == [
        ("A14", "keep, new labels"),
        ("A15", "keep, new labels"),
        ("D08", "keep, new labels"),
    ]
    assert records(told, "notice") == []


def test_larger_successor(swap: Swap) -> None:
    """By hand: 470 + 110 = 580, where echomill begins: no gap; weathervane ends at 320 + 110 = 430: 40 mm.

    320 mA are more than the 250 of a8. In parallel a7 and a8 give (250 + 250) x 0.9 = 450 mA: 71.1 %; echomill then
    stands on b8: 160/250 = 64 %. Leads, from the routes with the unit at x 455 (706, 618, 608, 581 mm) and 15 mm more at
    470: A14 721 + 30 = 751 to 1.1 x 721 + 150 = 943.1; A15 633: 663 to 846.3; D07 623 + 40 = 663 to 835.3; D08 596: 636 to
    805.6; they exist with 830, 710 and twice 900 mm as bought, so all stay. D16 is new: 279 + 40 = 319, bought as 450.
    """
    run = swap("stepladder", "stepladder-ii", "--to", "json")
    assert run.code == 0
    told = json.loads(run.out)
    assert (told["answer"], told["verdict"]) == (
        "with work",
        "yes, with work: feed it from mill8.a7 and mill8.a8 in parallel (71.1 %), with 'echomill' moved to weir8.b8 (64 %); "
        "a hole for A15 in plate; a hole for D07, D08 in plate; a parallel adaptor (Y1); D16 new, 450 mm",
    )
    assert fit(run, "body") == (
        "yes",
        "same corner, 470, 325; left 40 mm to weathervane, right 0 mm to echomill, front 30 mm to settle",
    )
    assert fit(run, "hole in plate") == (
        "with work",
        "cut it, or lay A15 over the deck as long as this is so, and try its length",
    )
    leads = [(row["lead"], row["there_mm"], row["least_mm"], row["most_mm"]) for row in records(run, "leads")]
    assert leads == [
        ("A14", 830, 751, 943.1),
        ("A15", 710, 663, 846.3),
        ("D07", 900, 663, 900),
        ("D08", 900, 636, 900),
        ("D16", None, 319, 456.9),
    ]
    assert [row["rule"] for row in records(run, "findings")] == [
        "mixed-outlet",
        "nearly-full-outlet",
        "no-spare-outlet",
        "switches-too-near",
    ]
    switch = records(run, "notice")[0]
    assert (switch["what"], switch["before"], switch["after"]) == (
        "foot switch at",
        "35, 25 mm latching",
        "55, 25 mm latching",
    )
    assert [row["test"] for row in records(run, "tests")] == [5, 6, 7, 9, 11, 12, 17, 19]


def test_reversed_polarity_is_a_clear_no(swap: Swap) -> None:
    run = swap("stepladder", "turncoat")
    said = "no: do not plug it in: 'turncoat' is centre-positive, mill8.a8 is centre-negative: its supply would be reversed"
    assert (run.code, verdict(run), run.err) == (1, said, f"rigc swap: {said}\n")
    assert "Test afterwards" not in run.out


def test_wrong_voltage_is_a_clear_no(swap: Swap) -> None:
    run = swap("stepladder", "hot")
    assert (run.code, verdict(run)) == (1, "no: do not plug it in: 'hot' takes 17.4 to 19.5 V, mill8.a8 gives 9 V")


def test_nothing_that_decides_is_guessed(swap: Swap) -> None:
    run = swap("stepladder", "silent-one")
    assert (run.code, verdict(run)) == (2, "not known: the polarity of 'silent-one' is not stated")
    assert "measure before any plug goes in" in run.out


def test_no_outlet_has_room(swap: Swap) -> None:
    """900 mA: the strongest outlets give 500."""
    run = swap("stepladder", "thirsty")
    assert run.code == 1
    assert verdict(run).startswith(
        "no: no outlet that is free, or could be, suits it (8.7 to 9.9 V, centre-negative, 900 mA, 950 mA at switch-on)"
    )


def test_other_connector(swap: Swap) -> None:
    run = swap("stepladder", "thick-pin")
    assert run.code == 0
    assert verdict(run) == (
        "yes, with work: a size adaptor or a DC lead for barrel 5.5 × 2.5; D08 anew, 900 mm (other plug)"
    )


def test_positive_ground(swap: Swap) -> None:
    """a8 is isolated and feeds nothing else; b7, under fan4, and b8 share one common."""
    assert fit(swap("stepladder", "plus-ground", "--to", "json"), "ground pole") == ("yes", "alone on mill8.a8")
    board = Path("board.rig")
    text = board.read_text("utf-8").replace("echomill from mill8.a7", "echomill from weir8.b8")
    board.write_text(text.replace("mill8.a7 -> echomill.dc", "weir8.b8 -> echomill.dc"), "utf-8")
    run = swap("echomill", "plus-ground", "--to", "json")
    answer, note = fit(run, "ground pole")
    assert (run.code, answer) == (1, "no")
    assert note.startswith("do not plug it in: the audio ground of 'plus-ground' is its + pole")


def test_a_little_too_wide(swap: Swap) -> None:
    """470 + 115 = 585: 5 mm into echomill at 580; 5 mm to the left there are still 465 - 430 = 35 mm to weathervane."""
    run = swap("stepladder", "broad", "--to", "json")
    assert run.code == 0
    answer, note = fit(run, "body")
    assert answer == "with work"
    assert note.startswith(
        "overlaps 'echomill' by 5 x 125 mm: set it 5 mm to the left, corner at 465, 325; left 35 mm to"
    )
    assert json.loads(run.out)["verdict"].startswith("yes, with work: set it 5 mm to the left")


def test_too_tall(swap: Swap) -> None:
    """The lid leaves 120 - 10 = 110 mm."""
    run = swap("stepladder", "tower")
    assert run.code == 1
    assert verdict(run) == "no: 'tower' stands 130 mm tall and the lid of 'trunk' leaves 110 mm, short by 20 mm"


def test_a_unit_that_takes_no_power(swap: Swap) -> None:
    run = swap("stepladder", "powerless")
    assert run.code == 0
    assert "tie back the power lead" in verdict(run)
    assert "'powerless' takes no power" in run.out


def test_a_unit_that_takes_power_where_none_did(swap: Swap) -> None:
    """slipway is passive; b8 is free: 250 of 250 mA. A centre-positive unit has no outlet at all."""
    run = swap("slipway", "stereo-one", "--to", "json")
    assert json.loads(run.out)["verdict"].startswith("yes, with work: feed it from weir8.b8 (100 %)")
    assert [row["what"] for row in records(run, "fit")][:5] == [
        "voltage", "polarity", "ground pole", "connector", "current",
    ]  # fmt: skip
    assert "suits it (8.7 to 9.9 V, centre-positive, 190 mA" in verdict(swap("slipway", "turncoat"))
    assert fit(swap("slipway", "silent-one", "--to", "json"), "polarity")[0] == "not known"


def test_jacks_of_other_names(swap: Swap) -> None:
    """The leads go where the sound goes in and out, whatever these jacks are called and in which order they are declared."""
    run = swap("stepladder", "other-names", "--to", "json")
    assert run.code == 0
    assert [(row["lead"], row["way"]) for row in records(run, "leads")] == [
        ("A14", "signalbox.s7 -> other-names.take-it"),
        ("A15", "other-names.send-it -> signalbox.r7"),
        ("D08", "mill8.a8 -> other-names.nine"),
    ]


def test_mono_in_the_place_of_stereo(swap: Swap) -> None:
    """What has no counterpart is told: the right side, MIDI with channel and programs, the expression treadle."""
    run = swap("lantxl", "twin", "--to", "json")
    assert run.code == 0
    fallen = [row["before"] for row in records(run, "notice") if row["what"] == "falls away"]
    assert fallen[:5] == [
        "weathervane => lantxl",
        "lantxl => rotundaxl",
        "lever.out -> lantxl.exp",
        "fan4.t2 -> lantxl.midi",
        "lantxl channel 2 programs from 0",
    ]
    assert 'preset 2 "Drive": program 3 on lantxl' in fallen
    assert "MIDI channel" not in [row["what"] for row in records(run, "notice")]
    assert [row["what"] for row in records(run, "notice")][-2:] == ["presets", "songs"]


def test_a_unit_of_one_voltage_stays_off_the_outlet_of_another(swap: Swap) -> None:
    """heron stands on b5 at 12 V."""
    run = swap("heron", "twin")
    assert run.code == 1
    assert "'twin' takes 8.7 to 9.9 V, weir8.b5 gives 12 V" in verdict(run)


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("stepladr", "twin"), "nothing declares a unit 'stepladr'; did you mean 'stepladder'?"),
        (("stepladder", "twinn"), "nothing declares a unit 'twinn'; did you mean 'twin'?"),
        (("stepladder", "zebra"), "nothing declares a unit 'zebra'; declare it with its facts first"),
        (("mill8", "twin"), "'mill8' is declared as supply, and swap exchanges units"),
        (("guitar", "twin"), "'guitar' is declared as instrument"),
        (("stepladder", "rear-panel"), "'rear-panel' is declared as panel"),
        (("twin", "twin"), "'twin' can't stand in for itself"),
        (("stepladder", "marl"), "'marl' is in use already: loop 4 of signalbox holds marl"),
        (("hot", "twin"), "'hot' is declared, but nothing of this rig uses it"),
        (("left-amp", "twin"), "'left-amp' is an amp, 'twin' is a unit"),
        (("stepladder", "twin", "missing.rig"), "missing.rig"),
        (("stepladder", "twin", "--to", "pdf"), "pdf"),
        (("stepladder",), "BY"),
        (("stepladder", "twin", "--root", "nowhere"), "nowhere"),
    ],
)
def test_wrong_words(swap: Swap, arguments: tuple[str, ...], said: str) -> None:
    run = swap(*arguments)
    assert (run.code, run.out) == (2, "")
    assert said in run.err


def test_a_rig_with_errors(swap: Swap) -> None:
    board = Path("board.rig")
    board.write_text(board.read_text("utf-8").replace("holds stepladder\n", "holds stepladr\n"), "utf-8")
    run = swap("stepladder", "twin")
    assert (run.code, run.out) == (2, "")
    assert "nothing declares 'stepladr'" in run.err
    assert "nothing is tried while the rig has these errors" in run.err


def test_amps(swap: Swap) -> None:
    """An amp can be exchanged for an amp; it has no place on the board."""
    run = swap("left-amp", "spare-amp", "--to", "json")
    assert (run.code, json.loads(run.out)["verdict"]) == (0, "yes")
    assert [row["what"] for row in records(run, "fit")] == ["power"]
    assert [row["way"] for row in records(run, "leads")] == ["rear-panel.l -> spare-amp.in"]


def test_note_is_to_be_filled_in(swap: Swap) -> None:
    run = swap("stepladder", "twin", "--note")
    assert (run.code, run.err) == (0, "rigc swap: yes\n")
    assert run.out == (
        'field-note 1 YYYY-MM-DD "stepladder out, twin in: WHY AND WHERE" by "WHO"\n'
        "as-built C {\n  swap stepladder for twin field-note 1\n}\n"
    )
    board = Path("board.rig")
    text = board.read_text("utf-8")
    board.write_text(text + run.out, "utf-8")
    assert main(["check", "-q", "board.rig"]) != 0  # a note without its day is no statement
    board.write_text(text + run.out.replace("YYYY-MM-DD", "2026-05-02"), "utf-8")
    assert "field-note 2 YYYY-MM-DD" in swap("twin", "stepladder-ii", "--note").out


def test_what_was_swapped_on_the_road_counts_as_standing(swap: Swap, tmp_path: Path) -> None:
    """The twin stands there already: it can be exchanged, and the unit that it replaced can't."""
    touring(tmp_path, SWAPPED)
    assert swap("twin", "turncoat").code == 1
    assert verdict(swap("twin", "other-names")) == "yes"
    assert "'stepladder' is declared, but nothing of this rig uses it" in swap("stepladder", "twin").err
    assert verdict(swap("twin", "stepladder")) == "yes"  # and back again


def test_forms(swap: Swap) -> None:
    page = swap("stepladder", "stepladder-ii", "--to", "html").out
    assert page == swap("stepladder", "stepladder-ii", "--to", "html").out
    assert "<!doctype html" in page.lower()
    assert "yes, with work: feed it from" in page
    assert "valid for revision C" in page
    told = swap("stepladder", "stepladder-ii", "--to", "md").out
    assert "| **A14** | signalbox.s7 -> stepladder-ii.in | 830 | 751 | 943.1 |" in told
    assert "&amp;" not in told


def test_standard_input(swap: Swap, monkeypatch: pytest.MonkeyPatch) -> None:
    import io
    import sys

    text = Path("board.rig").read_bytes()
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(text)))
    assert verdict(swap("stepladder", "twin", "-")) == "yes"
