"""Supplies with batteries -> how long each lasts: `bank.battery.energy`, `.life`, `.shows`."""

from __future__ import annotations

from rigc.analysis.power.show_length import Lasting, ShowLength
from rigc.analysis.power.supply_intakes import SupplyIntake, SupplyIntakes
from rigc.analysis.power.supply_totals import SupplyTotal, SupplyTotals
from rigc.model.rig import Rig
from rigc.model.things import Pack
from rigc.record import Record
from rigc.traced.figure import AnyFigure, Figure, figure
from rigc.traced.given import stated
from rigc.traced.means import total
from rigc.traced.reason import ARITHMETIC, AS_STATED, STATED
from rigc.traced.term import Traced, Unknown, known
from rigc.traced.units import HOURS, WATT_HOURS

_LIFE = "life = energy / what the supply takes of it, with the energy as stated, of a new pack that is full"


class PackLife(Lasting):
    """A supply's battery: its energy in Wh, what the supply gives and takes of it in W."""

    supply: str
    pack: Pack
    energy: AnyFigure
    gives: Figure
    intake: SupplyIntake


class PackLives(Record):
    """Those of all supplies in use, in order of declaration."""

    all: tuple[PackLife, ...]


def pack_lives(rig: Rig, totals: SupplyTotals, intakes: SupplyIntakes, show: ShowLength) -> PackLives:
    """One for each supply that states a battery."""
    return PackLives(
        tuple(
            _life(pack, each, intakes.all[each.supply], show)
            for each in totals.all
            if (pack := rig.supplies[each.supply].pack) is not None
        )
    )


def _life(pack: Pack, given: SupplyTotal, intake: SupplyIntake, show: ShowLength) -> PackLife:
    name = f"{given.supply}.battery"
    energy = _energy(given.supply, pack)
    hours = _hours(energy, given, intake)
    life = figure(f"{name}.life", hours, HOURS, rule=_LIFE, source=ARITHMETIC, label="life")
    lasts = show.whole_shows(f"{name}.shows", life)
    lacking = _lacking(pack, given, intake)
    return PackLife(life, lasts, show.hours, lacking, given.supply, pack, energy, given.drawn_w, intake)


def _energy(supply: str, pack: Pack) -> AnyFigure:
    """Wh as stated, or mAh × V / 1000."""
    name, label = f"{supply}.battery.energy", f"the energy of the battery of {supply}"
    if pack.charge_mah is None:
        return figure(name, stated(label, pack.energy_wh), WATT_HOURS, rule=AS_STATED, source=STATED, label="energy")
    charge = stated(f"the charge of the battery of {supply}", pack.charge_mah)
    cells = stated(f"the voltage of the cells of {supply}", pack.cells_v)
    rule = "energy = charge × voltage of the cells / 1000"
    return figure(name, charge * cells / 1000, WATT_HOURS, rule=rule, source=ARITHMETIC, label="energy")


def _hours(energy: AnyFigure, given: SupplyTotal, intake: SupplyIntake) -> Traced:
    """h = Wh / W; not known where a current is not, or where nothing is drawn."""
    if given.unknown:
        lacking = tuple(f"what {unit} draws" for unit in given.unknown)
        return Unknown(lacking, total((energy, intake.watts)).how)
    if known(intake.watts) == 0:
        return Unknown(("anything that is drawn",), total((energy, intake.watts)).how)
    hours: Traced = energy / intake.watts
    return hours


def _lacking(pack: Pack, given: SupplyTotal, intake: SupplyIntake) -> str:
    if pack.charge_mah is None and pack.energy_wh is None:
        return "its energy"
    if pack.charge_mah is not None and pack.cells_v is None:
        return "the voltage of its cells"
    if given.unknown:
        return f"the current of {', '.join(given.unknown)}"
    if known(intake.efficiency) is None:
        return "its efficiency"
    return "anything that is fed" if known(intake.watts) == 0 else ""


COMPUTE = pack_lives
