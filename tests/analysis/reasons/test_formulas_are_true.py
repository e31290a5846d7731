"""Every formula of `rigc why`, over every rig of the project, reckoned by its own printed digits; and no reason lacks what it rests on."""

from __future__ import annotations

import re
from functools import cache

import pytest
from cases import ROOT, results_if_sound
from worked_formula import equations, unread

from rigc.analysis.reasoning import Reasoning
from rigc.files.disk import Disk

RIGS = [*sorted(ROOT.glob("examples/*/board.rig")), *sorted((ROOT / "tests").rglob("*.rig"))]
PARTS = 4

# What has a number in it and an equals sign behind, and is told in words or by a rule that is no arithmetic.
IN_WORDS = [
    r"\d+ stops before '[^']+', and \d+",
    r"\|Σ \(x₁ y₂ − x₂ y₁\)\| / 2",
    r"20 log10 \|V\(\d+ Hz\)\|",
    r"\|V\(f\)\| is \|V\(\d+ Hz\)\| / √2 at f",
    r"of [\d., ]+ the nearest to y|[\d.]+ that is free at x",
    r"[A-Z]+\d+[a-z]?, here|.*, far",
    r"[\d.]+ × \(n − 0\.5\) / \d+ for n",
    r"1, \d more for .*",
    r".*[gτ]",
    r"90 % of \(.*\), its own share of that .*",
    r"[\d, ]+: (\(k \+ 1/2\)|k) × 1000 / [\d.]+",
]


@pytest.mark.parametrize(
    ("formula", "true"),
    [
        ("7.36 / 120 × 1000 = 61.4", [False]),
        ("7.364 / 120 × 1000 = 61.4", [True]),
        ("9.74 + 19.01 = 28.755", [False]),
        ("6.1 × (1 + 0.00393 × 20) = 6.5", [False]),
        ("23 − 0.077 = 22.922, at least: the mass of 'marl' not counted", [False]),
        ("11 − (−20) = 31", [True]),
        ("11 − (20) = −9", [True]),
        ("10 % of 751 = 75.1, at least 30: 75.1; 75.1 + 20 = 95.1", [True, True]),
        ("20 + 266, 15 + 110 = 286, 125", [True, True]),
        ("20 + 266, 15 + 110 = 286, 126", [True, False]),
        ("25 × 22.5 + 25 × 6.5 = 725 mm² = 7.25 cm²", [True, True]),
        ("725 mm² = 72.5 cm²", [False]),
        ("|286 − 550| + |135 − 150| = 279", [True]),
        ("|286 − 550| + |135 − 150| = 249", [False]),
        ("1 / (2π √(4.2 H × 768.9 pF)) = 2801 Hz", [True]),
        ("1 / (2π √(3.6 H × 539.5 pF)) = 3612 Hz", [False]),
        ("20 log10(470 kΩ / (470 kΩ + 1 kΩ)) = −0.02 dB", [True]),
        ("1 / (2π × 1 kΩ × 75.6 pF) = 2110 kHz", [True]),
        ("25 kΩ || 1 MΩ = 24.4 kΩ", [True]),
        ("25 kΩ || 1 MΩ = 24.5 kΩ", [False]),
        ("2 on A2 + 2 on A3 + 1 on A5 = 5", [True]),
        ("8 − 7 in use − 0 reserved = 2", [False]),
        ("the highest of 50, 60 = 60", [True]),
        ("the least of 100, 50 = 100", [False]),
        ("the highest of (the highest of −20, −8) + 3, −20 = −5", [True]),
        ("the least of −20 + 12, −20 = −8", [False]),
        ("20 log10(50 / 100 × 10^(−20 / 20) + 50 / 100 × 10^(−8 / 20)) = −12.1", [True]),
        ("the highest of 460 × 0.1, 30 = 46", [True]),
        ("(the highest of 46 × 0.1, 30) + 60 = 90", [True]),
        ("(the highest of 46 × 0.1, 30) + 60 = 64.6", [False]),
        ("3.078 / 40 % = 7.7", [True]),
        ("20, as stated", []),
        ("6.00 EUR + 8.50 EUR = 14.50 EUR", [True]),
        ("6.00 EUR + 8.50 EUR = 14.00 EUR, without D4", [False]),
    ],
)
def test_an_equation_is_judged_by_its_printed_digits(formula: str, true: list[bool]) -> None:
    assert [each.true for each in equations(formula)] == true


def hanging(reasoning: Reasoning) -> list[str]:
    """Inputs whose reason there is not, or gives another value; reasons that lack a part."""
    wrong = []
    for reason in reasoning.by_name.values():
        if not (reason.value and reason.formula and reason.rule and reason.source):
            wrong.append(f"{reason.name} lacks a part")
        for each in reason.inputs:
            behind = reasoning.by_name.get(each.why)
            if each.why and (behind is None or (behind.value, behind.unit) != (each.value, each.unit)):
                wrong.append(f"{reason.name} says {each.value} {each.unit} of {each.why}")
    return wrong


@cache
def judged(formula: str) -> tuple[tuple[bool, ...], tuple[str, ...]]:
    """Whether each of its equations is true, and the sides that are neither arithmetic nor known to be told in words."""
    odd = (side for side in unread(formula) if not any(re.fullmatch(words, side) for words in IN_WORDS))
    return tuple(each.true for each in equations(formula)), tuple(odd)


@pytest.mark.parametrize("part", range(PARTS))
def test_no_formula_is_false_and_no_reason_hangs_in_the_air(part: int) -> None:
    """Of the cases of the checks too, which lack facts, join outlets, turn units: reasons stand on what is there."""
    wrong, count = [], 0
    for path in RIGS[part::PARTS]:
        disk = Disk(path, root=ROOT)
        results = results_if_sound(disk, disk.name)
        if results is None:
            continue
        reasoning = Reasoning(results)
        wrong += [f"{path.name}: {each}" for each in hanging(reasoning)]
        for name, reason in reasoning.by_name.items():
            true, not_read = judged(reason.formula)
            count += len(true)
            if not all(true) or not_read:
                wrong.append(f"{path.name} {name}: {reason.formula} {not_read}")
    assert wrong == []
    assert count > 2000
