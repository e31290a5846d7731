"""The preset sheet: songs and presets, programs as shown and as sent, knobs as text and as clock faces."""

from __future__ import annotations

from cases import ROOT, results
from small_rigs import results_of, unit
from written import changed

from rigc.analysis.results import Results
from rigc.reports.content import Drawing, Sheet, Table
from rigc.reports.drawings.shapes import Label, Polygon
from rigc.reports.sheets.stage.preset_sheet import preset_sheet

TOURING = "examples/long-haul/board.rig"


def rows(of: Results, name: str) -> list[list[str]]:
    """The cells of a table's rows, marks in brackets behind the text."""
    sheet: Sheet = of.call(preset_sheet)
    table = sheet.block(name)
    assert isinstance(table, Table)
    return [[f"{cell.text} [{cell.mark}]" if cell.mark else cell.text for cell in row.cells] for row in table.rows]


def test_songs_of_the_touring_board() -> None:
    """Three songs, then the preset that none plays; a song's tempo and tuning; the floor of the volume treadle."""
    found = rows(results(ROOT / TOURING), "songs")
    assert [row[:4] for row in found] == [
        ["Salt Road", "1", "Plain", "2"],
        ["Night Ferry", "3", "Lift", "4, 5, 8"],
        ["Long Haul", "4", "Wall", "3, 6"],
        ["", "2", "Drive", "2, 4"],
    ]
    programs = "weathervane 2, lantxl 4, rotundaxl 6"
    assert found[1][6:] == [programs, "", "96", "half a step down", "", "loop 8 first, then the lift"]
    assert found[2][8:11] == ["138", "", "slipway 20 %"]


def test_a_song_goes_before_its_preset() -> None:
    """Both state a tempo: the song's is printed."""
    made = changed(
        TOURING,
        ('song "Night Ferry" {\n  preset 3\n  tempo 96 bpm', 'song "Night Ferry" {\n  preset 3\n  tempo 99 bpm'),
    )
    assert rows(made, "songs")[1][8] == "99"


def test_programs_as_shown_and_as_sent() -> None:
    """rotundaxl counts from 1: it shows 6, 5 is sent on channel 3 = C2 05; 3 x 0.64 = 1.92 ms."""
    found = [row for row in rows(results(ROOT / TOURING), "programs") if row[0] == "3"]
    assert found == [
        ["3", "weathervane", "2", "1", "2", "C0 02", "0.64"],
        ["3", "lantxl", "4", "2", "4", "C1 04", "0.64"],
        ["3", "rotundaxl", "6", "3", "5", "C2 05", "0.64"],
        ["3", "all", "", "", "", "", "1.92"],
    ]


def test_what_is_not_sent_or_not_known() -> None:
    """Offset not stated: no bytes, and the sum is a least; out of range; a unit without MIDI is set by hand."""
    made = changed(
        TOURING,
        ("lantxl channel 2 programs from 0", "lantxl channel 2"),
        (
            'preset 1 "Plain" {\n  loops 2 of signalbox\n',
            'preset 1 "Plain" {\n  program 7 on marl\n  program 8 on signalbox\n',
        ),
        (
            'preset 2 "Drive" {\n  loops 2, 4 of signalbox\n  program 0 on weathervane',
            'preset 2 "Drive" {\n  program 128 on weathervane',
        ),
    )
    found = rows(made, "programs")
    assert found[0] == ["1", "marl", "7", "", " [by hand]", "", ""]
    assert found[1][4] == " [by itself]"
    assert found[3] == ["1", "lantxl", "0", "2", " [not known]", "", ""]
    assert found[5] == ["1", "all", "", "", "", "", "1.28 [at least]"]
    assert found[6][4:6] == [" [NO SUCH PROGRAM]", ""]


def test_clock_faces() -> None:
    """A pointer at 3 o'clock points right, at 12 up, at 6 down, at 9 left; a word for each beside it."""
    hours = {3: (1, 0), 12: (0, -1), 6: (0, 1), 9: (-1, 0)}
    settings = "".join(f'  set lant "k{hour}" at {hour} oclock\n' for hour in hours)
    made = results_of(unit("lant") + f'song "Low Gate" {{\n{settings}}}\n')
    sheet: Sheet = made.call(preset_sheet)
    face = sheet.block("knobs_1")
    assert isinstance(face, Drawing)
    pointers = [shape.points for shape in face.shapes if isinstance(shape, Polygon)]
    for (one, tip, other), (right, down) in zip(pointers, hours.values(), strict=True):
        across, along = tip[0] - (one[0] + other[0]) / 2, tip[1] - (one[1] + other[1]) / 2
        assert (across > 1) - (across < -1) == right
        assert (along > 1) - (along < -1) == down
    words = [shape.text for shape in face.shapes if isinstance(shape, Label)]
    assert words[:3] == ["3 o'clock", "lant", "k3"]
    assert "lant k12 at 12 o'clock" in face.desc
    assert rows(made, "knobs")[0] == ["Low Gate", "lant", "k3", "3 o'clock"]


def test_many_and_long_names_stay_on_the_page() -> None:
    """Faces go on in further rows; the drawing is no wider than a landscape page takes, and all lies inside it."""
    settings = "".join(f'  set lant "a rather long name of knob {n}" at 5 oclock\n' for n in range(1, 12))
    sheet: Sheet = results_of(unit("lant") + f'song "Low Gate" {{\n{settings}}}\n').call(preset_sheet)
    face = sheet.block("knobs_1")
    assert isinstance(face, Drawing)
    assert face.width_mm <= 240
    labels = [shape for shape in face.shapes if isinstance(shape, Label)]
    assert len(labels) == 33
    assert all(0 < shape.x < face.width_mm and 0 < shape.y < face.height_mm for shape in labels)
