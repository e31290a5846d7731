"""Weight: what one person lifts, and how hard a mass presses."""

from __future__ import annotations

from rigc.facts.fact import Fact

ONE_LIFTER_KG = Fact(
    23, "kg", "load constant of the lifting equation: the most that one person lifts", "NIOSH publication 94-110"
)
GRAVITY_M_PER_S2 = Fact(9.81, "m/s²", "acceleration of free fall, rounded from 9.80665", "CGPM 1901, from memory")
LIGHTEST_BODY = Fact(
    0.05, "kg/l", "a body of rigid foam", "rigid insulating foams weigh 20 to 50 g a litre; from memory"
)
HEAVIEST_BODY = Fact(8, "kg/l", "a body of solid steel", "steel weighs 7.85 kg a litre; from memory")
