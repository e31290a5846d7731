"""The cable, plugs and strips that a rig uses -> what is stated of them."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypeVar

from rigc.model.rig import Rig
from rigc.model.stock import Cable, Plug, Strip
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.schedule.cells import stated, words

T = TypeVar("T")

_CABLES = (
    Column("cable"),
    Column("what it is", key="title"),
    Column("carries"),
    Column("capacitance"),
    Column("outer"),
    Column("conductors"),
    Column("copper", "mm²", number=True, key="area"),
    Column("colour"),
    Column("mass"),
    Column("price of a metre", key="price"),
)
_PLUGS = (
    Column("plug"),
    Column("what it is", key="title"),
    Column("fits"),
    Column("stands out"),
    Column("bend"),
    Column("leaves at"),
    Column("wide"),
    Column("tall"),
    Column("cut-in"),
    Column("strip back", "mm", key="strip_back"),
    Column("poles", number=True),
    Column("mass"),
    Column("price"),
)
_STRIPS = (
    Column("strip"),
    Column("what it is", key="title"),
    Column("width"),
    Column("pull"),
    Column("mates"),
    Column("lasts, times opened", number=True, key="cycles"),
    Column("mass"),
    Column("roll"),
    Column("price of a roll", key="price"),
)

_CHOICES = (
    Column("leads"),
    Column("cable"),
    Column("plug"),
    Column("made or bought", key="cutting"),
    Column("run at y", "mm", key="lanes"),
    Column("premade lengths", "mm", key="premade"),
)


def cable_table(rig: Rig, names: Iterable[str | None]) -> Table:
    """A row for every cable of these names, each once."""
    used = _once(names, rig.stock.cables)
    return Table("cables", "Cable in use", _CABLES, tuple(map(_cable, used)), empty="no cable", landscape=True)


def plug_table(rig: Rig, names: Iterable[str | None]) -> Table:
    """A row for every plug kind of these names, each once."""
    used = _once(names, rig.stock.plugs)
    return Table("plugs", "Plugs in use", _PLUGS, tuple(map(_plug, used)), empty="no plug", landscape=True)


def strip_table(rig: Rig, names: Iterable[str | None]) -> Table:
    """A row for every strip of these names, each once."""
    return Table(
        "strips", "Strip in use", _STRIPS, tuple(map(_strip, _once(names, rig.stock.strips))), empty="no strip"
    )


def choice_table(rig: Rig) -> Table | None:
    """A row for each kind of lead: what it is made of where it names nothing else, where it runs, in which lengths it is bought."""
    wishes, stock = rig.lead_wishes, rig.stock
    signals = (wishes.cables, wishes.plugs, wishes.cutting, wishes.lanes, stock.premade_mm.items())
    rows = tuple(_choice(rig, signal) for signal in dict.fromkeys(signal for each in signals for signal, _ in each))
    return Table("choices", "Leads that name nothing else", _CHOICES, rows) if rows else None


def _choice(rig: Rig, signal: str) -> Row:
    wishes = rig.lead_wishes
    lengths = [_premade(rig, signal, length) for length in rig.stock.premade_mm.get(signal, ())]
    return Row(
        (
            Cell(signal, strong=True),
            Cell(dict(wishes.cables).get(signal, "")),
            Cell(dict(wishes.plugs).get(signal, "")),
            Cell(dict(wishes.cutting).get(signal, "")),
            Cell(", ".join(f"{line:g}" for name, line in wishes.lanes if name == signal)),
            Cell(", ".join(lengths)),
        )
    )


def _premade(rig: Rig, signal: str, length: float) -> str:
    """`300 (5 EUR, 20 g)`"""
    figures = (rig.stock.premade_price, rig.stock.premade_kg)
    told = [fact.typed for each in figures if (fact := each.get(signal, {}).get(length)) is not None]
    return f"{length:g} ({', '.join(told)})" if told else f"{length:g}"


def _once(names: Iterable[str | None], stock: dict[str, T]) -> list[T]:
    return [stock[name] for name in dict.fromkeys(names) if name is not None and name in stock]


def _cable(cable: Cable) -> Row:
    count = "" if cable.conductors is None else str(cable.conductors)
    return Row(
        (
            Cell(cable.name, strong=True),
            Cell(cable.title),
            Cell(cable.signal or ""),
            stated(cable.capacitance_pf_per_m),
            stated(cable.outer_mm),
            words(count, cable.strand or ""),
            Cell("" if cable.area_mm2 is None else f"{cable.area_mm2.value:.3g}"),
            Cell(cable.colour or ""),
            stated(cable.mass_g_per_m),
            stated(cable.price),
        )
    )


def _plug(plug: Plug) -> Row:
    sizes = (plug.stand_out_mm, plug.bend_mm, plug.exit_mm, plug.width_mm, plug.height_mm, plug.cut_in_mm)
    back = plug.strip_back_mm
    return Row(
        (
            Cell(plug.name, strong=True),
            Cell(plug.title),
            words(*map(str, plug.fits), "soldered" if plug.soldered else ""),
            *map(stated, sizes),
            Cell("" if back is None else ", ".join(f"{length:g}" for length in back)),
            Cell("" if plug.poles is None else str(plug.poles)),
            stated(plug.mass_kg),
            stated(plug.price),
        )
    )


def _strip(strip: Strip) -> Row:
    return Row(
        (
            Cell(strip.name, strong=True),
            Cell(strip.title),
            stated(strip.width_mm),
            stated(strip.pull_kpa),
            Cell(strip.mates or ""),
            Cell("" if strip.cycles is None else str(strip.cycles)),
            stated(strip.mass_g_per_m),
            stated(strip.roll_mm),
            stated(strip.price),
        )
    )
