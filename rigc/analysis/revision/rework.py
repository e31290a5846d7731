"""Rework: the board of the revision before, and this design -> what is to be done by hand to make the one into the
other."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.lead_status import status
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.lengths.cable_routes import CableRoutes
from rigc.analysis.power.supply_totals import SupplyTotals
from rigc.analysis.previous import Previous
from rigc.analysis.results import Results
from rigc.analysis.revision.board import Board
from rigc.analysis.revision.built.as_built import as_built
from rigc.analysis.revision.built.as_measured import built_mass
from rigc.analysis.revision.plan.applied import applied
from rigc.analysis.revision.plan.bench_steps import bench_steps
from rigc.analysis.revision.plan.changed_parts import changed_parts
from rigc.analysis.revision.plan.fitting_plans import exchanged_decks, fitting_plans
from rigc.analysis.revision.plan.label_plans import adaptor_plans, label_plans
from rigc.analysis.revision.plan.leads.fit import Bench
from rigc.analysis.revision.plan.leads.plan import LeadPlan
from rigc.analysis.revision.plan.leads.plans import lead_plans
from rigc.analysis.revision.plan.leads.redressed import on_decks, redressed
from rigc.analysis.revision.plan.leads.spares import spare_leads
from rigc.analysis.revision.plan.of_changes import ChangeLedger, of_changes
from rigc.analysis.revision.plan.outlet_plans import feed_plans, outlet_plans, supply_plans
from rigc.analysis.revision.plan.passage_plans import passage_plans
from rigc.analysis.revision.plan.plan_records import Step, SupplyPlan
from rigc.analysis.revision.plan.program_plans import channel_plans, program_plans, spare_plans
from rigc.analysis.revision.plan.retests import retests, spared
from rigc.analysis.revision.plan.rework_pieces import Pieces
from rigc.analysis.revision.plan.successors import NONE, Successors, successors
from rigc.analysis.revision.plan.unit_plans import strip_plans, unit_plans
from rigc.analysis.routes.deck_holes import DeckHoles
from rigc.analysis.tests.due_tests import DueTests
from rigc.analysis.weight.mass import Mass
from rigc.model.rig import Rig


class Rework(Pieces):
    """Everything between the board of revision `before` as it was built and the new design; `before` is empty, and so
    is all else, where this revision follows none.

    `successors` tells which unit is taken to come in whose stead. `steps` are in bench order; `spared` says in
    words which tests need not be made again; `mass_kg` is the board before and after, as it is built (None where
    not known, for want of what is `unweighed`), adaptors not weighed.
    """

    before: str = ""
    after: str = ""
    built: Board | None = None
    successors: Successors = NONE
    supplies: tuple[SupplyPlan, ...] = ()
    steps: tuple[Step, ...] = ()
    spared: tuple[str, ...] = ()
    mass_kg: tuple[float | None, float | None] = (None, None)
    unweighed: tuple[str, ...] = ()


def rework(rig: Rig, previous: Previous, results: Results) -> Rework:
    """The least work that makes the board as it was built into this design. The lists are empty where nothing
    changes; without a revision before, nothing is computed for it."""
    old = previous.results
    if old is None:
        return Rework()
    built, board, power = as_built(previous, old), results.get(Board), results.get(PowerAssignment)
    after = _successors(old.rig, rig, built, board)
    pieces = _pieces(old, results, built, board, after, power)
    exchanged = exchanged_decks(pieces.fittings)
    pieces = pieces.replace(
        leads=_leads(old, results, built, after, exchanged), to_make=_to_make(rig, results.get(Leads))
    )
    pieces = of_changes(pieces, rig, _ledger(rig, previous), after)
    pieces = pieces.replace(labels=label_plans(pieces.leads, pieces.adaptors, (built.y_labels, board.y_labels)))
    due = results.get(DueTests)
    parts = changed_parts(old.rig, rig, power, pieces)
    pieces = pieces.replace(retests=retests(rig, due, parts, pieces.adaptors))
    masses = old.get(Mass), results.get(Mass)
    return Rework(
        **{name: getattr(pieces, name) for name in Pieces.FIELDS},
        before=previous.letter,
        after=rig.head.letter,
        built=built,
        successors=after,
        supplies=supply_plans(old.get(SupplyTotals), results.get(SupplyTotals)),
        steps=bench_steps(pieces),
        spared=spared(due, pieces.retests, parts),
        mass_kg=(
            built_mass(masses[0].total_kg, old.get(Board), built, old.rig),
            built_mass(masses[1].total_kg, board, applied(pieces, built), rig),
        ),
        unweighed=tuple(dict.fromkeys(each.missing for mass in masses for each in mass.items if each.kg is None)),
    )


def _successors(old: Rig, rig: Rig, built: Board, board: Board) -> Successors:
    gone = tuple(name for name in built.units if name not in board.units)
    come = tuple(name for name in board.units if name not in built.units)
    return successors(old, rig, gone, come)


def _leads(
    old: Results, new: Results, built: Board, after: Successors, exchanged: frozenset[str]
) -> tuple[LeadPlan, ...]:
    board = new.get(Board)
    stocks = old.rig.stock, new.rig.stock
    plugs, cables = stocks[0].plugs | stocks[1].plugs, stocks[0].cables | stocks[1].cables
    bench = Bench(plugs, after, cables)
    spares = spare_leads(old.rig, built, board)
    plans = lead_plans(built, board, new.get(CableLengths), spares, bench)
    return redressed(plans, old.get(CableRoutes), new.get(CableRoutes), on_decks(board, exchanged))


def _to_make(rig: Rig, leads: Leads) -> frozenset[str]:
    return frozenset(lead.mark for lead in leads.all if status(rig, lead) == "make")


def _pieces(
    old: Results, new: Results, built: Board, board: Board, after: Successors, power: PowerAssignment
) -> Pieces:
    rig = new.rig
    fittings = fitting_plans(old.rig, rig)
    exchanged = exchanged_decks(fittings)
    fresh = frozenset(plan.name for plan in fittings if plan.kind == "deck" and plan.after)
    passages = passage_plans(old.get(DeckHoles), new.get(DeckHoles), fresh)
    return Pieces(
        adaptors=adaptor_plans(built, board),
        outlets=outlet_plans(rig, old.get(PowerAssignment), power, built, board),
        feeds=feed_plans(built, board),
        units=unit_plans(built, board, after, exchanged),
        strips=strip_plans(built, board, exchanged),
        fittings=(*fittings, *passages),
        programs=program_plans(old.rig, rig, built, board),
        channels=channel_plans(built, board),
        spares=spare_plans(built, board),
        supply_names=frozenset((*old.rig.supplies, *rig.supplies)),
        corded=_corded(old) | _corded(new),
    )


def _corded(results: Results) -> frozenset[str]:
    """What has a mains lead that the source does not number."""
    rig = results.rig
    told = {port.thing for lead in results.get(Leads).all if lead.signal == "mains" for port in (lead.start, lead.end)}
    supplies = {
        each.name for each in rig.supplies.values() if each.mains and each.takes_mains and each.plug_top is None
    }
    return frozenset((supplies | {unit.name for unit in rig.units.values() if unit.own_mains}) - told)


def _ledger(rig: Rig, previous: Previous) -> ChangeLedger:
    """Which changes are done is what this revision's source says of the board before it."""
    done = {number for block in rig.as_built if block.revision == previous.letter for number in block.done}
    return ChangeLedger(rig.head.changes, frozenset(done))


COMPUTE = rework
