"""The table of countries against two outside datasets: 49 rows of one, all rows of the other."""

from __future__ import annotations

from itertools import product
from string import ascii_uppercase

import fluids.pump

from rigc.facts.countries import Country, Mains, country, is_country

# IEC World Plugs, as a public list had it (V / Hz / plug letters); where several, regions of the country differ.
WORLD_PLUGS = """
AE 220/50 CDG, AR 220/50 CI, AT 230/50 CF, AU 230/50 I, BE 230/50 CE, BR 127+220/60 CN, CA 120/60 AB, CH 230/50 CJ,
CL 220/50 CL, CN 220/50 ACI, CO 110/60 AB, CR 120/60 AB, CZ 230/50 CE, DE 230/50 CF, DK 230/50 CEFK, ES 230/50 CF,
FI 230/50 CF, FR 230/50 CE, GB 230/50 G, GR 230/50 CF, HK 220/50 DG, HU 230/50 CF, ID 110+220/50 CF, IE 230/50 G,
IL 230/50 CHM, IN 230/50 CDM, IS 230/50 CF, IT 230/50 CFL, JP 100/50+60 AB, KR 220/60 CF, LU 230/50 CF, MX 127/60 AB,
MY 240/50 ACGM, NL 230/50 CF, NO 230/50 CF, NZ 230/50 I, PE 220/60 ABC, PH 220/60 ABC, PL 230/50 CE, PT 230/50 CF,
SE 230/50 CF, SG 230/50 CGM, SK 230/50 CE, TH 220/50 ABCF, TR 220/50 CF, TW 110/60 AB, US 120/60 AB, UY 230/50 CFIL,
ZA 230/50 CDMN
"""
ROWS = {row.split()[0]: row.split()[1:] for row in WORLD_PLUGS.replace("\n", " ").split(",")}
DIFFER = {"BR", "CL", "HK", "ID", "JP", "MY", "PH", "TR", "ZA"}
FLUIDS = {code.upper(): row for code, row in fluids.pump.residential_power.items()}


def plain(mains: Mains) -> tuple[set[int], set[int], set[str]]:
    """A row without any order."""
    return set(mains.volts), set(mains.hertz), set(mains.plugs)


LISTED = {code for code in map("".join, product(ascii_uppercase, repeat=2)) if country(code) is not None}
"""The codes that at least one of the tables has."""


def row_of(code: str) -> Country:
    found = country(code)
    assert found is not None
    return found


def test_there_are_forty_nine() -> None:
    assert len(ROWS) == 49
    assert set(ROWS) <= LISTED


def test_second_table_against_world_plugs() -> None:
    """What is given as the second table is that table's row."""
    for code, (figures, plugs) in ROWS.items():
        volts, hertz = ({int(each) for each in part.split("+")} for part in figures.split("/"))
        second = row_of(code).second
        assert second is not None, code
        assert plain(second) == (volts, hertz, set(plugs)), code


def test_first_table_against_fluids() -> None:
    """What is given as the first table is the row of the package from which it is taken (fluids, MIT)."""
    for code, row in FLUIDS.items():
        first = row_of(code).first
        assert first is not None, code
        assert plain(first) == ({row.voltage}, {row.freq}, set(row.plugs)), code


def test_the_first_table_has_no_rows_of_its_own() -> None:
    """HK stands in the second only."""
    assert {*FLUIDS, "HK"} == LISTED
    assert row_of("HK").first is None


def test_where_the_tables_differ() -> None:
    """40 of 49 agree; both rows of the others are kept."""
    told = {code for code in ROWS if row_of(code).differ or row_of(code).first is None}
    assert told == DIFFER
    assert str(row_of("JP").first) == "100 V 50 Hz, plug A B"
    assert str(row_of("JP").second) == "100 V 50 or 60 Hz, plug A B"


def test_codes() -> None:
    """Every row's code is a country's; what no country has is none."""
    assert all(is_country(code) for code in LISTED)
    assert is_country("EU")
    assert not any(is_country(code) for code in ("UK", "QX", "JPN", "jp", "", "J"))
    assert country("QX") is None
    assert country("AQ") is None, "a country's code without a row"
