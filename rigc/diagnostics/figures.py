"""A figure -> the text in which a sheet, a finding and a reason write it alike: one function for each kind of figure."""

from __future__ import annotations

from math import floor, log10

from rigc.diagnostics.decimals import decimals, fixed, signed


def plain(value: float) -> str:
    """A stated figure, as short as it can be written: `9`, `37.5`, `−20`."""
    return signed(f"{value:g}")


def short(value: float) -> str:
    """A figure to a hundredth at most: `9`, `37.5`, `13.51`; for what comes out of a skew or a square root."""
    return f"{round(value, 2):g}"


def millimetres(tenths: int) -> str:
    """A length in tenths of a millimetre as text in mm, whole ones without decimals."""
    whole, part = divmod(tenths, 10)
    return f"{whole}.{part}" if part else str(whole)


def nearest_tenth(value_mm: float) -> str:
    """A length in mm to a tenth of a millimetre, halves away from the front and left."""
    return f"{floor(value_mm * 10 + 0.5 + 1e-9) / 10:.1f}".removesuffix(".0")


def share(percent: float | None) -> str:
    """A share in percent, with one decimal where that is not 0; `?` where not known."""
    return "?" if percent is None else decimals(percent)


def number(value: float | None, places: int = 1) -> str:
    """A computed figure, to so many decimals at most; `?` where not known."""
    return "?" if value is None else decimals(value, places)


def watts(value: float) -> str:
    """A power in W, with three decimals."""
    return f"{value:.3f}"


def kilograms(value: float) -> str:
    """A mass in kg, to the gram; what is left to a limit may be below nought."""
    return fixed(value, 3)


def metres_cut(tenths: int) -> str:
    """A length in tenths of a millimetre as text in m, exactly."""
    return f"{tenths / 10_000:.4f}".rstrip("0").rstrip(".")


def ohms(value: float, digits: int = 3) -> str:
    """An impedance as people say it, to three figures: `12 kΩ`, `1 MΩ`, `600 Ω`."""
    rounded = float(f"{value:.{digits}g}")
    size, unit = next((each for each in ((1e6, "MΩ"), (1e3, "kΩ")) if rounded >= each[0]), (1.0, "Ω"))
    figure = rounded / size
    return f"{figure:.0f} {unit}" if figure >= 10**digits else f"{figure:.{digits}g} {unit}"


def corner_khz(hertz: float, more: int = 0) -> str:
    """A corner in kHz to three figures: far above hearing, more of them would say nothing; `more` where a formula needs them."""
    size = 2 + more - floor(log10(hertz / 1000))
    return decimals(round(hertz / 1000, size), max(0, size))
