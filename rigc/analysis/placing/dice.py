"""Dice that fall alike on every machine and in every version: a linear congruential generator."""

from __future__ import annotations

_FACTOR, _ADDED, _MASK = 6364136223846793005, 1442695040888963407, (1 << 64) - 1  # constants: Knuth, MMIX, from memory


class Dice:
    """Numbers that look thrown; the same seed gives the same ones for ever."""

    def __init__(self, seed: int) -> None:
        self._state = seed & _MASK
        self.below(2)

    def below(self, sides: int) -> int:
        """A number from 0 up to, not including, `sides`."""
        self._state = (self._state * _FACTOR + _ADDED) & _MASK
        return (self._state >> 33) * sides >> 31
