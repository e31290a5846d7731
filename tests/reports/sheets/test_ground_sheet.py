"""The ground sheet of both worked boards and of a DI whose lift differs by scenario; its drawing. Rigs are invented."""

from __future__ import annotations

from cases import ROOT, results
from small_rigs import block, results_of, unit

from rigc.analysis.results import Results
from rigc.reports.content import Drawing, Paragraph, Sheet, Table
from rigc.reports.drawings.ground.closing_links import closing_lines, right_of
from rigc.reports.drawings.shapes import LETTERS, Label, Polyline, Symbol
from rigc.reports.sheets.power.ground_sheet import ground_sheet

AMP = ("earthed", "input in ts")


def made(of: Results) -> Sheet:
    sheet: Sheet = of.call(ground_sheet)
    return sheet


def rows(sheet: Sheet, name: str) -> list[dict[str, str]]:
    """The rows of a table by their headings, marks in brackets behind the text."""
    table = sheet.block(name)
    assert isinstance(table, Table)
    heads = [column.key or column.head for column in table.columns]
    texts = [[f"{cell.text} [{cell.mark}]" if cell.mark else cell.text for cell in row.cells] for row in table.rows]
    return [dict(zip(heads, row, strict=True)) for row in texts]


def drawings(sheet: Sheet) -> list[Drawing]:
    return [block for block in sheet.blocks if isinstance(block, Drawing)]


def words(drawing: Drawing) -> set[str]:
    return {shape.text for shape in drawing.shapes if isinstance(shape, Label)}


def directed() -> Results:
    """A DI whose lift is open with the amp and closed at the desk alone; a switching lead by relay."""
    text = block("scenario", "stage", "amps combo, foh", "lift di.out open")
    text += block("scenario", "direct", "amps foh", "lift di.out closed") + block("instrument", "guitar")
    text += block("amp", "combo", *AMP) + block("desk", "foh", "earthed", "input in xlr")
    text += block("unit", "di", "input in ts", "output thru ts", "output out xlr", "path in -> thru straight",
                  "path in -> out transformer")  # fmt: skip
    text += unit("marl", "control out sw ts relay") + unit("lant", "control in tap ts")
    text += "chain guitar -> marl -> lant -> di\nchain back: di.thru -> combo\nchain hall: di.out -> foh\n"
    return results_of(text + "control {\n  marl.sw -> lant.tap\n}\n")


def test_touring_rig() -> None:
    """Two systems with one earth each, eleven silent pairs, and the isolator told with its leads and lift."""
    sheet = made(results(ROOT / "examples/long-haul/board.rig"))
    everywhere = "eu, uk, us, jp-east, jp-west"
    systems = rows(sheet, "systems")
    assert [(row["scenario"], row["earth references"], row["verdict"]) for row in systems] == [
        (everywhere, "1: left-amp", "one, right"),
        (everywhere, "1: right-amp", "one, right"),
    ]
    (pairs,) = rows(sheet, "rings")
    assert pairs["kind"] == "pair"
    assert pairs["ring"].startswith("11 pairs: A02 + A03, A04 + A05")
    assert rows(sheet, "breaks") == [
        {
            "scenario": everywhere,
            "at": "canaltwo.outr",
            "how": "transformer, shield lifted",
            "leads": "A28 + A31",
            "beyond": "right-amp",
            "lift position": "lifted",
        }
    ]


def test_home_rig() -> None:
    """One ring through the shared outlet with its figures, and how to break it."""
    sheet = made(results(ROOT / "examples/back-bedroom/board.rig"))
    (ring,), (hum,) = rows(sheet, "rings"), rows(sheet, "hum")
    assert ring["kind"] == "shared supply"
    assert hum["leads"] == "D2a, A4, D2b"
    assert 0.0255 < float(hum["area"]) < 0.102  # by hand about 0.051 m²
    assert (hum["frequency"], hum["gain_db"]) == ("50", "0")
    assert "isolated outlet" in ring["where to break it"]


def test_two_earths_fail() -> None:
    """As ordered: the system with both amps fails, and the way to break it spares the earth."""
    sheet = made(results(ROOT / "tests/rigs/long-haul-as-ordered.rig"))
    assert [row["verdict"] for row in rows(sheet, "systems")] == ["too many [FAIL]"]
    ring = rows(sheet, "rings")[0]
    assert ring["kind"] == "two earths"
    assert ring["where to break it"].endswith("never lift a mains earth")
    assert "the mains" in words(drawings(sheet)[0])


def test_lift_by_scenario() -> None:
    """A row for each scenario and lift, in its position; a relay is told in both."""
    found = [(row["scenario"], row["at"], row["how"], row["lift position"]) for row in rows(made(directed()), "breaks")]
    assert found == [
        ("stage", "di.out", "transformer, lift open", "open"),
        ("stage", "marl.sw", "relay", ""),
        ("direct", "marl.sw", "relay", ""),
        ("direct", "di.out", "ground lift", "closed"),
    ]


