"""A rig, one of its units and a substitute -> the board with the substitute in, computed, before any plug goes in."""

from __future__ import annotations

import re

from rigc.analysis.deck.placement import Placement
from rigc.analysis.deck.used_units import used_units
from rigc.analysis.every_check import all_checks
from rigc.analysis.feeds.load_limits import exceeds
from rigc.analysis.feeds.outlet_fit import fits, needs_outlet, resized, reversing
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.laying.placed import placed
from rigc.analysis.power.joint_loads import JointLoads
from rigc.analysis.previous import Previous
from rigc.analysis.results import Results
from rigc.analysis.revision.built.as_it_stood import Standing, as_it_stood
from rigc.analysis.revision.built.swapped_board import swapped_board
from rigc.analysis.revision.substitute.feeds import FeedWay, feed_ways
from rigc.analysis.revision.substitute.room import nearest_room, overlaps
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.model.resolve import resolve
from rigc.model.resolve.exchange.exchange import exchanged
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.record import Record
from rigc.source import Span
from rigc.syntax.nodes import Node
from rigc.syntax.parsed import Reader


class Trial(Record):
    """The board as it stands and with the substitute in it.

    `plugged` is the rig with the substitute where the unit was: same corner, same outlet. `mended` is the same after the
    way to feed it (`ways`, the first is taken) and the corner (`corner`) that were found where those won't do; it
    follows the standing board. `weak`: it stands on no outlet, or its outlet is wrong in its current alone; else the
    ways are not taken. `lines` tell what has no counterpart, `findings` what `mended` is found wrong with and the
    standing board is not.
    """

    standing: Standing
    plugged: Results
    mended: Results
    weak: bool
    ways: tuple[FeedWay, ...]
    corner: tuple[float, float] | None
    lines: tuple[str, ...]
    findings: tuple[Diagnostic, ...]

    @property
    def out(self) -> Unit:
        """The unit that goes."""
        return self.standing.results.rig.units[self.standing.out]

    @property
    def into(self) -> Unit:
        """The substitute."""
        return self.plugged.rig.units[self.standing.into]


def try_out(
    statements: tuple[Node, ...], out: str, into: str, reader: Reader, end: Span, effort: int | None
) -> Trial | str:
    """Exchanges `out` for `into` on the board as it was built; in place of a trial the reason why that can't be tried.

    The statements must have no errors of names and quantities.
    """
    rig, _ = resolve(statements, reader.reserved, end)
    assert rig is not None
    built = tuple(block for block in rig.as_built if block.revision == rig.head.letter)
    board = swapped_board(statements, placed(rig, effort)[0], built, rig, reader, end)
    change = exchanged(board.statements, out, into, reader.reserved, end)
    if change.refused:
        return change.refused + _second(rig, out, into)
    found, wrong = resolve(change.statements, reader.reserved, end)
    errors = [finding.message for finding in wrong if finding.level is Level.ERROR]
    if found is None or errors:
        return f"with '{into}' in the place of '{out}' the rig does not hold together: {'; '.join(errors)}"
    standing = Standing(Results(board.rig), built, out, into, change.jacks)
    return _tried(standing, as_it_stood(standing, found), change.lines)


def _second(rig: Rig, out: str, into: str) -> str:
    """How one more of what the board holds already is tried; empty of what it does not hold."""
    used = {unit.name: unit.kind for unit in used_units(rig)}
    if out not in used or used.get(into) != used[out]:
        return ""
    return f"; a second one is tried by a name of its own: `unit {into}-2 like {into} {{`, `}}`"


def _tried(standing: Standing, rig: Rig, lines: tuple[str, ...]) -> Trial:
    plugged = Results(rig)
    full, fitting = _feed(plugged, standing.into)
    weak = full and fitting
    ways = feed_ways(plugged, standing.into) if full or not fitting else ()
    if weak and ways:
        rig = ways[0].rig
    corner = None
    placement = plugged.get(Placement)
    if overlaps(rig, placement, standing.into):
        corner = nearest_room(rig, placement, standing.into)
    if corner is not None:
        place = rig.places[standing.into].replace(x_mm=corner[0], y_mm=corner[1])
        rig = rig.replace(places={**rig.places, standing.into: place})
    mended = Results(rig, Previous(standing.results, standing.as_built))
    return Trial(standing, plugged, mended, weak, ways, corner, lines, _new_findings(standing, rig))


def _feed(results: Results, name: str) -> tuple[bool, bool]:
    """Whether the unit wants more than its outlet gives (or stands on none), and whether all else about that outlet is right."""
    rig, power = results.rig, results.get(PowerAssignment)
    unit, own = rig.units[name], power.taps.get(name)
    if not needs_outlet(unit) or own is None:
        return needs_outlet(unit), True
    loads = [load for load in results.get(JointLoads).all if name in load.units]
    full = any(exceeds(load.start_ma, 100, load.limit_ma) for load in loads)
    return full, fits(unit, own, name in reversing(rig), name in resized(rig))


def _new_findings(standing: Standing, rig: Rig) -> tuple[Diagnostic, ...]:
    """What is wrong with the rig and was not with the board that stands; names of unit and substitute count as one.

    A finding that is not about the unit is the old one where its rule, level and subject are, whatever its figures.
    """
    known = {_key(finding, standing) for finding in _findings(standing.results)}
    return tuple(
        finding
        for finding in _findings(Results(rig))
        if standing.out not in finding.subject and _key(finding, standing) not in known
    )


def _findings(results: Results) -> list[Diagnostic]:
    """Of the board alone, without the revision that it may follow."""
    alone = Results(results.rig)
    return [finding for check in all_checks() for finding in alone.call(check)]


def _key(finding: Diagnostic, standing: Standing) -> tuple[str, ...]:
    subject = sorted(_read(name, standing) for name in finding.subject)  # things stand in the order of their sources
    about = any(name.split(".")[0] == standing.out for name in subject)
    return (finding.kind.name, finding.level.word, _read(finding.message, standing) if about else "", *subject)


def _read(text: str, standing: Standing) -> str:
    """A text in which the substitute's name and jacks are read as the unit's."""
    for old, new in standing.jacks.items():
        text = re.sub(rf"(?<![\w-]){standing.into}\.{new}(?![\w-])", f"{standing.out}.{old}", text)
    return re.sub(rf"(?<![\w-]){standing.into}(?![\w-])", standing.out, text)
