"""unknown-name: a code of a country is one of ISO 3166-1."""

from __future__ import annotations

import re

from rigc.facts.countries import is_country
from rigc.model.resolve.context import Context
from rigc.model.scope import UNKNOWN, corrected
from rigc.syntax.nodes import Word
from rigc.syntax.slips.said_codes import code_of


def country(context: Context, code: Word) -> str | None:
    """The code as stated; None after a finding."""
    if is_country(code.text):
        return code.text
    lettered = re.fullmatch(r"[A-Z]{2}", code.text) is not None
    near = code_of(code.text)
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
