"""A country's code -> mains voltage, frequency and plug types in homes there, as two tables have it.

The first table is `residential_power` of the Python package fluids 1.3.1 (Copyright (C) 2016-2025 Caleb Bell and
contributors, MIT licence: `countries_licence.txt`), which took its data from an encyclopedia in 2017. Where a second table (IEC World Plugs, as a
public list had it; 49 countries compared) says otherwise, both are given and neither is chosen: ask the venue.
"""

from __future__ import annotations

from functools import lru_cache

from rigc.record import Record

FIRST = "fluids 1.3.1 (MIT), data of 2017"
SECOND = "IEC World Plugs"


class Mains(Record):
    """What sockets give: V and Hz (several where regions differ), and the plug types by letter."""

    volts: tuple[int, ...]
    hertz: tuple[int, ...]
    plugs: str

    def __str__(self) -> str:
        return f"{_joined(self.volts)} V {_joined(self.hertz)} Hz, plug {' '.join(self.plugs)}"


class Country(Record):
    """One country as the two tables have it; None where a table has no row for it, or was not compared."""

    first: Mains | None
    second: Mains | None

    @property
    def differ(self) -> bool:
        """Whether the tables say different things."""
        return self.first is not None and self.second is not None and self.first != self.second


def is_country(code: str) -> bool:
    """Whether a code is one of ISO 3166-1 (codes as the public-domain time zone database lists them), or EU or XK, in use beside it."""
    return code in CODES.split()


def country(code: str) -> Country | None:
    """The country of that code; None where neither table has it."""
    first, second = _table(_FIRST).get(code), _table(_SECOND).get(code)
    if first is not None and code in _AGREEING.split():
        second = first
    return None if first is None and second is None else Country(first, second)


@lru_cache(maxsize=2)
def _table(text: str) -> dict[str, Mains]:
    rows = (row.split() for row in text.replace("\n", " ").split(","))
    return {code: Mains(_numbers(volts), _numbers(hertz), plugs) for code, volts, hertz, plugs in rows}


def _numbers(text: str) -> tuple[int, ...]:
    return tuple(int(each) for each in text.split("+"))


def _joined(numbers: tuple[int, ...]) -> str:
    return " or ".join(str(each) for each in numbers)