def test_a_drawing_for_each_way_of_joining() -> None:
    """Both scenarios join grounds in their own way: two drawings, with their own names."""
    stage, direct = drawings(made(directed()))
    assert (stage.name, direct.name) == ("grounds-1", "grounds-2")
    assert (stage.title, direct.title) == ("Grounds: stage", "Grounds: direct")
    assert "di.out: transformer, lift open; beyond: foh" in words(stage)
    assert "lift closed: di.out" in words(direct)
    assert "combo" in words(stage) and "combo" not in words(direct)


def test_drawing_of_the_home_rig() -> None:
    """Every ground and every lead by number, one earth, one closing link, all within the drawing and legible."""
    (drawing,) = drawings(made(results(ROOT / "examples/back-bedroom/board.rig")))
    named = {"plumb", "hedge", "marl", "millpond", "lant", "rotunda", "combo", "mill5.o2"}
    assert named | {"A2", "A3", "A4", "A5", "A6", "A7", "D2a", "D2b"} <= words(drawing)
    earths = [shape for shape in drawing.shapes if isinstance(shape, Symbol) and shape.name == "earth"]
    assert len(earths) == 1 + 1  # that of the combo and the one of the legend
    closing = [shape for shape in drawing.shapes if isinstance(shape, Polyline) and shape.pattern == "dash-dot"]
    assert len(closing) == 1
    assert all(right_of(shape) <= drawing.width_mm for shape in drawing.shapes)
    assert all(shape.size_mm >= LETTERS for shape in drawing.shapes if isinstance(shape, Label))


def test_a_closing_line_runs_right_of_what_stands_between_its_rows() -> None:
    """Rows reach to 20, 60 and 25 mm, and what stands below them to 90: from the first to the third 3 mm right of the second."""
    line, _ = closing_lines([(0, 2, "A16")], [10.0, 20.0, 30.0, 40.0], [20.0, 60.0, 25.0, 90.0], [0.0] * 4)
    assert isinstance(line, Polyline)
    assert line.points == ((20, 10), (63, 10), (63, 30), (25, 30))


def test_cautions() -> None:
    """The protective earth is spoken of on every sheet, phantom power, the fourth where there is a desk, on the front page."""
    home = made(results(ROOT / "examples/back-bedroom/board.rig")).block("cautions")
    hall = made(directed()).block("cautions")
    assert isinstance(home, Paragraph) and isinstance(hall, Paragraph)
    assert home.kind == "caution"
    assert "protective earth" in home.lines[0]
    assert not any("48 V" in line for line in home.lines)
    assert not any("48 V" in line for line in hall.lines)
    assert "more on the front page" in hall.heading and "more" not in home.heading


def long_chain(count: int) -> Results:
    """So many units in a row, each fed from an output with one common: a ring for each two neighbours."""
    text = block("instrument", "guitar") + block("amp", "combo", *AMP)
    text += block("supply", "mill", "connector barrel 5.5 x 2.1 mm", f"outlet o1..o{count} 9 V dc 100 mA common all")
    numbers = range(1, count + 1)
    text += "".join(
        unit(f"u{at}", "inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", "draws 8 mA", "bypass true") for at in numbers
    )
    text += "chain guitar -> " + " -> ".join(f"u{at}" for at in numbers) + " -> combo\n"
    text += block("power", "", *(f"u{at} from mill.o{at}" for at in numbers))
    return results_of(text)


def test_a_system_that_no_page_holds_goes_on_in_parts() -> None:
    """Each ground stands in some part, each part fits its page; a ground on which a later part hangs is drawn again."""
    found = drawings(made(long_chain(40)))
    assert len(found) > 1
    assert [each.title for each in found] == [f"Grounds ({at} of {len(found)})" for at in range(1, len(found) + 1)]
    assert len({each.name for each in found}) == len(found)
    told = [words(each) for each in found]
    assert {f"u{at}" for at in range(1, 41)} | {"combo"} <= set().union(*told)
    for each in found:
        assert each.height_mm <= (150 if each.landscape else 240)
        assert all(right_of(shape) <= each.width_mm for shape in each.shapes)
    for part in told[1:]:
        assert any(text.endswith(", again") for text in part)


def test_a_ring_between_two_parts_is_told_in_both() -> None:
    """Two mains earths at the ends of a long row: the closing line can't be drawn, so both parts say it."""
    count = 60
    numbers = range(1, count + 1)
    text = block("instrument", "guitar") + block("amp", "combo", *AMP) + block("amp", "far", *AMP)
    text += unit("u0", "output aux ts") + "".join(unit(f"u{at}") for at in numbers)
    text += f"chain guitar -> u0 -> {' -> '.join(f'u{at}' for at in numbers)} -> combo\nchain side: u0.aux -> far\n"
    found = drawings(made(results_of(text)))
    told = [text for each in found for text in words(each) if text.startswith("the mains: ")]
    assert len(found) > 1
    assert sorted(told) == [
        "the mains: combo to far, on another part, closes a ring",
        "the mains: far to combo, on another part, closes a ring",
    ]


def test_nothing_is_said_of_midi_where_there_is_none() -> None:
    reading = made(results_of(unit("marl"))).block("reading")
    assert isinstance(reading, Paragraph) and not [line for line in reading.lines if "MIDI" in line]
