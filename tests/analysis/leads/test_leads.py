"""Leads from connections and feeds: numbers, legs, plugs, stage leads. Numbers are a convention of this project."""

from __future__ import annotations

from typing import Any

import pytest
from boards_by_hand import SPAN, STOCK, board, deck, fact, panel, port, stand
from small_rigs import results_of

from rigc.analysis.feeds.power_assignment import PowerAssignment, Supplied
from rigc.analysis.leads.lead_numbers import LeadNumbers, in_order, without_leg
from rigc.analysis.leads.leads import Lead, Leads, leads
from rigc.analysis.leads.stated_length import stated_length
from rigc.model.jacks import Connector, Jack
from rigc.model.rig import Rig
from rigc.model.stock import Cable, Plug, Stock
from rigc.model.things import Instrument, Outlet, Supply, Unit
from rigc.model.wishes import Connection, LeadFacts, LeadWishes, When

PLATE = deck(600, 400, 10, 150)
BARREL = Connector("barrel", 5.5, 2.1)


def _kind(name: str, fits: str, wide: float, **more: Any) -> Plug:
    connector = BARREL if fits == "barrel" else Connector(fits)
    return Plug(name, "", SPAN, fits=(connector,), width_mm=fact(wide), height_mm=fact(wide), exit_mm=fact(8), **more)


KINDS = {
    each.name: each
    for each in (
        _kind("flat", "ts", 27),
        _kind("angle", "ts", 16),
        _kind("three", "trs", 16),
        _kind("dc", "barrel", 11),
        _kind("panel", "ts", 0, soldered=True),
    )
}
CABLES = {
    name: Cable(name, "", SPAN, signal) for name, signal in (("coax", "audio"), ("thick", "audio"), ("twin", "dc"))
}
SHOP = Stock(CABLES, KINDS, {}, STOCK.premade_mm)
UNITS = tuple(
    stand(name, 100 * at, 0, "60 100 50", "in:R50/20 out:L50/20 dc:B30/20") for at, name in enumerate("abcde", 1)
)


def link(start: str, end: str, signal: str = "audio", stereo: bool = False) -> Connection:
    return Connection(port(start), port(end), signal, stereo, "chain", When(), SPAN)


def stated(mark: str, start: str, end: str, **more: Any) -> LeadFacts:
    values: dict[str, Any] = dict.fromkeys(LeadFacts.FIELDS) | {
        "premade": False,
        "made_in": "",
        "span": SPAN,
        "mark_span": SPAN,
    }
    return LeadFacts(**(values | {"mark": mark, "start": port(start), "end": port(end)} | more))


def wired(*links: Connection, wishes: LeadWishes | None = None, feeds: str = "", **more: Any) -> dict[str, Lead]:
    """The leads by number; `feeds` as `a:o1 b:o1 c:o2+o3`."""
    rig: Rig = board(PLATE, *UNITS, stock=SHOP, connections=links, lead_wishes=wishes or LeadWishes(), **more)
    units = {name: _with_inlet(unit) for name, unit in rig.units.items()}
    rig = rig.replace(units=units, supplies={"s": _supply()})
    fed = tuple(
        Supplied(unit, tuple(port(f"s.{each}") for each in outlets.split("+")), 9.0, "dc", "", False, True, SPAN)
        for unit, outlets in (feed.split(":") for feed in feeds.split())
    )
    made = leads(rig, PowerAssignment(fed, {}, (), {}, {}, 0)).all
    assert len({lead.mark for lead in made}) == len(made)
    return {lead.mark: lead for lead in made}


def _with_inlet(unit: Unit) -> Unit:
    jacks = (jack.replace(role="inlet", connector=BARREL) if jack.name == "dc" else jack for jack in unit.jacks)
    return unit.replace(jacks=tuple(jacks))  # type: ignore[no-any-return]


def _supply() -> Supply:
    outlets = (Outlet(name, (), None, None, None, "front", None, None, SPAN) for name in ("o1", "o2", "o3"))
    return Supply("supply", "s", "", SPAN, outlets=tuple(outlets))


CHAIN = (link("a.out", "b.in"), link("b.out", "c.in"), link("c.out", "d.in"))


def test_numbers_follow_the_connections() -> None:
    made = wired(*CHAIN)
    assert {mark: str(lead.start) for mark, lead in made.items()} == {"A1": "a.out", "A2": "b.out", "A3": "c.out"}
    assert not made["A1"].stated


