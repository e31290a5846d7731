"""Crew card: one page for the lid, to be read at arm's length: switching on and off, settings, plan, what to do when it fails."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.control.switch_settings import SwitchSettings
from rigc.analysis.deck.placement import Placement
from rigc.analysis.deck.used_units import used_units
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import used_supplies
from rigc.analysis.kept import Kept
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.plugs.plug_bodies import PlugBodies
from rigc.model.rig import Rig
from rigc.model.things import Instrument, Unit
from rigc.model.ways.battery_rest import has_switch
from rigc.reports.content import Cell, Column, Paragraph, Row, Sheet, Table
from rigc.reports.drawings.pictures.card_plan import card_plans
from rigc.reports.front.sheet_codes import see
from rigc.reports.signal.radio_links import radio_links
from rigc.reports.signal.remarks import bypass_plan

WIDTH, HEIGHT, LEAST = 180.0, 104.0, 60.0
"""What the plan may take of the page, in mm."""
_WITH_LISTS = 197.0  # what plan, lists and what to do when it fails have together, in mm
_LINE = 6.0  # of a list, in mm
_OF_STEP, _OF_SETTING, _OF_BYPASS, _OF_PANIC = 32, (17, 8, 8), 40, 90  # so many letters go on a line of a cell

_SETTINGS = (Column("set", key="at"), Column("to", key="position"), Column("where", key="scenario"))


def crew_card(
    rig: Rig,
    settings: SwitchSettings,
    power: PowerAssignment,
    placement: Placement,
    plugs: PlugBodies,
    leads: Leads,
    kept: Kept,
) -> Sheet:
    """The plan with what stands where, then what is done in which order."""
    steps, listed = _on(rig, power, settings), _settings(settings)
    bypass = bypass_plan(rig) if rig.bypass_plans else Paragraph("bypass_plan", ())
    panic = _panic(rig, power, leads, settings)
    return Sheet(
        "crew-card",
        "Crew card",
        "crew, in the lid",
        (
            *card_plans(rig, placement, plugs, leads, WIDTH, _height(steps, listed, bypass, panic), kept),
            steps,
            listed,
            bypass,
            _call(rig),
            panic,
        ),
    )


def _on(rig: Rig, power: PowerAssignment, settings: SwitchSettings) -> Table:
    """The amps last, and first when it goes off: a thump hurts ears and loudspeakers (common practice, no source)."""
    steps = enumerate(_steps(rig, power, settings), 1)
    rows = tuple(Row((Cell(str(number)), Cell(step, strong=True))) for number, step in steps)
    columns = (Column("no", number=True), Column("step"))
    return Table("on", "On; off from last to first", columns, rows, tick=True)


def _height(steps: Table, settings: Table, bypass: Paragraph, panic: Table) -> float:
    """The two lists stand beside each other, the bypass plan below the settings: the plan has what the longer side
    and the rows of `panic` leave."""
    left = sum(_lines(row.cells[1].text, _OF_STEP) for row in steps.rows)
    right = sum(max(map(_lines, (cell.text for cell in row.cells), _OF_SETTING)) for row in settings.rows)
    right += bypass.says + sum(_lines(line, _OF_BYPASS) for line in bypass.lines)
    below = sum(_lines(row.cells[1].text, _OF_PANIC) for row in panic.rows)
    return max(LEAST, min(HEIGHT, _WITH_LISTS - _LINE * (max(left, right) + below)))


def _lines(text: str, letters: int) -> int:
    return 1 + (len(text) - 1) // letters


def _steps(rig: Rig, power: PowerAssignment, settings: SwitchSettings) -> Iterator[str]:
    ends = [unit.name for unit in rig.units.values() if unit.ends]
    yield f"mute {', '.join(ends)}" if ends else "mute what it plays into"
    yield from (f"join {one} to {other}: {', '.join(marks)}" for one, other, marks in rig.joins)
    yield f"stage leads in ({see('stage-hook-up')})"
    if settings.all:
        yield "set and tape, as listed"
    used = used_supplies(rig, power)
    supplies = [supply.name for supply in used if supply.takes_mains]
    cells: list[Unit | Instrument] = [
        unit for unit in used_units(rig) if unit.on_battery or (unit.ends and unit.battery is not None)
    ]
    cells += [each for each in rig.instruments.values() if each.battery is not None]
    full = [*(supply.name for supply in used if supply.pack is not None), *(unit.name for unit in cells)]
    if full:
        yield f"batteries full? {', '.join(full)}"
    plugged = dict.fromkeys(strip for _, strip, _ in rig.power.plugged)
    in_strips = {thing for thing, _, _ in rig.power.plugged}
    into = [*plugged, *(name for name in (*supplies, *_on_mains(rig)) if name not in in_strips)]
    if into:
        yield f"mains in: {', '.join(into)}; wait until all is lit"
    alone = [supply.name for supply in used if not supply.takes_mains]
    if alone:
        yield f"switch on {', '.join(alone)}; wait until all is lit"
    if any(jack.connector.kind == "wireless" for thing in rig.things.values() for jack in thing.jacks):
        yield "radio on, on an allowed frequency"
    amps = ", ".join(_amps(rig))
    if amps:
        yield f"switch on {amps}, muted"
    first = next(iter(rig.presets.values()), None)
    yield f"preset {first.number}; tune, one soft note" if first is not None else "tune, one soft note"
    yield f"unmute {', '.join(ends)}{', one by one' if ends[1:] else ''}" if ends else "unmute what it plays into"
    if cells:
        yield f"after the show: {', '.join(_rested(rig, each) for each in cells)}"


def _on_mains(rig: Rig) -> Iterator[str]:
    """Units with mains leads of their own, and sources that say what mains they take."""
    yield from (unit.name for unit in used_units(rig) if unit.own_mains and not unit.on_battery)
    yield from (name for name, each in rig.instruments.items() if each.mains)


def _amps(rig: Rig) -> Iterator[str]:
    """Those that say what mains they take and have no strip to be switched with; a desk of the house is on already."""
    in_strips = {thing for thing, _, _ in rig.power.plugged}
    for unit in used_units(rig):
        if unit.kind == "amp" and unit.mains and not unit.on_battery and unit.name not in in_strips:
            yield unit.name


def _rested(rig: Rig, unit: Unit | Instrument) -> str:
    return f"{unit.name} off" if has_switch(rig, unit.name) else f"plug out of {unit.name}"


def _settings(settings: SwitchSettings) -> Table:
    rows = tuple(
        Row(
            (
                Cell(f"{each.at}: {each.switch}"),
                Cell(each.position, strong=True),
                Cell(", ".join(each.scenarios) or "all"),
            )
        )
        for each in settings.all
    )
    return Table("settings", "Set and tape", _SETTINGS, rows, empty="no switch has to stand anywhere", tick=True)


def _call(rig: Rig) -> Paragraph:
    """Names that the source has, and room for a number: nobody's telephone stands in a source that goes round."""
    names = dict.fromkeys(filter(None, (rig.head.drawn, rig.head.checked, rig.head.client))) or ("_" * 16,)
    return Paragraph("call", tuple(f"{name}  {'_' * 16}" for name in names), heading="Whom to call")


