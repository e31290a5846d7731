"""The cable, plugs and strips that a rig uses -> what is stated of them."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypeVar

from rigc.model.fact import Quantity
from rigc.model.rig import Rig
from rigc.model.stock import Cable, Plug, Strip
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.schedule.cells import stated, words
from rigc.reports.schedule.columns import Columns, table

T = TypeVar("T")

_CHOICES = (
    Column("leads"),
    Column("cable"),
    Column("plug"),
    Column("made or bought", key="cutting", folds="{}"),
    Column("run at y", "mm", key="lanes", folds="run at y {}"),
    Column("premade lengths", "mm", key="premade"),
)


def cable_table(rig: Rig, names: Iterable[str | None]) -> Table:
    """A row for every cable of these names, each once."""
    used = _once(names, rig.stock.cables)
    return table("cables", "Cable in use", _CABLES, used, empty="no cable", landscape=True)


def plug_table(rig: Rig, names: Iterable[str | None]) -> Table:
    """A row for every plug kind of these names, each once."""
    used = _once(names, rig.stock.plugs)
    return table("plugs", "Plugs in use", _PLUGS, used, empty="no plug", landscape=True)


def strip_table(rig: Rig, names: Iterable[str | None]) -> Table:
    """A row for every strip of these names, each once."""
    return table("strips", "Strip in use", _STRIPS, _once(names, rig.stock.strips), empty="no strip")


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


def _number(count: int | None) -> Cell:
    return Cell("" if count is None else str(count))


_CABLES: Columns[Cable] = (
    (Column("cable"), lambda cable: Cell(cable.name, strong=True)),
    (Column("what it is", key="title"), lambda cable: Cell(cable.title)),
    (Column("carries"), lambda cable: Cell(cable.signal or "")),
    (Column("capacitance"), lambda cable: stated(cable.capacitance_pf_per_m)),
    (Column("outer"), lambda cable: stated(cable.outer_mm)),
    (Column("conductors"), lambda cable: words(_number(cable.conductors).text, cable.strand or "")),
    (
        Column("copper", "mm²", number=True, key="area", folds="copper {}"),
        lambda cable: Cell("" if cable.area_mm2 is None else _area(cable.area_mm2)),
    ),
    (Column("colour"), lambda cable: Cell(cable.colour or "")),
    (Column("mass"), lambda cable: stated(cable.mass_g_per_m)),
    (Column("price of a metre", key="price", folds="{} a metre"), lambda cable: stated(cable.price)),
)
_PLUGS: Columns[Plug] = (
    (Column("plug"), lambda plug: Cell(plug.name, strong=True)),
    (Column("what it is", key="title"), lambda plug: Cell(plug.title)),
    (Column("fits"), lambda plug: words(*map(str, plug.fits), "soldered" if plug.soldered else "")),
    (Column("stands out"), lambda plug: stated(plug.stand_out_mm)),
    (Column("bend", folds="bend {}"), lambda plug: stated(plug.bend_mm)),
    (Column("leaves at"), lambda plug: stated(plug.exit_mm)),
    (Column("wide"), lambda plug: stated(plug.width_mm)),
    (Column("tall"), lambda plug: stated(plug.height_mm)),
    (Column("cut-in"), lambda plug: stated(plug.cut_in_mm)),
    (
        Column("strip back", "mm", key="strip_back", folds="strip back {}"),
        lambda plug: Cell(", ".join(f"{length:g}" for length in plug.strip_back_mm or ())),
    ),
    (Column("poles", number=True, folds="{} poles"), lambda plug: _number(plug.poles)),
    (Column("mass"), lambda plug: stated(plug.mass_kg)),
    (Column("price", folds="{} each"), lambda plug: stated(plug.price)),
)
_STRIPS: Columns[Strip] = (
    (Column("strip"), lambda strip: Cell(strip.name, strong=True)),
    (Column("what it is", key="title"), lambda strip: Cell(strip.title)),
    (Column("width"), lambda strip: stated(strip.width_mm)),
    (Column("pull"), lambda strip: stated(strip.pull_kpa)),
    (Column("mates"), lambda strip: Cell(strip.mates or "")),
    (Column("lasts, times opened", number=True, key="cycles"), lambda strip: _number(strip.cycles)),
    (Column("mass"), lambda strip: stated(strip.mass_g_per_m)),
    (Column("roll"), lambda strip: stated(strip.roll_mm)),
    (Column("price of a roll", key="price"), lambda strip: stated(strip.price)),
)


def _area(copper: Quantity) -> str:
    off = "" if copper.spread is None else f" ± {copper.spread.most - copper.value:.3g}"
    return f"{copper.value:.3g}{off}"
