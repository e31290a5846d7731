"""Things in use -> the unit data: every jack with its place, its kind and what it carries; knobs, switches and parts of the base."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from rigc.model.fact import Quantity
from rigc.model.jacks import Jack
from rigc.model.things import Instrument, Panel, PanelJack, Supply, Thing, Unit
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.schedule.cells import in_millimetres, level_cell, stated, words

WithJacks = Instrument | Unit | Supply | Panel

_THING = Column("thing")
_JACKS = (
    Column("jack"),
    Column("kind", folds="{}"),
    Column("carries", folds="{}"),
    Column("side", folds="at the {}"),
    Column("along it", "mm", number=True, key="offset"),
    Column("height", "mm", number=True, folds="{} high"),
    Column("bushing", folds="{}"),
    Column("impedance, level, wiring", key="electrics", folds="{}"),
)
_SPOTS = (
    Column("thing"),
    Column("what"),
    Column("x", "mm", number=True),
    Column("y", "mm", number=True),
    Column("size", "mm", key="size", folds="{}"),
)


def jack_table(thing: WithJacks) -> Table:
    """A row for every jack and outlet; distances count from the front edge, or from the left edge at front and rear."""
    return Table(f"jacks-{thing.name}", f"Jacks of {thing.name}", _JACKS, tuple(_jacks(thing)), empty="none is stated")


def jacks_together(things: Iterable[WithJacks]) -> Table | None:
    """The same of several things in one table; None where none of them states a jack."""
    rows = tuple(Row((Cell(thing.name), *row.cells)) for thing in things for row in _jacks(thing))
    return Table("jacks", "Jacks of what has no plan", (_THING, *_JACKS), rows) if rows else None


def has_jacks(thing: WithJacks) -> bool:
    """Whether it states a jack or an outlet."""
    return bool(thing.jacks or (isinstance(thing, Supply) and thing.outlets))


def _jacks(thing: WithJacks) -> Iterator[Row]:
    yield from (_jack(thing, jack) for jack in thing.jacks)
    if isinstance(thing, Supply):
        for outlet in thing.outlets:
            yield _row(outlet.name, "outlet", "", outlet.side, outlet.offset_mm, outlet.height_mm)


def spot_table(things: Iterable[Unit | Supply]) -> Table | None:
    """Foot switches, knobs, treadles, vents and what strip must leave free; None where nothing of it is stated."""
    rows = tuple(row for thing in things for row in _spots(thing))
    caption = "Unit data: switches, knobs, treadles, vents, parts of the base; from the front-left corner"
    return Table("spots", caption, _SPOTS, rows) if rows else None


def _jack(thing: WithJacks, jack: Jack) -> Row:
    pair = next((names for names in thing.pairs if jack.name in names), None)
    loops = [loop for loop in thing.loops if jack.name in (loop.send, loop.back)]
    carries = words(
        jack.carries or "",
        "" if pair is None else f"left, with {pair[1]}" if jack.name == pair[0] else f"right, with {pair[0]}",
        *(f"loop {loop.number}{f', {loop.mix}' if loop.mix else ''}" for loop in loops),
    )
    side = f"x {jack.x_mm:g}, y {jack.y_mm:g} of the deck" if isinstance(jack, PanelJack) else jack.side
    own = _row(jack.name, jack.role, carries.text, side, jack.offset_mm, jack.height_mm)
    kind = Cell(f"{jack.role}, {jack.connector}" if jack.role not in ("panel", "usb") else str(jack.connector))
    return Row(
        (
            own.cells[0],
            kind,
            *own.cells[2:6],
            Cell(jack.bushing or ""),
            _electrics(jack),
        )
    )


def _row(jack: str, kind: str, carries: str, side: str | None, offset: Quantity | None, height: Quantity | None) -> Row:
    return Row(
        (
            Cell(jack, strong=True),
            Cell(kind),
            Cell(carries),
            Cell(side or ""),
            _millimetres(offset),
            _millimetres(height),
            *(Cell(""),) * 2,
        )
    )


def _millimetres(fact: Quantity | None) -> Cell:
    return Cell("") if fact is None else Cell(in_millimetres(fact), mark="assumed" if fact.assumed else "")


def _electrics(jack: Jack) -> Cell:
    """Impedance, levels, and what the contacts do."""
    parts = (_ohm(jack), level_cell(jack.levels), _wired(jack))
    return Cell(words(*(part.text for part in parts)).text, mark="assumed" if any(part.mark for part in parts) else "")


def _ohm(jack: Jack) -> Cell:
    bypassed = "" if jack.bypassed_ohm is None else f"bypassed {jack.bypassed_ohm.typed}"
    return Cell(words(stated(jack.impedance_ohm).text, bypassed).text, mark=stated(jack.impedance_ohm).mark)


def _wired(jack: Jack) -> Cell:
    """What the contacts do: a treadle's wiper and track, a MIDI jack's type, the contact of a switch line, a captive lead, phantom
    power, and how a ground lift comes."""
    phantom = jack.phantom
    return words(
        jack.wiper or "",
        "" if jack.track_ohm is None else f"track {jack.track_ohm.typed}",
        jack.taper or "",
        "" if jack.midi_form is None else f"type {jack.midi_form}",
        jack.contact or "",
        "" if jack.captive_mm is None else f"captive {jack.captive_mm.typed}",
        ""
        if phantom is None
        else f"phantom {phantom.how}{f' {phantom.volts.typed}' if phantom.volts is not None else ''}",
        "" if jack.lift is None else f"ground lift, comes {jack.lift}",
    )


def _spots(thing: Thing) -> Iterator[Row]:
    for spot in thing.switches:
        yield _spot(thing, words("foot switch", spot.action or "").text, spot.x_mm, spot.y_mm)
    for spot in thing.knobs:
        yield _spot(thing, f"knob {spot.name}".strip(), spot.x_mm, spot.y_mm)
    if thing.treadle_mm is not None:
        low, high = thing.treadle_mm
        yield Row(
            (Cell(thing.name), Cell("treadle, heel to toe"), Cell(""), Cell(""), Cell(f"{low:g} to {high:g} high"))
        )
    for side in thing.vents:
        yield Row((Cell(thing.name), Cell(f"vents {side}"), *(Cell(""),) * 3))
    for area in thing.no_tape:
        yield _spot(thing, area.what, area.x_mm, area.y_mm, f"{area.width_mm:g} × {area.depth_mm:g}")


def _spot(thing: Thing, what: str, x_mm: float, y_mm: float, size: str = "") -> Row:
    return Row((Cell(thing.name), Cell(what), Cell(f"{x_mm:g}"), Cell(f"{y_mm:g}"), Cell(size)))
