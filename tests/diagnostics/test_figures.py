"""Figures as text: what a sheet prints, at the edges of rounding."""

from __future__ import annotations

import pytest

from rigc.diagnostics import figures
from rigc.diagnostics.decimals import decimals, fixed


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (figures.plain(37.50), "37.5"),
        (figures.plain(9.0), "9"),
        (figures.millimetres(751), "75.1"),
        (figures.millimetres(7510), "751"),
        (figures.nearest_tenth(18.75), "18.8"),
        (figures.nearest_tenth(56.25), "56.3"),
        (figures.nearest_tenth(23.0), "23"),
        (figures.share(51.3), "51.3"),
        (figures.share(30.0), "30"),
        (figures.share(None), "?"),
        (figures.watts(3.078), "3.078"),
        (figures.kilograms(5.794), "5.794"),
        (figures.metres_cut(13_240), "1.324"),
        (figures.plain(-20.0), "−20"),
        (figures.kilograms(-1.2584), "−1.258"),
        (figures.kilograms(-1e-12), "0.000"),
        (figures.ohms(999.4), "999 Ω"),
        (figures.ohms(999.6), "1 kΩ"),
        (figures.ohms(12_345), "12.3 kΩ"),
        (figures.ohms(999_900), "1 MΩ"),
        (figures.ohms(1e9), "1000 MΩ"),
        (decimals(-0.834, 2), "−0.83"),
        (decimals(-0.001, 2), "0"),
        (decimals(7.695, 2), "7.7"),  # halves away from nought, as on paper: 3.078 / 0.4
        (decimals(-20.0), "−20"),
        (fixed(-73.44), "−73.4"),
    ],
)
def test_written(text: str, expected: str) -> None:
    assert text == expected
