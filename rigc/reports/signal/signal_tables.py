"""Signal steps -> one table a chain, from its first stop to its last, with every loop expanded."""

from __future__ import annotations

from rigc.analysis.deck.zones import Zones
from rigc.analysis.signal.levels.levels import Levels
from rigc.analysis.signal.signal_steps import ChainSteps, Step
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import When
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.deck.zone_column import ZONE, zoned
from rigc.reports.figure_cell import figure_cell
from rigc.reports.signal.jack_words import level_class, when_bypassed, width

COLUMNS = (
    Column("step", number=True),
    Column("unit"),
    ZONE,
    Column("in jack"),
    Column("out jack"),
    Column("lead in", key="lead"),
    Column("mono/stereo", folds="{}"),
    Column("level class", folds="{} level", blank_fits=True),
    Column("when bypassed"),
)


def signal_tables(rig: Rig, chains: tuple[ChainSteps, ...], levels: Levels, zones: Zones) -> tuple[Table, ...]:
    """The chains in the order of the source; a single one needs no number in its block's name."""
    reckoned = {str(edge.start): edge.high_dbu for edge in levels.edges}
    return tuple(
        zoned(
            Table(
                _name(chain, number, chains),
                _caption(chain, number, len(chains)),
                COLUMNS,
                tuple(_rows(rig, chain, reckoned, zones)),
                empty="no chain",
                tick=True,
            )
        )
        for number, chain in enumerate(chains, start=1)
    )


def _name(chain: ChainSteps, number: int, chains: tuple[ChainSteps, ...]) -> str:
    word = chain.name.replace("-", "_") or str(number)
    same = [each for each in chains if each.name == chain.name]
    return f"signal_{word}" if len(same) == 1 or not chain.name else f"signal_{word}_{number}"


def _caption(chain: ChainSteps, number: int, count: int) -> str:
    title = f"Signal: {chain.name}" if chain.name else f"Signal, chain {number}" if count > 1 else "Signal"
    when = _when(chain.when)
    ends = f"{chain.steps[0].thing} to {chain.steps[-1].thing}" if chain.steps else ""
    return ", ".join(part for part in (title, when, ends) if part)


def _when(when: When) -> str:
    scenarios = f"for {', '.join(when.scenarios)}" if when.scenarios else ""
    instrument = f"with {when.instrument}" if when.instrument else ""
    return " ".join(part for part in (scenarios, instrument) if part)


def _rows(rig: Rig, chain: ChainSteps, reckoned: dict[str, float | None], zones: Zones) -> list[Row]:
    rows: list[Row] = []
    passed: set[str] = set()
    for step in chain.steps:
        rows.append(_row(rig, step, reckoned, zones, again=step.thing in passed))
        passed.add(step.thing)
    return rows


def _row(rig: Rig, step: Step, reckoned: dict[str, float | None], zones: Zones, again: bool) -> Row:
    unit = rig.units.get(step.thing)
    name = f"{step.thing} ({step.loop}{' back' if again else ''})" if step.loop else step.thing
    leaves = step.outs and step.thing not in rig.panels
    level = level_class(rig, Port(step.thing, step.outs[0]), reckoned) if leaves else ""
    bypassed = when_bypassed(unit) if unit is not None and not again else ""
    return Row(
        (
            figure_cell(step.number),
            Cell(name),
            Cell(_zone(rig, step, zones)),
            Cell(", ".join(step.ins)),
            Cell(", ".join(step.outs)),
            Cell(", ".join(step.leads), strong=True),
            Cell(width(rig, step.thing, step.ins, step.outs)),
            Cell(level),
            Cell(bypassed),
        )
    )


def _zone(rig: Rig, step: Step, zones: Zones) -> str:
    """That of the unit; of a panel, which is wide, that of the jacks."""
    if step.thing not in rig.panels:
        return zones.thing(step.thing)
    return zones.all(f"{step.thing}.{jack}" for jack in (*step.ins, *step.outs))
