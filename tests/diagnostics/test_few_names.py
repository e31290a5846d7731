"""How many names a finding lists: all of a dozen, of more the first eight and how many more there are."""

from __future__ import annotations

import pytest

from rigc.diagnostics.wording import listed_few


@pytest.mark.parametrize(
    ("count", "said"),
    [
        (2, "'u1' and 'u2'"),
        (12, "'u1', 'u2', 'u3', 'u4', 'u5', 'u6', 'u7', 'u8', 'u9', 'u10', 'u11' and 'u12'"),
        (13, "'u1', 'u2', 'u3', 'u4', 'u5', 'u6', 'u7', 'u8' and 5 more"),
    ],
)
def test_names_are_listed_as_far_as_a_line_holds_them(count: int, said: str) -> None:
    assert listed_few(f"u{number}" for number in range(1, count + 1)) == said
