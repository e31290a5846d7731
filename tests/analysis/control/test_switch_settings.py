"""Switches and settings by scenario, pads that always stand in the way, radio bands. Rigs are invented."""

from __future__ import annotations

from cases import ROOT, results
from small_rigs import block, results_of, unit

from rigc.analysis.control.switch_settings import SwitchSettings
from rigc.analysis.mains.radio_bands import RadioBands
from rigc.analysis.signal.levels.standing_pads import losses_before
from rigc.analysis.tests.due_tests import DueTests
from rigc.model.jacks import Port

GUITAR, COMBO = block("instrument", "guitar"), block("amp", "combo", "input in ts")
PAD = ("passive", "gain -14 dB")


def test_voltage_switches_selectors_and_lifts() -> None:
    found = [
        (each.at, each.switch, each.position, each.scenarios, each.new)
        for each in results(ROOT / "examples/long-haul/board.rig").get(SwitchSettings).all
    ]
    assert found == [
        ("weir8.b5", "outlet voltage", "12 V", (), "9 V"),
        ("weir8.b6", "outlet voltage", "18 V", (), "9 V"),
        ("mill8", "step transformer before it", "100 V to 115 V, 50 VA", ("jp-east", "jp-west"), ""),
        ("mill8", "mains voltage selector", "230 V", ("eu", "uk"), ""),
        ("mill8", "mains voltage selector", "115 V", ("us", "jp-east", "jp-west"), ""),
    ]


def test_a_selector_of_which_a_scenario_says_nothing_is_set_back_all_the_same() -> None:
    fed = unit("marl", "inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", "draws 10 mA")
    both = ("mains 115 V within 10 % 50..60 Hz", "mains 230 V within 10 % 50..60 Hz")
    text = (
        GUITAR + COMBO + fed + "chain guitar -> marl -> combo\n"
        + block("supply", "mill", *both, "outlet o1 9 V dc 100 mA isolated")
        + "power {\n  marl from mill.o1\n}\n"
        + block("scenario", "away", "mains 120 V 60 Hz", "selector mill 115 V")
        + block("scenario", "home", "mains 230 V 50 Hz")
        + block("scenario", "odd", "mains 150 V 50 Hz")
    )  # fmt: skip
    # 230 V is the middle of 207 to 253 V, which takes the mains at home; no position takes 150 V, so none is named
    found = [(each.at, each.position, each.scenarios) for each in results_of(text).get(SwitchSettings).all]
    assert found == [("mill", "115 V", ("away",)), ("mill", "230 V", ("home",))]


def test_a_step_transformer_stands_before_its_supply_where_it_is_stated() -> None:
    fed = unit("marl", "inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", "draws 10 mA")
    text = (
        GUITAR + COMBO + fed + "chain guitar -> marl -> combo\n"
        + block("supply", "mill", "mains 115 V within 10 % 50..60 Hz", "outlet o1 9 V dc 100 mA isolated")
        + "power {\n  marl from mill.o1\n}\n"
        + block("scenario", "us", "mains 120 V 60 Hz")
        + block("scenario", "jp", "mains 100 V 50 Hz", "transformer 100 V to 115 V 50 VA before mill")
    )  # fmt: skip
    found = [(each.at, each.switch, each.position, each.scenarios) for each in results_of(text).get(SwitchSettings).all]
    assert found == [("mill", "step transformer before it", "100 V to 115 V, 50 VA", ("jp",))]


def test_shares_and_polarity_of_a_blender_and_lifts_by_scenario() -> None:
    found = [
        (each.at, each.switch, each.position, each.scenarios)
        for each in results(ROOT / "examples/tide-line/board.rig").get(SwitchSettings).all
    ]
    assert found == [
        ("ferry.di", "ground lift", "open", ("hall",)),
        ("ferry.di", "ground lift", "closed", ("quay",)),
        ("shingle", "share of dry", "50 %", ()),
        ("shingle", "share of wet through groyne and fathom", "50 %", ()),
        ("shingle", "polarity of wet through groyne and fathom", "inverted", ()),
    ]


