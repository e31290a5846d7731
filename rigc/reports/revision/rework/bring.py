"""Rework -> the parts to bring, each with a box to tick when it is packed."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.mounting.strip_order import ordered
from rigc.analysis.revision.plan.leads.plan import NEW, REMAKE
from rigc.analysis.revision.plan.plan_records import Piece
from rigc.analysis.revision.rework import Rework
from rigc.analysis.stores.pull_list import FIXINGS
from rigc.diagnostics.figures import millimetres
from rigc.facts.rework import MINUTES
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.revision.rework.outlets import counted
from rigc.reports.revision.rework.words import CHANGE, change_cell, first_cell, tidy
from rigc.traced.term import number

_COLUMNS = (
    Column("to bring", key="part"),
    Column("what", key="details"),
    Column("min", number=True, key="minutes"),
    CHANGE,
)


def bring_table(rework: Rework) -> Table:
    """Units, adaptors, leads made or bought, plugs to fit, strip, labels; with the minutes that they take beforehand."""
    rows = tuple(
        Row((first_cell(part, piece), Cell(details), Cell(_minutes(minutes)), change_cell(piece)))
        for part, details, minutes, piece in _parts(rework)
    )
    return tidy(Table("bring", "Parts to bring, made ready beforehand", _COLUMNS, rows, empty="nothing", tick=True), 2)


def _minutes(value: float) -> str:
    return f"{value:.0f}" if value else ""


def strip_need(rework: Rework) -> str:
    """The strip that is cut, with what is ordered for it; empty where none is."""
    return "; ".join(
        f"{name} {millimetres(length)} mm, order {order / 1000:g} m" for name, length, order in _strip(rework)
    )


def _parts(rework: Rework) -> Iterator[tuple[str, str, float, Piece]]:
    yield from _units(rework)
    for each in rework.adaptors:
        if each.after is not None and each.before is None:
            yield each.mark, f"{each.after.kind} adaptor for {' + '.join(each.after.units)}", 0.0, each
    yield from _fittings(rework)
    for plan in rework.leads:
        if plan.after is None:
            continue
        if plan.verdict in (NEW, REMAKE) and not plan.after.captive:
            length = "length not known" if plan.after.length is None else f"{millimetres(plan.after.length)} mm"
            made = MINUTES["make"].value if plan.mark in rework.to_make else 0.0
            leg = (
                ""
                if plan.after.leg_of is None
                else f", leg of Y lead {plan.after.leg_of}: one plug for all at the outlet"
            )
            what = f"{plan.after.signal} lead {length}, {plan.after.cable or 'cable not stated'}{leg}"
            if plan.after.signal == "mains":
                what = f"certified mains lead set for {' and '.join(plan.after.inlets) or 'its inlets'}, {length}"
            yield plan.mark, what, made, plan
        if plan.plugged:
            refitted = len(plan.plugged) * MINUTES["refit plug"].value if plan.after.stage else 0.0
            plugs = ", ".join(plan.after.plugs[end] or "?" for end in plan.plugged)
            yield f"plugs for {plan.mark}", f"{plugs}{', fitted' if plan.after.stage else ''}", refitted, plan
    for change, done in dict.fromkeys((label.change, label.done) for label in rework.labels if label.text):
        own = [each for each in rework.labels if each.text and (each.change, each.done) == (change, done)]
        marks = ", ".join(dict.fromkeys(each.mark for each in own))
        yield f"{len(own)} labels", f"printed: {marks}", len(own) * MINUTES["print"].value, own[0]


def _fittings(rework: Rework) -> Iterator[tuple[str, str, float, Piece]]:
    """Decks and cases that come, with the holes that are drilled beforehand; jacks, inlets and transformers."""
    for plan in rework.fittings:
        if not plan.after:
            continue
        if plan.kind == "deck":
            holes = [each for each in rework.fittings if each.beforehand and each.on == plan.name]
            drilled = f", {len(holes)} holes drilled" if holes else ""
            minutes = MINUTES["put deck"].value + len(holes) * MINUTES["drill"].value
            yield f"deck {plan.name}", f"{plan.after} mm{drilled}", minutes, plan
        elif plan.kind == "case":
            yield f"case {plan.name}", f"{plan.after} mm", 0.0, plan
        elif plan.kind == "transformer":
            yield "transformer", plan.after, 0.0, plan
        elif plan.kind == "jack" and not plan.before:
            yield f"{plan.name}", plan.after.partition(" at ")[0], 0.0, plan


def _units(rework: Rework) -> Iterator[tuple[str, str, float, Piece]]:
    """Units that come, and strip: what goes under a base is laid beforehand, the deck's pieces are cut."""
    laid = {plan.unit: plan for plan in rework.strips if plan.after is not None and plan.on_unit}
    for unit in rework.units:
        if unit.there_after and not unit.there_before:
            strip = laid.pop(unit.name, None)
            under = (
                ""
                if strip is None or strip.after is None
                else f"{strip.after.strip} {counted(strip.after.pieces)} laid under it"
            )
            yield unit.name, under or "looked at", MINUTES["strip base"].value if under else 0.0, unit
    for strip in rework.strips:
        if strip.after is not None:
            pieces = (
                *(strip.after.pieces if strip.unit in laid else ()),
                *(strip.after.deck_pieces if strip.on_deck else ()),
            )
            where = (
                "for base and deck"
                if strip.unit in laid and strip.on_deck and strip.after.deck_pieces
                else "for the base"
                if strip.unit in laid
                else "for the deck"
            )
            if pieces:
                yield strip.after.strip, f"{counted(pieces)} {where}, {strip.unit}", 0.0, strip
    for unit in rework.units:
        if unit.fixing is not None and (unit.refixed or not unit.there_before):
            yield FIXINGS[unit.fixing], f"one set, {unit.name}", 0.0, unit


def _strip(rework: Rework) -> list[tuple[str, int, int]]:
    """By kind: what is cut in tenths of a millimetre, and what is ordered in mm (a tenth more, rounded up to 0.1 m)."""
    cut: dict[str, float] = {}
    for plan in rework.strips:
        if plan.after is not None and not plan.done:
            pieces = (*(plan.after.pieces if plan.on_unit else ()), *(plan.after.deck_pieces if plan.on_deck else ()))
            cut[plan.after.strip] = cut.get(plan.after.strip, 0.0) + sum(pieces)
    return [(name, round(10 * length), round(1000 * ordered(number(length)))) for name, length in cut.items() if length]
