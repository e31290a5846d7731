"""Resistance of conductors against published tables and worked problems. `-` in a source: the number is from memory."""

from __future__ import annotations

import pytest
from small_rigs import block, results_of

from rigc.analysis.power.conductor import Conductor, conductor, warmed
from rigc.model.stock import Cable


def cable(*lines: str) -> Cable:
    return results_of(block("cable", "one", "carries dc", *lines)).rig.stock.cables["one"]


def wire(*lines: str) -> Conductor:
    found = conductor(cable(*lines))
    assert found is not None
    return found


# A public wire table of ohm per 1000 ft of solid copper (mils as in ASTM B258), and ohm/km by the ASTM B258
# diameter with 1/58 ohm mm²/m (IEC 60028, from memory); tolerance 0.2 %.
@pytest.mark.parametrize(
    ("gauge", "ohm_per_km", "ohm_per_1000_ft"),
    [
        (18, 20.948, 6.385),
        (20, 33.309, 10.15),
        (22, 52.963, 16.14),
        (24, 84.215, 25.67),
        (26, 133.91, 40.81),
        (28, 212.92, 64.90),
    ],
)
def test_wire_gauges(gauge: int, ohm_per_km: float, ohm_per_1000_ft: float) -> None:
    ohm = wire(f"conductor {gauge} AWG").ohm_per_m
    assert ohm * 1000 == pytest.approx(ohm_per_km, rel=2e-3)
    assert ohm * 304.8 == pytest.approx(ohm_per_1000_ft, rel=2e-3)


def test_24_awg_exactly() -> None:
    """d = 0.127 × 92^(12/39) = 0.5105592 mm, A = 0.2047303 mm², R = 0.0842151 ohm/m (ASTM B258 formula, from memory)."""
    one = cable("conductor 24 AWG")
    assert one.area_mm2 is not None
    assert one.area_mm2.value == pytest.approx(0.2047303, rel=1e-6)
    found = conductor(one)
    assert found is not None
    assert found.ohm_per_m == pytest.approx(0.0842151, rel=1e-5)


# IEC 60228: tables 1 and 2 (classes 1, 2), table 3 (class 5, plain and tinned), maxima in ohm/km at 20 °C; exact.
@pytest.mark.parametrize(
    ("strand", "rows"),
    [
        ("solid", {0.5: 36.0, 0.75: 24.5, 1.0: 18.1, 1.5: 12.1}),
        ("stranded", {0.5: 39.0, 0.75: 26.0, 1.0: 19.5, 1.5: 13.3}),
        ("", {0.5: 39.0, 0.75: 26.0, 1.0: 19.5, 1.5: 13.3}),
        ("tinned", {0.5: 40.1, 0.75: 26.7, 1.0: 20.0, 1.5: 13.7}),
    ],
)
def test_iec_60228(strand: str, rows: dict[float, float]) -> None:
    for area, ohm in rows.items():
        found = wire(f"conductor {area} mm2 {strand}".rstrip())
        assert found.ohm_per_m * 1000 == pytest.approx(ohm, rel=1e-12)
        assert found.source.startswith("IEC 60228")


@pytest.mark.parametrize(("area", "ohm"), [(0.22, 84.4), (0.35, 54.4)])
def test_thin_areas(area: float, ohm: float) -> None:
    """ISO 6722-1 (from memory): not in IEC 60228, which starts at 0.5; within 10 % of plain copper (78.4 and 49.3)."""
    found = wire(f"conductor {area} mm2 stranded")
    assert found.ohm_per_m * 1000 == pytest.approx(ohm, rel=0.03)
    assert "memory" in found.source
    assert 1 < found.ohm_per_m / (1 / 58 / area) < 1.11


def test_an_area_of_no_table() -> None:
    """0.3 mm²: 1/58/0.3 = 57.47 ohm/km, and it says so."""
    found = wire("conductor 0.3 mm2")
    assert found.ohm_per_m * 1000 == pytest.approx(57.471, abs=1e-3)
    assert "not in the tables" in found.source


def test_no_conductor() -> None:
    assert conductor(cable("outer 3 mm")) is None


def test_drop_of_a_lead() -> None:
    """0.5 mm² class 5, 2 m one way, 2 A: 0.156 ohm there and back, 0.3120 V; at 40 °C by 0.00393 /K 0.33652 V (rel 1e-4)."""
    ohm = 2 * 2 * wire("conductor 0.5 mm2").ohm_per_m
    assert ohm == pytest.approx(0.156, rel=1e-9)
    assert ohm * 2 == pytest.approx(0.3120, rel=1e-4)
    assert warmed(ohm * 2, 40) == pytest.approx(0.33652, rel=1e-4)
    assert (ohm * 2 / 9 * 100, warmed(ohm * 2, 40) / 9 * 100) == pytest.approx((3.47, 3.74), abs=5e-3)


def test_drop_of_a_short_lead() -> None:
    """24 AWG, 0.6 m one way, 0.300 A: 0.030317 V (rel 1e-4)."""
    assert 2 * 0.6 * wire("conductor 24 AWG").ohm_per_m * 0.3 == pytest.approx(0.030317, rel=1e-4)


def test_temperature() -> None:
    """A published worked problem (toughstem.com, 319): 28.2 ohm at 24.5 °C are 33.248 at 68.8, α = 0.004041; and from a
    textbook (Lessons In Electric Circuits I, 12, from memory): 15 ohm at 20 °C are 15.909 at 35."""
    assert warmed(28.2, 68.8, 0.004041, at=24.5) == pytest.approx(33.248, abs=1e-3)
    assert warmed(15, 35, 0.004041) == pytest.approx(15.909, abs=1e-3)


# IEC 60228 annex, factors by which a reading is multiplied to get that at 20 °C, as printed on a maker's page; 0.3 %.
@pytest.mark.parametrize(("celsius", "factor"), [(5, 1.064), (30, 0.962), (50, 0.893)])
def test_temperature_factors(celsius: float, factor: float) -> None:
    assert 1 / warmed(1.0, celsius) == pytest.approx(factor, rel=3e-3)
