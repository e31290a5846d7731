"""How long a lead is made: `A14.slack`, `A14.finished`, `A14.cut`, `A14.premade`, `A14.supplied`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.cables.lead_ends import tenths
from rigc.analysis.cables.lead_status import comes_premade, status
from rigc.analysis.computations.cable_lengths import CableLengths, Length, rule_slack, slack_share
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.reasons.inputs import derived, known, ours, placed, stated
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.figures import millimetres, plain
from rigc.facts.leads import LEAST_SLACK_MM, ROUNDED_TO_MM, SHORTEST_MM, SLACK_SHARE
from rigc.model.rig import Rig
from rigc.traced.reason import ARITHMETIC, Input, Reason

_PRACTICE = "common practice, no source"


def lead_length(rig: Rig, leads: Leads, lengths: CableLengths) -> Iterator[Reason]:
    """Five reasons for each lead that has a route."""
    for lead in leads.all:
        length = lengths.lengths.get(lead.mark)
        if length is not None:
            yield _slack(lead, length)
            yield _finished(length)
            yield _cut(rig, lead, length)
            yield _premade(rig, lead, length)
            yield _supplied(rig, lead, length)


def _slack(lead: Lead, length: Length) -> Reason:
    least, percent = LEAST_SLACK_MM[lead.signal], plain(100 * SLACK_SHARE.value)
    share = slack_share(length.route)
    exact = decimals(SLACK_SHARE.value * length.route / 10, 2)
    up = "" if exact == millimetres(share) else f" → {millimetres(share)}"
    told = f"{percent} % of {millimetres(length.route)} = {exact}{up}"
    rule = rule_slack(lead.signal, length.route)
    formula = f"{told}, {'at least' if share >= tenths(least.value) else 'less than'} {plain(least.value)}: {millimetres(rule)}"
    if lead.slack_mm is not None:
        formula += f"; {millimetres(rule)} + {plain(lead.slack_mm.value)} = {millimetres(length.slack)}"
    return Reason(
        f"{lead.mark}.slack",
        millimetres(length.slack),
        "mm",
        formula,
        (_route(length), ours(SLACK_SHARE), ours(least), *known("more slack for this lead", lead.slack_mm)),
        f"the larger of {percent} % of the route and the least slack of the class, and what the source adds",
        _PRACTICE,
    )


def _finished(length: Length) -> Reason:
    total, step = length.route + length.slack, plain(ROUNDED_TO_MM.value)
    value = millimetres(length.finished)
    formula = f"{millimetres(length.route)} + {millimetres(length.slack)} = {millimetres(total)} → {value}"
    inputs: tuple[Input, ...] = (_route(length), _slack_of(length), ours(ROUNDED_TO_MM))
    shortest = tenths(SHORTEST_MM.value)
    if length.finished == shortest > total:
        formula, inputs = f"{formula}, the shortest that can be made", (*inputs, ours(SHORTEST_MM))
    return Reason(
        f"{length.mark}.finished",
        value,
        "mm",
        formula,
        inputs,
        f"finished = route + slack, rounded up to the next {step} mm, at least {plain(SHORTEST_MM.value)} mm",
        _PRACTICE,
    )


def _cut(rig: Rig, lead: Lead, length: Length) -> Reason:
    name, rule = f"{lead.mark}.cut", "cut = finished + what each plug takes in (cut-in)"
    finished = derived("finished", millimetres(length.finished), "mm", f"{lead.mark}.finished")
    if length.cut is None:
        return _not_cut(rig, lead, name, rule)
    plugs = [rig.stock.plugs[plug] for plug in lead.plugs or ()]
    taken = [plain(plug.cut_in_mm.value) for plug in plugs if plug.cut_in_mm is not None]
    inputs = tuple(
        stated(f"cut-in of {plug.name} (end {end})", plug.cut_in_mm) for end, plug in zip("ab", plugs, strict=True)
    )
    value = millimetres(length.cut)
    formula = f"{' + '.join((finished.value, *taken))} = {value}"
    return Reason(name, value, "mm", formula, (finished, *inputs), rule, ARITHMETIC)


def _not_cut(rig: Rig, lead: Lead, name: str, rule: str) -> Reason:
    if lead.captive is not None:
        inputs = known(f"captive lead at {lead.captive}", lead.captive_mm)
        return Reason(name, "captive", "", f"it grows out of {lead.captive}: nothing is cut", inputs, rule, ARITHMETIC)
    if lead.premade or comes_premade(rig, lead):
        plugs = [rig.stock.plugs[plug] for plug in dict.fromkeys(lead.ends) if plug is not None]
        bare = tuple(
            placed(f"plug {plug.name}", "no cut-in", plug.declared) for plug in plugs if plug.cut_in_mm is None
        )
        inputs = bare or (placed(lead.mark, "premade", lead.span),)
        return Reason(name, "premade", "", "it comes ready: nothing is cut", inputs, rule, "the source states it")
    inputs = (placed(lead.mark, f"{lead.start} -> {lead.end}", lead.span),)
    return Reason(name, "not known", "mm", "a plug kind is not known", inputs, rule, ARITHMETIC)


def _premade(rig: Rig, lead: Lead, length: Length) -> Reason:
    signal = rig.stock.premade_list(lead.signal)
    offered = rig.stock.premade_mm.get(signal, ())
    least = LEAST_SLACK_MM[lead.signal]
    terms = [millimetres(length.route), plain(least.value), *(plain(each.value) for each in (lead.slack_mm,) if each)]
    needed = f"{' + '.join(terms)} = {millimetres(length.least)}"
    soldered = any(plug is not None and rig.stock.plugs[plug].soldered for plug in lead.ends)
    if length.premade is not None:
        value, formula = millimetres(length.premade), f"{needed} → {millimetres(length.premade)}"
    elif not length.premade_listed:
        value, formula = "not known", f"{needed}; the stock has no list of premade {lead.signal} leads"
    elif lead.captive is not None or soldered:
        value, formula = "none", f"an end is {'captive' if lead.captive is not None else 'soldered'}"
    else:
        value, formula = "none", f"{needed}, longer than any in stock"
    stock = placed(f"premade {signal} leads in stock", ", ".join(map(plain, sorted(offered))) or "no list", None, "mm")
    inputs = (_route(length), ours(least), *known("more slack for this lead", lead.slack_mm), stock)
    rule = "the shortest stock length that is at least the route and the least slack"
    return Reason(f"{lead.mark}.premade", value, "mm" if value != "none" else "", formula, inputs, rule, _PRACTICE)


def _supplied(rig: Rig, lead: Lead, length: Length) -> Reason:
    value, how = millimetres(length.supplied), status(rig, lead)
    one: Input = derived("finished", millimetres(length.finished), "mm", f"{lead.mark}.finished")
    told = (
        "it is made here" if how == "make" else "it is bought; no stock length is long enough, so it is made to order"
    )
    if lead.existing_mm is not None:
        one, told = derived("it is there", plain(lead.existing_mm.value), "mm", f"{lead.mark}.length"), "it exists"
    elif how == "buy" and length.premade is not None:
        one, told = derived("premade", millimetres(length.premade), "mm", f"{lead.mark}.premade"), "it is bought"
    rule = "the length of a lead that exists, else the next premade one where it is bought, else the finished one"
    return Reason(f"{lead.mark}.supplied", value, "mm", f"{told}: {one.value}", (one,), rule, _PRACTICE)


def _route(length: Length) -> Input:
    return derived("route", millimetres(length.route), "mm", f"{length.mark}.route")


def _slack_of(length: Length) -> Input:
    return derived("slack", millimetres(length.slack), "mm", f"{length.mark}.slack")


REASONS = lead_length
