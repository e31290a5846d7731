"""Volts, decibels and pads: the one place where a level changes its unit."""

from __future__ import annotations

from rigc.facts.levels import ZERO_DBU_V
from rigc.traced.means import level_of


def dbu(volts: float) -> float:
    """An r.m.s. voltage in dBu; `volts` is above 0."""
    return decibels(volts / ZERO_DBU_V.value)


def volts(level_dbu: float) -> float:
    """A level in dBu as an r.m.s. voltage in V."""
    return ZERO_DBU_V.value * ratio(level_dbu)


def decibels(voltage_ratio: float) -> float:
    """A ratio of voltages in dB; minus infinity where nothing is left."""
    return level_of(voltage_ratio)


def ratio(level_db: float) -> float:
    """A number of dB as a ratio of voltages."""
    return float(10 ** (level_db / 20))


def pad_ratio(loss_db: float) -> float:
    """R1 / R2 of the pad that takes away that many dB."""
    return ratio(loss_db) - 1
