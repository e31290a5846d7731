"""The search against trying everything: it finds a way exactly where there is one."""

from __future__ import annotations

from itertools import product
from random import Random

import pytest
from power_rigs import outlets, rig, supply, unit

from rigc.analysis.computations.load_limits import HARD, load_limits
from rigc.analysis.computations.power_assignment import power_assignment
from rigc.analysis.power.outlet_search import search
from rigc.analysis.power.outlet_sites import outlet_problem
from rigc.model.rig import Rig


def small_rig(seed: int) -> Rig:
    """Up to five units and four outlets on two supplies, with commons, ceilings, settings and sharing at random."""
    chance = Random(seed)
    units = tuple(
        unit(
            f"u{at}",
            chance.choice((20, 40, 60, 90)),
            *chance.choice(((), (), ("digital",))),
            volts=chance.choice((9, 9, 12)),
            ground=chance.choice(("negative", "negative", "positive")),
        )
        for at in range(chance.randint(1, 5))
    )
    supplies = tuple(
        supply(
            name,
            *(
                outlets(
                    "o",
                    at,
                    at,
                    *chance.choice((((9, 100),), ((9, 50),), ((9, 100), (12, 70)))),
                    common=chance.choice((None, None, "c")),
                )
                for at in range(chance.randint(0, 2))
            ),
            watts=chance.choice((None, 0.7, 1.2)),
        )
        for name in ("s", "t")
    )
    chain = " ".join(each.name for each in units)
    spare = ((1, "s", units[0].declared),) if chance.random() < 0.2 else ()
    return rig(units, supplies, chain=chain, others=("s", "t"), spare=spare)


def by_trying_all(made: Rig, limit_pct: float) -> bool:
    """Whether any way of standing units on settings of outlets keeps every rule, told anew from the rules' words."""
    ports = [(name, outlet) for name, each in made.supplies.items() for outlet in each.outlets]
    settings = list(product(*(range(len(outlet.ratings)) for _, outlet in ports)))
    units = list(made.units.values())
    return any(
        _keeps_rules(made, ports, units, where, setting, limit_pct)
        for where in product(range(len(ports)), repeat=len(units))
        for setting in settings
    )


def _keeps_rules(made: Rig, ports, units, where, setting, limit_pct) -> bool:  # type: ignore[no-untyped-def]
    watts = dict.fromkeys(made.supplies, 0.0)
    commons: dict[object, list[str]] = {}
    for at, (name, outlet) in enumerate(ports):
        here = [each for each, place in zip(units, where, strict=True) if place == at]
        rating = outlet.ratings[setting[at]]
        if any(each.volts.value != rating.volts.value for each in here):
            return False
        drawn = sum(each.draws_ma.value for each in here)
        if drawn * 100 > rating.milliamps.value * limit_pct:
            return False
        watts[name] += drawn * rating.volts.value / 1000
        if len(here) > 2 or (len(here) == 2 and abs(int(here[0].name[1:]) - int(here[1].name[1:])) != 1):
            return False
        if len(here) == 2 and any("digital" in each.flags or each.ground.value == "positive" for each in here):
            return False
        commons.setdefault((name, outlet.common or at), []).extend(each.ground.value for each in here)
    if any(len(grounds) > 1 and "positive" in grounds for grounds in commons.values()):
        return False
    for count, name, _ in made.power.spare:
        own = [at for at, (owner, _) in enumerate(ports) if owner == name]
        if set(own) & set(where) and sum(at not in where for at in own) < count:
            return False
    return all(
        each.ceiling_w is None or watts[name] <= each.ceiling_w.value + 1e-9 for name, each in made.supplies.items()
    )


@pytest.mark.parametrize("block", range(10))
def test_finds_a_way_exactly_where_there_is_one(block: int) -> None:
    """Sixty random small rigs a block, judged at the bare ratings."""
    for seed in range(block * 60, block * 60 + 60):
        made = small_rig(seed)
        problem = outlet_problem(made, load_limits(made), tuple(made.units.values()), {})
        found = search(problem, HARD, len(made.units))
        assert (found.taps is not None) == by_trying_all(made, 100), seed


def test_both_answers_occur() -> None:
    """Else the test above would prove little."""
    answers = [by_trying_all(small_rig(seed), 100) for seed in range(120)]
    assert 20 < sum(answers) < 100


def test_same_rig_same_steps() -> None:
    """The choice and the count of its steps do not depend on anything but the rig."""
    made = small_rig(7)
    problem = outlet_problem(made, load_limits(made), tuple(made.units.values()), {})
    assert search(problem, HARD, 5) == search(problem, HARD, 5)


def test_many_alike_without_a_way_is_told_at_once() -> None:
    """Forty-one units on forty outlets: a blind search would try forty factorial ways."""
    made = rig(
        tuple(unit(f"u{at}", 10) for at in range(41)), (supply("s", outlets("o", 1, 40, (9, 100))),), others=("s",)
    )
    problem = outlet_problem(made, load_limits(made), tuple(made.units.values()), {})
    assert search(problem, HARD, 0).steps == 0


def test_a_tight_ceiling_does_not_explode() -> None:
    """Twenty units of 90 mA and a ceiling for nineteen and a half: told after steps that can be counted, not 20 factorial."""
    made = rig(
        tuple(unit(f"u{at}", 90) for at in range(20)),
        (supply("s", outlets("o", 1, 25, (9, 100)), milliamps=19.5 * 90),),
        others=("s",),
    )
    problem = outlet_problem(made, load_limits(made), tuple(made.units.values()), {})
    found = search(problem, HARD, 0)
    assert found.taps is None
    assert found.steps <= 400


def test_too_hard_ends_undecided(monkeypatch: pytest.MonkeyPatch) -> None:
    """After the most steps it says that it does not know, and never that there is no way."""
    monkeypatch.setattr("rigc.analysis.power.outlet_search.MOST_STEPS", 3)
    made = rig(
        tuple(unit(f"u{at}", 90 + at) for at in range(6)),
        (
            supply("s", outlets("o", 1, 4, (9, 100)), milliamps=280),
            supply("t", outlets("o", 1, 4, (9, 100)), milliamps=280),
        ),
        others=("s", "t"),
    )
    problem = outlet_problem(made, load_limits(made), tuple(made.units.values()), {})
    found = search(problem, HARD, 0)
    assert (found.taps, found.steps, found.decided) == (None, 3, False)
    power = power_assignment(made, load_limits(made))
    assert [each.why for each in power.unfed] == ["undecided"]


def test_more_than_all_ceilings_is_told_at_once() -> None:
    """3 x 90 mA x 9 V = 2.43 W; both ceilings together are 2.4 W."""
    made = rig(
        tuple(unit(f"u{at}", 90) for at in range(3)),
        tuple(supply(name, outlets("o", 1, 3, (9, 100)), watts=1.2) for name in ("s", "t")),
        others=("s", "t"),
    )
    problem = outlet_problem(made, load_limits(made), tuple(made.units.values()), {})
    assert search(problem, HARD, 0).steps == 0
    assert [each.why for each in power_assignment(made, load_limits(made)).unfed] == ["ceiling"]
