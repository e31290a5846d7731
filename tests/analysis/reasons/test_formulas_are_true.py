"""Every formula of `rigc why`, reckoned by its own printed digits; and no reason lacks what it rests on.

Of the rigs that are cases of checks this is asked where they are compiled, in `tests/analysis/checks/test_checks.py`.
"""

from __future__ import annotations

import pytest
from cases import ROOT, results_if_sound
from untrue_reasons import judged
from worked_formula import equations

from rigc.files.disk import Disk

CASES = ROOT / "tests/analysis/checks/cases"
RIGS = [
    *sorted(ROOT.glob("examples/*/board.rig")),
    *(path for path in sorted((ROOT / "tests").rglob("*.rig")) if not path.is_relative_to(CASES)),
]
PARTS = 2


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


@pytest.mark.parametrize("part", range(PARTS))
def test_no_formula_is_false_and_no_reason_hangs_in_the_air(part: int) -> None:
    wrong, count = [], 0
    for path in RIGS[part::PARTS]:
        disk = Disk(path, root=ROOT)
        results = results_if_sound(disk, disk.name)
        if results is not None:
            made = judged(results)
            wrong += [f"{path.name}: {each}" for each in made.wrong]
            count += made.reckoned
    assert wrong == []
    assert count > 2000
