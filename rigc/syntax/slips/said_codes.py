"""What people write for a country or a colour -> its code: codes of three letters (ISO 3166-1 alpha-3, from memory), customary ones and English
names of countries (ISO 3166-1); names of colours (IEC 60757, from memory)."""

from __future__ import annotations

LONG_CODES = {
    "UK": "GB", "EN": "GB", "USA": "US", "GBR": "GB", "GER": "DE", "DEU": "DE", "FRA": "FR", "JPN": "JP", "ITA": "IT", "ESP": "ES", "NLD": "NL",
    "BEL": "BE", "CHE": "CH", "SUI": "CH", "AUT": "AT", "POL": "PL", "PRT": "PT", "IRL": "IE", "DNK": "DK", "DEN": "DK", "NOR": "NO", "SWE": "SE",
    "FIN": "FI", "CZE": "CZ", "CAN": "CA", "MEX": "MX", "BRA": "BR", "ARG": "AR", "AUS": "AU", "NZL": "NZ", "KOR": "KR", "CHN": "CN",
}  # fmt: skip
_NAMES = {
    "argentina": "AR", "australia": "AU", "austria": "AT", "belgium": "BE", "brazil": "BR", "britain": "GB", "canada": "CA", "china": "CN", "czechia": "CZ",
    "denmark": "DK", "england": "GB", "finland": "FI", "france": "FR", "germany": "DE", "greece": "GR", "hungary": "HU", "india": "IN", "ireland": "IE",
    "italy": "IT", "japan": "JP", "korea": "KR", "mexico": "MX", "netherlands": "NL", "holland": "NL", "norway": "NO", "poland": "PL", "portugal": "PT",
    "scotland": "GB", "spain": "ES", "sweden": "SE", "switzerland": "CH", "taiwan": "TW", "turkey": "TR", "ukraine": "UA", "wales": "GB", "america": "US",
}  # fmt: skip


COLOURS = {
    "black": "BK", "brown": "BN", "red": "RD", "orange": "OG", "yellow": "YE", "green": "GN", "blue": "BU", "violet": "VT",
    "purple": "VT", "grey": "GY", "gray": "GY", "white": "WH", "pink": "PK", "gold": "GD", "turquoise": "TQ", "silver": "SR",
}  # fmt: skip


def code_of(said: str) -> str:
    """The code of a country as people write it; empty where it is none of these."""
    return LONG_CODES.get(said.upper(), "") or _NAMES.get(said.lower(), "")
