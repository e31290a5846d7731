"""unknown-name: a code of a country is one of ISO 3166-1."""

from __future__ import annotations

import re

from rigc.facts.countries import is_country
from rigc.model.resolve.context import Context
from rigc.model.scope import UNKNOWN, corrected
from rigc.syntax.nodes import Word

_LONG_CODES = {
    "UK": "GB", "EN": "GB", "USA": "US", "GBR": "GB", "GER": "DE", "DEU": "DE", "FRA": "FR", "JPN": "JP", "ITA": "IT", "ESP": "ES", "NLD": "NL",
    "BEL": "BE", "CHE": "CH", "SUI": "CH", "AUT": "AT", "POL": "PL", "PRT": "PT", "IRL": "IE", "DNK": "DK", "DEN": "DK", "NOR": "NO", "SWE": "SE",
    "FIN": "FI", "CZE": "CZ", "CAN": "CA", "MEX": "MX", "BRA": "BR", "ARG": "AR", "AUS": "AU", "NZL": "NZ", "KOR": "KR", "CHN": "CN",
}  # fmt: skip
"""What is typed for countries of many tours: their codes of three letters (ISO 3166-1 alpha-3, from memory), and customary ones."""


def country(context: Context, code: Word) -> str | None:
    """The code as stated; None after a finding."""
    if is_country(code.text):
        return code.text
    lettered = re.fullmatch(r"[A-Z]{2}", code.text) is not None
    near = _LONG_CODES.get(code.text, "")
    context.report(
        UNKNOWN.at(
            code.span,
            f"no country has the code '{code.text}'" if lettered else f"'{code.text}' is no country code",
            subject=(code.text,),
            label=f"did you mean '{near}'?" if near else "two capital letters (ISO 3166-1)",
            help="" if near else "write for example JP",
            mends=corrected(code, near) if near else (),
        )
    )
    return None
