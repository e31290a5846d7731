"""Crew card and stage hook-up: their cells, from the touring example and the one with two amps."""

from __future__ import annotations

import pytest
from cases import ROOT, compiled
from small_rigs import block, results_of, unit

from rigc.reports.content import Drawing, Paragraph, Sheet, Table
from rigc.reports.drawings.shapes import Label, Shape, Symbol
from rigc.reports.front.sheet_codes import see
from rigc.reports.sheets.stage.crew_card import crew_card
from rigc.reports.sheets.stage.stage_hook_up import stage_hook_up


def sheet(example: str, name: str) -> Sheet:
    (made,) = compiled(ROOT / "examples" / example / "board.rig").sheets((name,))
    return made


def rows(sheet: Sheet, name: str) -> list[list[str]]:
    block = sheet.block(name)
    assert isinstance(block, Table)
    return [[cell.text for cell in row.cells] for row in block.rows]


@pytest.fixture(scope="module")
def card() -> Sheet:
    return sheet("long-haul-d", "crew-card")


def test_amps_come_last(card: Sheet) -> None:
    """Muted first, unmuted last, one by one; mains between, and theirs behind all else."""
    steps = [row[1] for row in rows(card, "on")]
    assert steps == [
        "mute left-amp, right-amp",
        "stage leads in (stage hook-up)",
        "set and tape, as listed",
        "mains in: mill8, weir8; wait until all is lit",
        "radio on, on an allowed frequency",
        "switch on left-amp, right-amp, muted",
        "preset 1; tune, one soft note",
        "unmute left-amp, right-amp, one by one",
    ]


def test_settings_to_tape(card: Sheet) -> None:
    assert rows(card, "settings") == [
        ["weir8.b5: outlet voltage", "12 V", "all"],
        ["weir8.b6: outlet voltage", "18 V", "all"],
        ["mill8: step transformer before it", "100 V to 115 V, 50 VA", "jp-east, jp-west"],
        ["mill8: mains voltage selector", "230 V", "eu, uk"],
        ["mill8: mains voltage selector", "115 V", "us, jp-east, jp-west"],
    ]


def test_the_plan_the_bypass_and_whom_to_call(card: Sheet) -> None:
    assert isinstance(card.blocks[0], Drawing)
    call, bypass = card.block("call"), sheet("tide-line", "crew-card").block("bypass_plan")
    assert isinstance(call, Paragraph) and isinstance(bypass, Paragraph)
    assert [line.split("  ")[0] for line in call.lines] == ["R.K.", "T.O.", "player B"]
    assert bypass.lines == ("baritone.out → ferry.in: lead in the lid, from the guitar into the DI",)


def test_a_protective_earth_is_never_lifted(card: Sheet) -> None:
    assert [
        "hum",
        "MIDI leads out. Never lift a protective earth.",
    ] in rows(card, "panic")


def test_stage_hook_up() -> None:
    """Lead, from, to, plugs, cable, length, nominal level; the lift of the DI stands otherwise in each scenario."""
    told = {row[0]: row for row in rows(sheet("tide-line", "stage-hook-up"), "stage")}
    assert told["A9"][1:3] == ["ferry.di", "front-desk.ch"]
    assert told["A9"][6:] == ["15000", "−40", "open (hall); closed (quay)"]
    assert told["A8"][7] == "−20 to −17"


def test_where_only_some_amps_are_played() -> None:
    assert rows(sheet("tide-line", "stage-hook-up"), "scenarios")[2] == ["quay", "desk alone, on the quay", "all"]


def test_what_stands_beside_the_board() -> None:
    """What it is, where, its leads, and the strip that it is plugged into; a thing in no strip and at no stated place."""
    case = ROOT / "tests/syntax/sentences"
    (wart,) = compiled(case / "203-plug-top-supply.rig").sheets(("stage-hook-up",))
    assert rows(wart, "beside") == [["wart", "plug-top supply", "in the strip on the floor", "D1", "bar"]]
    (heron,) = compiled(case / "204-unit-off-the-board.rig").sheets(("stage-hook-up",))
    assert rows(heron, "beside") == [["heron", "receiver", "on the amp", "A1, D1", ""]]
    assert [row[:3] for row in rows(heron, "stage")] == [
        ["A1", "heron.out", "plumb.in"],
        ["A2", "plumb.out", "combo.in"],
        ["D1", "mill.o1", "heron.dc"],
    ]


def written(shapes: tuple[Shape, ...]) -> list[str]:
    """All labels, also those of symbols."""
    found = []
    for shape in shapes:
        found += (
            [shape.text] if isinstance(shape, Label) else written(shape.shapes) if isinstance(shape, Symbol) else []
        )
    return found


def test_the_numbers_of_the_leads_stand_at_the_jacks(card: Sheet) -> None:
    """Those of what is seen from above, once at each end: A02 goes from the switcher to the first loop, D01 ends at its unit."""
    plan = card.blocks[0]
    assert isinstance(plan, Drawing)
    told = written(plan.shapes)
    assert [told.count(mark) for mark in ("A02", "D01", "M04", "A27, A30")] == [2, 1, 1, 1]
    assert {"front edge (player)", "mains"} <= set(told)
    assert not [text for text in told if text.startswith("Without room")]
    assert plan.width_mm == 180


def test_what_helps_is_what_the_rig_has() -> None:
    """Without presets, MIDI, a bypass plan: a rig with a ground lift, and one without."""
    told = {row[0]: row[1] for row in rows(sheet("harbour-keys", "crew-card"), "panic")}
    assert told["hum"] == "Ground lift the other way. Never lift a protective earth."
    assert told["no sound"] == "Mute, then fault tree."
    assert told["wrong sounds"] == "Mute, power off, count to ten, power on."
    told = {row[0]: row[1] for row in rows(sheet("tide-line", "crew-card"), "panic")}
    assert told["no sound"] == "Mute, then the bypass plan. After the song: fault tree."


def test_presets_that_feet_set_are_not_called_up() -> None:
    """A preset that only says which units are on is stored nowhere."""
    feet = results_of(unit("marl") + block("preset", "1", "on marl")).call(crew_card)
    assert [
        "wrong sounds",
        f"Each unit as the {see('preset-sheet')} has it. Else mute, power off, count to ten, power on.",
    ] in rows(feet, "panic")


def test_decks_are_joined_on_the_stage() -> None:
    """The leads between two decks lie on neither: they are on the hook-up, and the card says so before what leaves the decks."""
    joined = results_of(
        unit("marl")
        + unit("hedge")
        + "deck left {\n  size 300 x 300 mm\n}\ndeck right {\n  size 300 x 300 mm\n}\n"
        + "place on left {\n  marl at 0, 0 mm\n}\nplace on right {\n  hedge at 0, 0 mm\n}\nchain marl -> hedge\n"
        + "leads {\n  A8 marl.out -> hedge.in made 1.2 m\n}\njoin left to right by A8\n"
    )
    assert rows(joined.call(crew_card), "on")[1] == ["2", "join left to right: A8"]
    hook_up = joined.call(stage_hook_up)
    assert isinstance(hook_up, Sheet)
    assert rows(hook_up, "joined") == [["A8", "marl.out", "hedge.in", "", "", "", "1200", "left to right"]]
    assert rows(hook_up, "stage") == []


def test_without_a_name_whom_to_call_has_a_blank() -> None:
    """A sheet's template puts its blocks where they go: none may be missing."""
    nobody = results_of("instrument guitar {\n}\namp combo {\n}\nchain guitar -> combo\n")
    call = nobody.call(crew_card).block("call")
    assert isinstance(call, Paragraph) and call.lines == ("________________  ________________",)
