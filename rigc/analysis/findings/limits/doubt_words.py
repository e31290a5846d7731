"""How a number stands to its limit, and a fact behind it, in words."""

from __future__ import annotations

from rigc.analysis.findings.limits.judged import Standing
from rigc.diagnostics.decimals import decimals
from rigc.traced.given import Stated


def in_words(each: Standing) -> str:
    """A limit in doubt: `the load of mill.o1 is 68 mA, within its limit of 80 mA, and may be 88.4 mA, over it`."""
    judged = each.judged
    value, limit, edge, limit_edge = (
        f"{decimals(float(one), 3)} {judged.unit}" for one in (judged.value, judged.limit, each.edge, each.limit_edge)
    )
    beyond, within = ("over", "within") if judged.at_most else ("below", "above")
    stands, may = (beyond, within) if each.broken else (within, beyond)
    told = f"{judged.what} is {value}, {stands} its limit of {limit}"
    at_most = "" if each.exact else "at most "
    if each.edge == float(judged.value):
        return f"{told}, which may be {at_most}{limit_edge}"
    if each.limit_edge == float(judged.limit):
        return f"{told}, and may be {at_most}{edge}, {may} it"
    return f"{told}, and may be {at_most}{edge} where that is {limit_edge}"


def owner_and_words(fact: Stated) -> tuple[str, str]:
    """Whose a fact is and what it is, from the name under which it came into a number: `gain of marl`, `fen.in (stage)`,
    `what combo.in takes`, `marl mass`."""
    label = fact.label.partition(" (")[0]
    for begin, said in (("what current ", "the current that "), ("how high ", "how high "), ("what ", "what ")):
        if label.startswith(begin):
            owner, _, rest = label.removeprefix(begin).partition(" ")
            return owner.partition(".")[0], f"{said}'{owner}' {rest}"
    if " of " in label:
        what, _, owner = label.rpartition(" of ")
        owner = owner.strip("'")
        return owner.partition(".")[0], f"{what if what.startswith('the ') else f'the {what}'} of '{owner}'"
    owner, _, what = label.partition(" ")
    return owner.partition(".")[0], f"the {what or 'impedance'} of '{owner}'"