def test_stated_numbers_stay_and_others_come_above_them_and_the_retired() -> None:
    wishes = LeadWishes((stated("A04", "b.out", "c.in", run="under"),), retired=(("A07", SPAN),))
    made = wired(*CHAIN, wishes=wishes)
    assert {mark: str(lead.start) for mark, lead in made.items()} == {"A04": "b.out", "A08": "a.out", "A09": "c.out"}
    assert (made["A04"].stated, made["A04"].run) == (True, "under")


def test_each_class_counts_for_itself() -> None:
    made = wired(link("a.out", "b.in"), link("c.out", "d.in", "control"), link("d.out", "e.in", "midi"), feeds="a:o1")
    assert list(made) == ["A1", "C1", "M1", "D1"]


def test_units_on_one_outlet_get_the_legs_of_a_y_lead() -> None:
    made = wired(feeds="a:o1 b:o2 c:o1")
    assert {mark: (lead.leg_of, str(lead.end)) for mark, lead in made.items()} == {
        "D1a": ("D1", "a.dc"),
        "D1b": ("D1", "c.dc"),
        "D2": (None, "b.dc"),
    }


def test_a_stated_leg_names_the_y_lead() -> None:
    wishes = LeadWishes((stated("D7b", "s.o1", "c.dc"),))
    made = wired(feeds="a:o1 b:o2 c:o1", wishes=wishes)
    assert {mark: lead.leg_of for mark, lead in made.items()} == {"D7a": "D7", "D7b": "D7", "D8": None}


def test_a_unit_on_two_outlets_has_a_lead_from_each() -> None:
    made = wired(feeds="a:o1+o2")
    assert [(mark, str(lead.start), lead.leg_of) for mark, lead in made.items()] == [
        ("D1", "s.o1", None),
        ("D2", "s.o2", None),
    ]


def test_one_pair_in_two_chains_is_one_lead() -> None:
    assert list(wired(CHAIN[0], CHAIN[0])) == ["A1"]


def test_a_stated_lead_that_nothing_else_names_is_not_lost() -> None:
    made = wired(wishes=LeadWishes((stated("D3", "s.o1", "a.dc"), stated("A1", "a.out", "b.in"))))
    assert {mark: lead.signal for mark, lead in made.items()} == {"A1": "audio", "D3": "dc"}


def test_stage_leads() -> None:
    guitar = Instrument("guitar", "", SPAN, lead_cable="thick", jacks=(Jack("out", "output", Connector("ts"), SPAN),))
    radio = Instrument("radio", "", SPAN, jacks=(Jack("out", "output", Connector("wireless"), SPAN),))
    made = wired(
        link("guitar.out", "a.in"), link("radio.out", "b.in"), CHAIN[0], instruments={"guitar": guitar, "radio": radio}
    )
    assert {mark: (lead.stage, lead.cable) for mark, lead in made.items()} == {
        "A1": (True, "thick"),
        "A2": (False, "coax"),
    }


def _close(pitch: float, height: float = 20) -> dict[str, tuple[str | None, str | None]]:
    """The chosen plugs where unit f has its audio jacks that far apart on its rear, one of them at a height."""
    unit, place = stand("f", 0, 200, "120 100 50", f"in:B20/20 out:B{20 + pitch}/{height}")
    rig = board(PLATE, UNITS[0], (unit, place), stock=SHOP, connections=(link("a.out", "f.in"), link("f.out", "a.in")))
    return {lead.mark: lead.ends for lead in leads(rig, PowerAssignment((), {}, (), {}, {}, 0)).all}


@pytest.mark.parametrize(
    ("pitch", "height", "plug"),
    [(27, 20, "flat"), (26, 20, "angle"), (26, 47, "flat"), (26, 46, "angle"), (10, 20, "flat")],
    ids=["just wide enough", "too near", "one above the other", "not quite above", "none is narrow enough"],
)
def test_the_first_plug_that_clears_its_neighbour(pitch: float, height: float, plug: str) -> None:
    assert _close(pitch, height)["A1"] == ("flat", plug)


def test_a_narrow_power_plug_beside_it_counts() -> None:
    # flat 27 and barrel plug 11: (27 + 11) / 2 = 19 > 17, angle: (16 + 11) / 2 = 13.5
    unit, place = stand("a", 0, 200, "120 100 50", "in:B52/30 dc:B35/30")
    rig = board(PLATE, (_with_inlet(unit), place), UNITS[1], stock=SHOP, connections=(link("b.out", "a.in"),))
    rig = rig.replace(supplies={"s": _supply()})
    fed = Supplied("a", (port("s.o1"),), 9.0, "dc", "", False, True, SPAN)
    made = leads(rig, PowerAssignment((fed,), {}, (), {}, {}, 0)).all
    assert [lead.plugs for lead in made] == [("flat", "angle"), ("dc", "dc")]
    unfed = leads(rig, PowerAssignment((), {}, (), {}, {}, 0)).all
    assert [lead.plugs for lead in unfed] == [("flat", "flat")]


