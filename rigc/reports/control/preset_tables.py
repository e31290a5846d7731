"""Songs, presets and program changes -> the tables of the preset sheet."""

from __future__ import annotations

from rigc.analysis.control.control_map import ControlMap
from rigc.analysis.control.preset_figures import PresetFigures
from rigc.analysis.control.program_change import ProgramChange
from rigc.diagnostics.decimals import decimals
from rigc.model.rig import Rig
from rigc.model.ways.preset_loops import preset_loops
from rigc.model.wishes import Preset, Song
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.traced.figure import Figure

_SONGS = (
    Column("song"),
    Column("preset", number=True),
    Column("title"),
    Column("loops on"),
    Column("units on", folds="on: {}"),
    Column("units off", folds="off: {}"),
    Column("programs, as the units show them", key="programs"),
    Column("switch lines", key="lines"),
    Column("tempo", "bpm", number=True),
    Column("tuning"),
    Column("volume floor"),
    Column("note"),
)
_PROGRAMS = (
    Column("preset", number=True),
    Column("unit"),
    Column("shown on the unit", key="shown", number=True),
    Column("channel", number=True),
    Column("as sent", number=True),
    Column("bytes, hexadecimal", key="bytes"),
    Column("on the wire", "ms", number=True, folds="{} on the wire"),
)
_KNOBS = (Column("song"), Column("unit"), Column("knob"), Column("points to"))


def song_table(rig: Rig, figures: PresetFigures) -> Table:
    """A row for each song with its preset, then a row for each preset that no song plays."""
    rows = []
    for place, song in enumerate(rig.songs, 1):
        preset = rig.presets.get(-1 if song.preset is None else song.preset)
        tempo = figures.songs.get(place) or (None if preset is None else figures.tempos.get(preset.number))
        rows.append(_row(rig, song, preset, figures, tempo))
    played = {song.preset for song in rig.songs}
    for number, preset in rig.presets.items():
        if number not in played:
            rows.append(_row(rig, None, preset, figures, figures.tempos.get(number)))
    return Table("songs", "Songs and presets", _SONGS, tuple(rows), empty="", landscape=True)


def program_table(rig: Rig, control: ControlMap) -> Table:
    """A row for each program of each preset: as shown on the unit, as sent, and the time of the whole preset."""
    rows: list[Row] = []
    for preset, changes in control.programs.items():
        rows += [_program(change, rig.midi_master) for change in changes]
        if preset in control.times:
            unknown = any(change.channel is not None and not change.octets for change in changes)
            total = Cell(control.times[preset].text, mark="at least" if unknown else "")
            rows.append(Row((Cell(str(preset)), Cell("all"), *(Cell(""),) * 4, total), total=True))
    return Table("programs", "Programs: as shown and as sent", _PROGRAMS, tuple(rows), empty="")


def knob_table(rig: Rig) -> Table:
    """A row for each knob that a song sets."""
    rows = tuple(
        Row((Cell(song.title), Cell(unit), Cell(knob), Cell(f"{hour} o'clock")))
        for song in rig.songs
        for unit, knob, hour in song.settings
    )
    return Table("knobs", "Knobs", _KNOBS, rows, empty="")


def _row(rig: Rig, song: Song | None, preset: Preset | None, figures: PresetFigures, tempo: Figure | None) -> Row:
    """The tempo of a song goes before that of its preset."""
    notes = [*(song.notes if song else ()), *(preset.notes if preset else ())]
    return Row(
        (
            Cell(song.title if song else "", strong=True),
            figure_cell(None if preset is None else figures.numbers[preset.number], lacking=""),
            *(preset_cells(rig, preset) if preset else (Cell(""),) * 6),
            figure_cell(tempo, lacking=""),
            Cell(song.tuning if song else ""),
            floor_cell(preset),
            Cell("; ".join(notes)),
        )
    )


def floor_cell(preset: Preset | None) -> Cell:
    """How far each treadle goes down in a preset; empty without one."""
    floors = () if preset is None else preset.floors
    return Cell(", ".join(f"{name} {decimals(floor.value)} %" for name, floor in floors))


def preset_cells(rig: Rig, preset: Preset) -> tuple[Cell, ...]:
    """Its title, the loops and units that it switches, the programs that it calls, and how switch lines stand."""
    loops = list(preset_loops(rig, preset))
    several = len({switcher for switcher, _, _ in loops}) > 1
    return (
        Cell(preset.title),
        Cell(", ".join(f"{switcher} {loop}" if several else str(loop) for switcher, loop, _ in loops)),
        Cell(", ".join(name for name, _ in preset.on)),
        Cell(", ".join(name for name, _ in preset.off)),
        Cell(", ".join(f"{name} {program}" for name, program, _ in preset.programs)),
        Cell("; ".join(line.words for line in preset.lines)),
    )


def _program(change: ProgramChange, master: str | None) -> Row:
    unsent = "by itself" if change.unit == master else "by hand"
    lacking = "not known" if change.first is None else "NO SUCH PROGRAM"
    mark = unsent if change.channel is None else "" if change.octets else lacking
    return Row(
        (
            Cell(str(change.preset)),
            Cell(change.unit),
            figure_cell(change.program, strong=True),
            Cell("" if change.channel is None else str(change.channel)),
            Cell("", mark=mark) if change.sent is None else figure_cell(change.number),
            Cell(change.hexadecimal),
            figure_cell(change.wire, lacking=""),
        )
    )