_FIRST = """
AD 230 50 CF, AE 220 50 CDG, AF 220 50 CF, AG 230 60 AB, AI 110 60 A, AL 230 50 CF, AM 230 50 CF, AO 220 50 C,
AR 220 50 CI, AT 230 50 CF, AU 230 50 I, AZ 230 50 CF, BA 230 50 CF, BB 115 50 AB, BD 220 50 CDGK, BE 230 50 CE,
BF 220 50 CE, BG 230 50 CF, BH 230 50 G, BI 220 50 CE, BJ 220 50 CE, BM 120 60 AB, BN 240 50 G, BO 115 50 AC,
BR 220 60 CN, BS 120 60 AB, BT 230 50 CDFGM, BW 230 50 DGM, BY 230 50 CF, BZ 110 60 ABG, CA 120 60 AB,
CD 220 50 CDE, CF 220 50 CE, CG 230 50 CE, CH 230 50 CJ, CI 230 50 CE, CL 220 50 L, CM 220 50 CE, CN 220 50 AIC,
CO 110 60 AB, CR 120 60 AB, CU 110 60 ABC, CV 220 50 CF, CY 240 50 G, CZ 230 50 CE, DE 230 50 CF, DJ 220 50 CE,
DK 230 50 CEFK, DM 230 50 DG, DO 110 60 AB, DZ 230 50 CF, EC 120 60 AB, EE 230 50 CF, EG 220 50 CF, ER 230 50 CL,
ES 230 50 CF, ET 220 50 CEFL, FI 230 50 CF, FJ 240 50 I, FK 240 50 G, FM 120 60 AB, FO 230 50 CEFK, FR 230 50 CE,
GA 220 50 C, GB 230 50 G, GD 230 50 G, GG 230 50 G, GH 230 50 DG, GI 240 50 CG, GM 230 50 G, GN 220 50 CFK,
GQ 220 50 CE, GR 230 50 CF, GT 120 60 AB, GU 110 60 AB, GW 220 50 C, GY 110 60 ABDG, HN 110 60 AB, HR 230 50 CF,
HT 110 60 AB, HU 230 50 CF, ID 230 50 CFG, IE 230 50 G, IL 230 50 CHM, IM 240 50 G, IN 230 50 CDM, IQ 230 50 CDG,
IR 220 50 CF, IS 230 50 CF, IT 230 50 CFL, JE 230 50 G, JM 110 50 AB, JO 230 50 BCDFGJ, JP 100 50 AB,
KE 240 50 G, KG 220 50 CF, KH 230 50 ACG, KM 220 50 CE, KN 110 60 ABDG, KP 110 60 ACF, KR 220 60 CF,
KW 240 50 CG, KY 120 60 AB, KZ 220 50 CF, LA 230 50 CEF, LB 220 50 ABCDG, LC 240 50 G, LI 230 50 CJ,
LK 230 50 DGM, LR 120 60 ABCEF, LS 220 50 M, LT 230 50 CF, LU 230 50 CF, LV 230 50 CF, LY 127 50 CDFL,
MA 220 50 CE, MC 230 50 CDEF, MD 220 50 CF, ME 230 50 CF, MG 220 50 CDEJK, MK 230 50 CF, ML 220 50 CE,
MM 230 50 CDFG, MN 220 50 CE, MR 220 50 C, MS 120 60 AB, MU 230 50 CG, MV 230 50 DGJKL, MW 230 50 G,
MX 127 60 AB, MY 230 50 CGM, MZ 220 50 CFM, NA 220 50 DM, NE 220 50 ABCDEF, NG 240 50 DG, NI 120 60 AB,
NL 230 50 CF, NO 230 50 CF, NP 230 50 CDM, NR 240 50 I, NZ 230 50 I, OM 240 50 CG, PA 120 60 AB, PE 220 60 ABC,
PG 240 50 I, PH 220 60 AB, PK 230 50 CDGM, PL 230 50 CE, PT 230 50 CF, PW 120 60 AB, PY 220 50 C, QA 240 50 DG,
RO 230 50 CF, RS 230 50 CF, RU 230 50 CF, RW 230 50 CJ, SA 220 60 ABG, SB 220 50 IG, SC 240 50 G, SD 230 50 CD,
SE 230 50 CF, SG 230 50 CGM, SH 240 50 G, SI 230 50 CF, SK 230 50 CE, SL 230 50 DG, SM 230 50 CFL,
SN 230 50 CDEK, SO 220 50 C, SR 127 60 CF, ST 220 50 CF, SV 115 60 AB, SY 220 50 CEL, SZ 230 50 M,
TD 220 50 CDEF, TG 220 50 C, TH 220 50 ABCF, TJ 220 50 CFI, TL 220 50 CEFI, TM 220 50 BCF, TN 230 50 CE,
TO 240 50 I, TR 230 50 CF, TT 115 60 AB, TV 220 50 I, TW 110 60 AB, TZ 230 50 DG, UA 230 50 CF, UG 240 50 G,
US 120 60 AB, UY 230 50 CFIL, UZ 220 50 CI, VC 230 50 CEGIK, VE 120 60 AB, VG 110 60 AB, VN 220 50 ACG,
VU 220 50 CGI, WS 230 50 I, XK 230 50 CF, YE 230 50 ADG, ZA 230 50 CFMN, ZM 230 50 CDG, ZW 220 50 DG
"""
_SECOND = """
BR 127+220 60 CN, CL 220 50 CL, HK 220 50 DG, ID 110+220 50 CF, JP 100 50+60 AB, MY 240 50 ACGM, PH 220 60 ABC,
TR 220 50 CF, ZA 230 50 CDMN
"""
_AGREEING = """
AE AR AT AU BE CA CH CN CO CR CZ DE DK ES FI FR GB GR HU IE IL IN IS IT KR LU MX NL NO NZ PE PL PT SE SG SK TH TW US UY
"""
CODES = """
AD AE AF AG AI AL AM AO AQ AR AS AT AU AW AX AZ BA BB BD BE BF BG BH BI BJ BL BM BN BO BQ BR BS BT BV BW BY BZ CA CC
CD CF CG CH CI CK CL CM CN CO CR CU CV CW CX CY CZ DE DJ DK DM DO DZ EC EE EG EH ER ES ET EU FI FJ FK FM FO FR GA GB
GD GE GF GG GH GI GL GM GN GP GQ GR GS GT GU GW GY HK HM HN HR HT HU ID IE IL IM IN IO IQ IR IS IT JE JM JO JP KE KG
KH KI KM KN KP KR KW KY KZ LA LB LC LI LK LR LS LT LU LV LY MA MC MD ME MF MG MH MK ML MM MN MO MP MQ MR MS MT MU MV
MW MX MY MZ NA NC NE NF NG NI NL NO NP NR NU NZ OM PA PE PF PG PH PK PL PM PN PR PS PT PW PY QA RE RO RS RU RW SA SB
SC SD SE SG SH SI SJ SK SL SM SN SO SR SS ST SV SX SY SZ TC TD TF TG TH TJ TK TL TM TN TO TR TT TV TW TZ UA UG UM US
UY UZ VA VC VE VG VI VN VU WF WS XK YE YT ZA ZM ZW
"""