def test_the_rig_may_choose_the_plug() -> None:
    assert wired(CHAIN[0], wishes=LeadWishes(plugs=(("audio", "angle"),)))["A1"].plugs == ("angle", "angle")


def test_stated_plugs_win() -> None:
    made = wired(CHAIN[0], wishes=LeadWishes((stated("A1", "a.out", "b.in", plugs=("angle", "flat")),)))
    assert (made["A1"].plugs, made["A1"].plugs_stated) == (("angle", "flat"), True)


def test_a_three_pole_jack_takes_a_three_pole_plug_and_a_panel_jack_is_soldered() -> None:
    unit, place = stand("t", 0, 200, "120 100 50", "exp:B52/30")
    unit = unit.replace(jacks=(unit.jacks[0].replace(connector=Connector("trs")),))
    rig = board(
        PLATE, (unit, place), stock=SHOP, panels=(panel("p", l=(5, 5)),), connections=(link("t.exp", "p.l", "control"),)
    )
    assert leads(rig, PowerAssignment((), {}, (), {}, {}, 0)).all[0].plugs == ("three", "panel")


def test_no_plug_fits() -> None:
    unit, place = stand("x", 0, 200, "120 100 50", "out:B52/30")
    unit = unit.replace(jacks=(unit.jacks[0].replace(connector=Connector("xlr")),))
    rig = board(PLATE, (unit, place), UNITS[0], stock=SHOP, connections=(link("x.out", "a.in"),))
    lead = leads(rig, PowerAssignment((), {}, (), {}, {}, 0)).all[0]
    assert (lead.ends, lead.plugs) == ((None, "flat"), None)


def test_a_captive_lead_has_one_plug_and_its_length() -> None:
    unit, place = UNITS[0]
    unit = _with_inlet(unit)
    unit = unit.replace(jacks=tuple(j.replace(captive_mm=fact(300)) if j.name == "dc" else j for j in unit.jacks))
    rig = board(PLATE, (unit, place), stock=SHOP).replace(supplies={"s": _supply()})
    fed = Supplied("a", (port("s.o1"),), 9.0, "dc", "", False, True, SPAN)
    lead = leads(rig, PowerAssignment((fed,), {}, (), {}, {}, 0)).all[0]
    assert (lead.ends, lead.captive, lead.existing_mm) == (("dc", None), port("a.dc"), fact(300))


def test_numbers_are_as_wide_as_those_in_use() -> None:
    numbers = LeadNumbers(("A009", "D2a", "Y1", "no number"))
    assert [numbers.next("audio"), numbers.next("dc"), numbers.next("midi")] == ["A010", "D3", "M1"]


def test_marks_in_order() -> None:
    assert sorted(("A10", "A2", "A1b", "A1a"), key=in_order) == ["A1a", "A1b", "A2", "A10"]
    assert [without_leg(mark) for mark in ("D2a", "D10", "X")] == ["D2", "D10", "X"]


def test_the_lead_of_a_synthesizer_to_the_board_is_not_its_midi_lead() -> None:
    text = (
        "cable stage-coax {\n  carries audio\n}\nsource keys {\n  keyboard\n  earthed\n  output out ts\n  midi out send din\n  lead 3 m of stage-coax\n}\n"
        "unit lant {\n  input in ts\n  output out ts\n  midi in receive din\n}\nchain keys -> lant\n"
        "midi {\n  master keys\n  keys.send -> lant.receive\n}\n"
    )
    results = results_of(text)
    made = results.get(Leads).all
    lengths = {lead.mark: stated_length(results.rig, lead) for lead in made}
    assert {lead.mark: (lead.cable, None if (mm := lengths[lead.mark]) is None else mm.value) for lead in made} == {
        "A1": ("stage-coax", 3000),
        "M1": (None, None),
    }


def test_a_stage_lead_without_sound_is_of_the_cable_that_the_rig_names() -> None:
    """Of the stock's first it is not: that is for leads on the board."""
    text = (
        "cable thin {\n  carries control\n}\ncable tough {\n  carries control\n}\n"
        "amp combo {\n  input in ts\n  control in channel ts contact\n}\nunit box {\n  output out ts\n  control out ch ts relay\n}\n"
        "control {\n  box.ch -> combo.channel\n}\n"
    )
    for more, cable in (("", None), ("leads {\n  control cable tough\n}\n", "tough")):
        assert [lead.cable for lead in results_of(text + more).get(Leads).all] == [cable]
