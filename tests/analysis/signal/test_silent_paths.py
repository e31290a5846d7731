"""Ways that fall silent without power, and plans that go round them. Rigs are invented."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from small_rigs import block, results_of, unit

from rigc.analysis.signal.silent_paths import SilentPaths

GUITAR, COMBO = block("instrument", "guitar"), block("amp", "combo", "input in ts")
MUTES, PASSES = "unpowered mutes", "unpowered passes"


def silent(*parts: str) -> list[tuple[tuple[str, ...], bool]]:
    return [(each.units, each.planned) for each in results_of("".join(parts)).get(SilentPaths).all]


@pytest.mark.parametrize(
    ("name", "units", "ends"),
    [
        # The units that the worked rigs say pass nothing; hedge passes, plumb of the touring rig hangs on a branch.
        ("back-bedroom", ("plumb", "marl", "millpond", "lant", "rotunda"), ["combo.in"]),
        ("long-haul", ("heron", "signalbox", "weathervane", "lantxl", "rotundaxl"), ["left-amp.in", "right-amp.in"]),
    ],
)
def test_the_worked_rigs(name: str, units: tuple[str, ...], ends: list[str]) -> None:
    found = results(ROOT / f"examples/{name}/board.rig").get(SilentPaths)
    (path,) = found.all
    assert (path.units, path.planned, found.unsure) == (units, False, ())
    assert [str(end) for end in path.ends] == ends


@pytest.mark.parametrize(
    ("plan", "planned"),
    [
        ("guitar -> combo", True),
        ("guitar -> hedge", True),  # hedge itself passes
        ("marl -> combo", False),  # from behind marl
        ("guitar -> marl", False),
    ],
)
def test_plans(plan: str, planned: bool) -> None:
    chain = "chain guitar -> marl -> hedge -> combo\n"
    found = silent(GUITAR, unit("marl", MUTES), unit("hedge", PASSES), COMBO, chain, f'bypass {plan} "lead"\n')
    assert found == [(("marl",), planned)]


def test_the_way_past_is_taken() -> None:
    # A splitter and a mixer that pass: sound goes on by the side without a silent unit.
    fork = block("unit", "fork", "passive", "input in ts", "output a ts", "output b ts")
    weir = block("unit", "weir", "passive", "input a ts", "input b ts", "output out ts")
    chains = "chain guitar -> fork.a -> marl -> weir.a\nchain fork.b -> weir.b\nchain weir -> combo\n"
    assert silent(GUITAR, fork, unit("marl", MUTES), weir, COMBO, chains) == []


def test_loops_are_out_in_the_all_off_state() -> None:
    box = unit("box", PASSES, "output s1 ts", "input r1 ts", "loop 1 send s1 return r1")
    held = "loop 1 of box holds marl\nchain guitar -> box -> combo\n"
    assert silent(GUITAR, box, unit("marl", MUTES), COMBO, held) == []


def test_a_unit_that_takes_power_and_does_not_say_is_unsure() -> None:
    found = results_of(GUITAR + unit("marl", "needs 9 V dc") + COMBO + "chain guitar -> marl -> combo\n").get(
        SilentPaths
    )
    assert (found.all, found.unsure) == ((), ("marl",))


def test_passive_units_need_no_power() -> None:
    found = results_of(GUITAR + unit("slipway", "passive") + COMBO + "chain guitar -> slipway -> combo\n").get(
        SilentPaths
    )
    assert (found.all, found.unsure) == ((), ())