def _panic(rig: Rig, power: PowerAssignment, leads: Leads, settings: SwitchSettings) -> Table:
    columns = (Column("when it fails", key="symptom"), Column("do"))
    rows = tuple(Row((Cell(symptom, strong=True), Cell(do))) for symptom, do in _failing(rig, power, leads, settings))
    return Table("panic", "Panic", columns, rows)


def _failing(rig: Rig, power: PowerAssignment, leads: Leads, settings: SwitchSettings) -> Iterator[tuple[str, str]]:
    """What is seen or heard, and what to do with what this rig has: one line of the page each."""
    mains = any(supply.takes_mains for supply in used_supplies(rig, power)) or not all(
        unit.on_battery for unit in rig.units.values() if unit.ends
    )
    out = "Mains plug out at the wall" if mains else "All off, batteries and packs away from what they feed"
    yield "smoke, a tingle", f"{out}. Touch no strings, no microphone. It stays {'out' if mains else 'off'}."
    yield (
        "no sound",
        f"Mute, then {'the bypass plan. After the song: ' if rig.bypass_plans else ''}{see('fault-tree')}.",
    )
    for link in radio_links(rig, leads):
        if link.by_lead:
            yield "radio dead", f"Plain lead: {link.by_lead}."
    if rig.supplies:
        yield "one unit dead", f"Outlet lit ({see('power-table')})? Plug home? Another lead; then bypass it."
    lines = [
        name for name, signal in (("MIDI", "midi"), ("USB", "usb")) if any(each.signal == signal for each in leads.all)
    ]
    lift = any("lift" in each.switch for each in settings.all)
    steps = [*([f"{', '.join(lines)} leads out"] if lines else []), *(["ground lift the other way"] if lift else [])]
    yield (
        "hum",
        f"{_capital('; then '.join(steps or ['one lead after the other out and in']))}. Never lift a protective earth.",
    )
    yield "wrong sounds", f"{_preset_anew(rig)}, power off, count to ten, power on."


def _preset_anew(rig: Rig) -> str:
    """A preset that only says which units are on is stored nowhere: feet set it."""
    if any(each.loops or each.programs or each.lines for each in rig.presets.values()):
        return "Call the preset up anew. Else mute"
    return f"Each unit as the {see('preset-sheet')} has it. Else mute" if rig.presets else "Mute"


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


PLACE = 1
SHEET = crew_card
