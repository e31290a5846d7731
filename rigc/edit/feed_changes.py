"""Chosen feeds -> changes of the file: new statements, or units added to the statement that feeds the outlet already."""

from __future__ import annotations

from rigc.analysis.feeds.choice.outlet_problem import RESERVE
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.results import Results
from rigc.edit.cannot_pin import CannotPin
from rigc.edit.change import Change
from rigc.edit.chosen_values import chosen_feeds
from rigc.edit.into_block import into_block
from rigc.model.jacks import Port
from rigc.syntax import nodes
from rigc.syntax.nodes import File

_NO_RIVALS = ("unknown needs", "no word", "no outlets")
"""Reasons why a unit has no outlet that do not hang on what the others have."""


def feed_changes(file: File, results: Results) -> list[Change]:
    """The changes that state all chosen outlets.

    Raises `CannotPin` where a unit shares with one that another file feeds, and while units are in each other's way.
    """
    blocks = [each for each in file.statements if isinstance(each, nodes.PowerBlock)]
    written = {
        tuple(map(str, node.outlets)): node for each in blocks for node in each.items if isinstance(node, nodes.Feed)
    }
    stated = {port for feed in results.rig.power.feeds for port in feed.outlets}
    lines: list[str] = []
    found: list[Change] = []
    chosen = chosen_feeds(results)
    if chosen:
        _refuse_rivals(results)
    for outlets, (units, line) in chosen.items():
        if not stated.intersection(outlets):
            lines.append(line)
            continue
        node = written.get(tuple(map(str, outlets)))
        if node is None:
            raise CannotPin(_elsewhere(results, units, outlets))
        found += _joined(node, units)
    return [*found, *([into_block(file, blocks, "power", lines)] if lines else [])]


def _refuse_rivals(results: Results) -> None:
    """What is stated is no rival any more: who lacks an outlet, and why, would be told otherwise after pinning."""
    lacking = [unit for each in results.get(PowerAssignment).unfed if each.why not in _NO_RIVALS for unit in each.units]
    if lacking:
        names = ", ".join(f"'{unit.removeprefix(RESERVE)}'" for unit in dict.fromkeys(lacking))
        raise CannotPin(f"there are not outlets for all of {names} yet: pin when everything has one")


def _joined(node: nodes.Feed, units: list[str]) -> list[Change]:
    behind = node.units[-1].span.end
    change = Change(behind, behind, "".join(f", {unit}" for unit in units))
    if node.how is not None:
        return [change]
    end = (node.voltage or node.outlets[-1]).span.end
    return [change, Change(end, end, " shared")]


def _elsewhere(results: Results, units: list[str], outlets: tuple[Port, ...]) -> str:
    feed = next(feed for feed in results.rig.power.feeds if set(feed.outlets) & set(outlets))
    return f"'{units[0]}' shares {outlets[0]} with '{feed.units[0]}', whose feed stands in another file: state both together"