def limit(text: str, point: str) -> tuple[float | None, float | None]:
    due = next(each for each in results_of(text).get(DueTests).all if each.test == 9 and each.point == point)
    return due.limit.low, due.limit.high


def test_a_pad_that_is_always_in_the_way_is_expected() -> None:
    # 14 dB, and the half dB either way that the test allows at an output: -14.5 to -13.5 dB; 0.3 dB at a unit.
    text = GUITAR + COMBO + unit("spit", *PAD) + unit("marl", "bypass true") + "chain guitar -> spit -> marl -> combo\n"
    assert limit(text, "marl.out") == (-14.5, -13.5)
    assert limit(text, "marl") == (-0.3, 0.3)
    assert limit(text, "spit") == (-14.3, -13.7)


def test_a_passive_transformer_takes_what_it_says_or_what_nobody_knows() -> None:
    box = ("passive", "path in -> out transformer")
    text = GUITAR + COMBO + unit("marl", *box) + "chain guitar -> marl -> combo\n"
    assert limit(text, "marl.out") == (None, None)
    # 20 dB and the half dB either way
    assert limit(text.replace("passive", "passive\n  gain -20 dB"), "marl.out") == (-20.5, -19.5)
    # one that has power of its own makes good what it takes
    assert limit(text.replace("  passive\n", ""), "marl.out") == (-0.5, 0.5)


def test_the_thru_of_a_di_takes_nothing() -> None:
    # The transformer takes 20 dB on the way to the desk alone: 0.5 dB either way at the amp, -20.5 to -19.5 dB at the desk.
    ferry = block(
        "unit", "ferry", "passive", "input in ts", "output thru ts", "output di xlr", "gain -20 dB",
        "path in -> thru straight", "path in -> di transformer",
    )  # fmt: skip
    desk = block("desk", "hall", "input ch xlr")
    text = GUITAR + COMBO + desk + ferry + "chain guitar -> ferry\nchain ferry.thru -> combo\nchain ferry.di -> hall\n"
    assert limit(text, "ferry.thru") == (-0.5, 0.5)
    assert limit(text, "ferry.di") == (-20.5, -19.5)
    at_unit = next(each for each in results_of(text).get(DueTests).all if (each.test, each.point) == (9, "ferry"))
    assert (at_unit.limit.low, at_unit.limit.high) == (-20.3, -19.7)
    assert at_unit.beside == "always in the way of di"


def test_a_pad_that_can_be_taken_out_is_not() -> None:
    box = block(
        "unit", "box", "input in ts", "output out ts", "output s1 ts", "input r1 ts", "loop 1 send s1 return r1"
    )
    text = GUITAR + COMBO + box + unit("spit", *PAD) + "chain guitar -> box -> combo\nloop 1 of box holds spit\n"
    assert limit(text, "box.out") == (-0.5, 0.5)
    assert losses_before(results_of(text).rig, Port("box", "out")) == frozenset((0.0,))
    switched = GUITAR + COMBO + unit("spit", "gain -14 dB", "bypass true") + "chain guitar -> spit -> combo\n"
    assert limit(switched, "spit.out") == (-0.5, 0.5)


def test_an_amp_begins_a_way_anew() -> None:
    # 8 kohm in line and 2 kohm across, behind the amp's own send: -14 dB of what comes out of it.
    found = results(ROOT / "examples/tide-line/board.rig").get(DueTests).all
    limits = {each.point: (each.limit.low, each.limit.high) for each in found if each.test == 9}
    assert limits["ebb.out"] == (-14.5, -13.5)
    assert limits["ferry.thru"] == (-0.5, 0.5)


def test_radio_bands_by_scenario() -> None:
    places = "".join(
        block("scenario", name, *lines)
        for name, lines in (("hall", ["country DE"]), ("bay", ["country JP"]), ("home", []))
    )
    heron = block("unit", "heron", "input air wireless", "output out ts", "band 823..832 MHz allowed FR, DE")
    bands = results_of(places + GUITAR + COMBO + heron + "chain guitar -> heron -> combo\n").get(RadioBands)
    assert [(each.scenario, each.country, each.allowed) for each in bands.all] == [
        ("hall", "DE", True), ("bay", "JP", False), ("home", None, None),
    ]  # fmt: skip
