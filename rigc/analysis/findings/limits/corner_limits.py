"""Cable behind outputs, windings and treadles -> the treble corners that guesses drive near their limit."""

from __future__ import annotations

from rigc.analysis.findings.near_limit import NearLimit, by_share, carried, guess_of, nearest_of_each, told_off
from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section import Section
from rigc.analysis.signal.loading.section_walk import OUTSIDE, PICKUP
from rigc.analysis.signal.loading.source_network import corner_hz
from rigc.facts.fact import Fact
from rigc.facts.guesses import IMPEDANCE_SPREAD, NEAR_SHARE
from rigc.facts.loading import TREBLE_CORNER_HZ
from rigc.traced.given import Stated
from rigc.traced.means import worked
from rigc.traced.revalued import facts_in, place_of
from rigc.traced.term import Term


def corners_near(loading: Loading) -> list[NearLimit]:
    """The treble corner of each driven section: the impedance that drives it, and the cable that it drives."""
    return nearest_of_each(
        near for section in loading.played if section.how not in (PICKUP, OUTSIDE) for near in _section_near(section)
    )


def _section_near(section: Section) -> list[NearLimit]:
    driver, cable = section.driver, section.known_pf
    if not isinstance(driver, Term) or driver <= 0 or cable <= 0:
        return []
    drives = facts_in(driver)

    def share(each: Stated) -> Fact:
        return IMPEDANCE_SPREAD if place_of(each.fact.span) in drives else NEAR_SHARE

    corner = worked("1 / (2π × {} × {})", corner_hz, driver, cable)
    return [
        NearLimit(
            guess_of(each),
            f"the treble corner behind '{section.source}'",
            float(corner) / 1000,
            TREBLE_CORNER_HZ.value / 1000,
            "kHz",
            told_off(share(each)),
        )
        for each in carried(corner, TREBLE_CORNER_HZ.value, lambda each: by_share(share(each))(each))
    ]
