"""The touring rig's planted mistakes of power and mains, in the words that they want; the corrected rigs; wrong inputs."""

from __future__ import annotations

import pytest
from power_rules import POWER_RULES
from small_rigs import block, results_of, unit
from written import compiled_with

from rigc.analysis.findings.findings import Findings
from rigc.analysis.findings.follow_on import folded
from rigc.diagnostics.diagnostic import Diagnostic, Level

HOME, TOURING = "examples/back-bedroom/board.rig", "examples/long-haul/board.rig"
AS_ORDERED = "tests/rigs/long-haul-as-ordered.rig"
JAPAN = "  selector mill8 115 V\n  transformer 100 V to 115 V 50 VA before mill8\n"


def found(path: str, *changes: tuple[str, str]) -> list[Diagnostic]:
    """The findings of the power rules, and of guesses near a limit."""
    told = compiled_with(path, *changes).findings
    return [finding for finding in told if finding.kind.name in POWER_RULES | {"limit-in-doubt"}]


def of(code: str, path: str, *changes: tuple[str, str]) -> list[Diagnostic]:
    return [finding for finding in found(path, *changes) if finding.kind.name == code]


def test_corrected_rigs() -> None:
    """The home rig has nothing; the touring one only its two switches: b5 at 12 V, b6 at 18 V."""
    assert found(HOME) == []
    assert [(finding.kind.name, finding.level.word, finding.subject) for finding in found(TOURING)] == [
        ("moved-switch", "warning", ("weir8.b5", "heron")),
        ("moved-switch", "warning", ("weir8.b6", "lapwing")),
    ]


def test_series_lead_on_one_common() -> None:
    """b7 and b8 share one common; b6 at 18 V would give 250 mA to 25, if fan4 left it."""
    (told,) = of("unfit-series-lead", AS_ORDERED)
    assert told.level.word == "error"
    assert (
        told.message
        == "'weir8.b7' and 'weir8.b8' share the common 'last-two'; in series this shorts one of them ('lapwing')"
    )
    assert told.advice == (
        "feed 'lapwing' from weir8.b6 at 18 V (10 %) and 'fan4' from weir8.b7, and tape the switch of weir8.b6 over "
        "(moved-switch then warns of it)"
    )


def test_japan_without_a_step_transformer() -> None:
    """Once for each of the two scenarios: 100 V is outside 115 V ± 10 %, the secondary gives 87 %, 25 VA at least. The amps, which do not
    say what mains they take, are asked for it."""
    told = [each for each in of("unfit-mains", AS_ORDERED) if each.level is not Level.CANT_CHECK]
    assert [(finding.level.word, finding.subject) for finding in told] == [
        ("error", ("mill8", "jp-east")),
        ("error", ("mill8", "jp-west")),
    ]
    for finding, name in zip(told, ("jp-east", "jp-west"), strict=True):
        assert finding.message == (
            f"'mill8' takes 103.5 to 126.5 V with its selector at 115 V, and '{name}' gives 100 V: "
            "its secondary gives 87 % of design, so what it feeds drops out or hums"
        )
        assert "write `transformer 100 V to 115 V 25 VA before mill8`" in finding.advice


def test_selector_left_at_115_in_europe() -> None:
    """230 V on the 115 V position: an error in both European scenarios where they say so."""
    europe = "  country GB\n  selector mill8 230 V\n"
    (told,) = of("unfit-mains", TOURING, (europe, europe.replace("230", "115")))
    assert (told.level.word, told.subject) == ("error", ("mill8", "uk"))
    assert told.advice.startswith("set the selector of 'mill8' to 230 V there")


def test_parallel_pair_of_the_next_revision() -> None:
    """echomill and fan4 on b7 and b8: fan4's MIDI input is isolated, the common joins it again; and no outlet is
    spare. stepladder, 320 mA of unknown start-up, on the pair a7 + a8: 320/450 = 71.1 % (nearly-full-outlet)."""
    changes = (
        ("  draws 190 mA\n  starts 230 mA\n", "  draws 320 mA\n"),
        ("  echomill from mill8.a7\n", "  echomill from weir8.b8\n"),
        ("  stepladder from mill8.a8\n", "  stepladder from mill8.a7, mill8.a8 parallel\n"),
        ("  D07 mill8.a7 -> echomill.dc", "  D16 weir8.b8 -> echomill.dc"),
    )
    told = found(TOURING, *changes)
    assert sorted(finding.kind.name for finding in told) == [
        "mixed-outlet",
        "moved-switch",
        "moved-switch",
        "nearly-full-outlet",
        "no-spare-outlet",
    ]
    (mixed,) = [finding for finding in told if finding.kind.name == "mixed-outlet"]
    assert set(mixed.subject) >= {"echomill", "fan4", "weir8.b7", "weir8.b8"}
    assert "an isolator stands between" in mixed.message


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("country US", "country QX", "no country has the code 'QX'"),
        ("country US", "country UK", "no country has the code 'UK'"),
        ("country US", "country U1", "'U1' is no country code"),
        ("mains 120 V 60 Hz", "mains 500 V 60 Hz", "500 V is too much for the mains: at most 480 V is plausible"),
        ("mains 120 V 60 Hz", "mains 20 V 60 Hz", "20 V is too little for the mains: at least 50 V is plausible"),
    ],
)
def test_wrong_inputs(old: str, new: str, message: str) -> None:
    assert message in [finding.message for finding in compiled_with(TOURING, (old, new)).findings]


def test_a_country_has_its_likely_code_named() -> None:
    (told,) = [each for each in compiled_with(TOURING, ("country US", "country UK")).findings if "UK" in each.message]
    assert told.advice == "write 'GB'"


def test_an_unknown_ground_is_asked_for_once() -> None:
    """Of two units on one outlet, joined by a lead: whether it is a ring hangs on the same fact."""
    dc = ("inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", "draws 9 mA")
    text = (
        unit("plumb", *dc)
        + unit("tern", *dc)
        + block("supply", "mill", "connector barrel 5.5 x 2.1 mm", "outlet o1 9 V dc 100 mA isolated")
        + "chain plumb -> tern\n"
        + block("power", "", "plumb, tern from mill.o1 shared").replace("power  {", "power {")
    )
    told = folded(results_of(text).get(Findings).all)
    asking = [each for each in told if "which pole is its ground" in each.message]
    assert [(each.kind.name, [one.kind.name for one in each.follow]) for each in asking] == [
        ("shared-positive-ground", ["shared-supply-ring"]),
        ("shared-positive-ground", []),
    ]
