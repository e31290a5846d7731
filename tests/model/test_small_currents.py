"""What a unit draws is told where it is less than any such unit draws: just beyond the limit, silent on it and inside. Rigs are invented."""

from __future__ import annotations

import pytest
from written import compiled_written

UNIT = """
unit tern {{
  {flag}
  input in ts 1 Mohm
  output out ts 1 kohm
  inlet dc barrel 5.5 x 2.1 mm
  needs 9 V dc
  polarity centre-negative
  draws {draws}
}}
"""


def told(flag: str, draws: str) -> list[str]:
    found = compiled_written(UNIT.format(flag=flag, draws=draws)).findings
    return [each.message for each in found if each.kind.name == "wrong-quantity"]


@pytest.mark.parametrize(
    ("flag", "draws", "said"),
    [
        ("digital", "4.9 mA", ["'tern' draws 4.9 mA: did you mean 4.9 A?"]),
        ("digital", "5 mA", []),
        ("digital", "5.1 mA", []),
        ("analogue", "0.29 mA", ["'tern' draws 0.29 mA: did you mean 0.29 A?"]),
        ("analogue", "0.3 mA", []),
        ("analogue", "0.31 mA", []),
        ("digital", "0.0049 A", ["'tern' draws 0.0049 A"]),  # 4.9 mA, and no other sign makes it one of a digital unit
    ],
)
def test_less_than_any_such_unit_draws(flag: str, draws: str, said: list[str]) -> None:
    assert told(flag, draws) == said
