"""Stock: the cables, plug kinds, strips, decks and premade lengths by the names that a rig writes, and the files that declare them."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.diagnostics.figures import short
from rigc.model.deck import Deck
from rigc.model.fact import Quantity
from rigc.model.rig import Rig
from rigc.model.stock import Cable, Plug, Strip
from rigc.reports.content import Cell, Column, Paragraph, Row, Sheet, Table
from rigc.source import Span

_USE = ('Write for example `use "stock/plugs.rig"` to use what one of these files declares.',)


def stock(rig: Rig) -> Sheet:
    """One table a family, in the order in which the files declare them."""
    held = rig.stock
    blocks = (
        _table("cables", "Cables", _CABLE, map(_cable, held.cables.values())),
        _table("plugs", "Plug kinds", _PLUG, map(_plug, held.plugs.values())),
        _table("strips", "Strips", _STRIP, map(_strip, held.strips.values())),
        _table("decks", "Decks", _DECK, map(_deck, rig.decks.values())),
        _table("premade", "Premade leads", _PREMADE, map(_premade, held.premade_mm.items())),
        Paragraph("use", _USE),
    )
    return Sheet("stock", "Stock", "builder and bench", blocks)


def _number(head: str, unit: str) -> Column:
    return Column(head, unit, number=True)


_BEGIN, _END = (Column("name"), Column("what it is")), (Column("file"),)
_CABLE = (
    *_BEGIN,
    Column("carries"),
    _number("outer", "mm"),
    _number("capacitance", "pF/m"),
    _number("conductor", "mm²"),
    *_END,
)
_PLUG = (
    *_BEGIN,
    Column("fits"),
    _number("stands out", "mm"),
    _number("wide", "mm"),
    _number("tall", "mm"),
    _number("cut-in", "mm"),
    *_END,
)
_STRIP = (*_BEGIN, _number("wide", "mm"), _number("pull", "kPa"), Column("mates"), *_END)
_DECK = (
    *_BEGIN,
    _number("width", "mm"),
    _number("depth", "mm"),
    _number("clearance", "mm"),
    _number("mass", "kg"),
    *_END,
)
_PREMADE = (Column("carries"), Column("lengths", "mm"))  # fmt: skip


def _table(name: str, caption: str, columns: tuple[Column, ...], rows: Iterable[Iterable[str]]) -> Table:
    made = tuple(Row(tuple(Cell(text) for text in row)) for row in rows)
    return Table(name, caption, columns, made, f"no {caption.lower()} are declared")


def _cable(cable: Cable) -> tuple[str, ...]:
    figures = (_figure(cable.outer_mm), _figure(cable.capacitance_pf_per_m), _figure(cable.area_mm2))
    return (cable.name, cable.title, cable.signal or "", *figures, _file(cable.declared))


def _plug(plug: Plug) -> tuple[str, ...]:
    sizes = map(_figure, (plug.stand_out_mm, plug.width_mm, plug.height_mm, plug.cut_in_mm))
    return (plug.name, plug.title, ", ".join(map(str, plug.fits)), *sizes, _file(plug.declared))


def _strip(strip: Strip) -> tuple[str, ...]:
    figures = (_figure(strip.width_mm), _figure(strip.pull_kpa), strip.mates or "")
    return (strip.name, strip.title, *figures, _file(strip.declared))


def _deck(deck: Deck) -> tuple[str, ...]:
    figures = map(_figure, (deck.width_mm, deck.depth_mm, deck.clearance_mm, deck.mass_kg))
    return (deck.name, deck.title, *figures, _file(deck.declared))


def _premade(lengths: tuple[str, tuple[float, ...]]) -> tuple[str, ...]:
    return (lengths[0], ", ".join(f"{length:g}" for length in lengths[1]))


def _figure(fact: Quantity | None) -> str:
    return "" if fact is None else short(fact.value)


def _file(declared: Span) -> str:
    return declared.source.name


VIEW = stock
