"""The plan for a router or laser, read back by the library: what is cut is what the hole schedule says."""

from __future__ import annotations

import sys
from functools import cache
from pathlib import Path
from typing import Any

import ezdxf
import pytest
from cases import results
from ezdxf.lldxf.encoding import decode_dxf_unicode
from small_sheets import TITLE

from rigc.analysis.routes.deck_holes import DeckHoles
from rigc.output.extras import dxf
from rigc.output.extras.missing_extra import MissingExtra
from rigc.reports.deck.cut_plan import CutPlan, cut_plans
from rigc.reports.deck.hole_table import hole_table

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*/board.rig"))


@cache
def plans(path: Path) -> tuple[CutPlan, ...]:
    found: tuple[CutPlan, ...] = results(path).call(cut_plans).all
    return found


def read_back(plan: CutPlan, folder: Path) -> Any:
    file = folder / "plan.dxf"
    file.write_bytes(dxf.render(plan, TITLE))
    drawing = ezdxf.readfile(file)
    assert not drawing.audit().errors
    return drawing


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.parent.name)
def test_the_holes_are_those_of_the_table(path: Path, tmp_path: Path) -> None:
    made = results(path)
    for plan in plans(path):
        table = hole_table(made.rig.decks[plan.name], made.get(DeckHoles).of(plan.name))
        rows = [[cell.text for cell in row.cells] for row in table.rows]
        space = read_back(plan, tmp_path).modelspace()
        cut = sorted(
            (f"{hole.dxf.center.x:g}", f"{hole.dxf.center.y:g}", f"diameter {hole.dxf.radius * 2:g} mm")
            for hole in space.query('CIRCLE[layer=="HOLES"]')
        )
        assert cut == sorted((x, y, size) for _, x, y, _, size, _ in rows if size.startswith("diameter"))
        # each number stands beside its hole, 1.5 mm right of it and behind it
        numbered = {text.dxf.text: text.dxf.insert for text in space.query("TEXT") if text.dxf.text.startswith("H")}
        for number, x, y, *_ in rows:
            at = numbered[number]
            assert (f"{at.x - 1.5:g}", f"{at.y - 1.5:g}") == (x.split(" to ")[0], y)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.parent.name)
def test_the_outline_is_the_deck_in_millimetres(path: Path, tmp_path: Path) -> None:
    for plan in plans(path):
        drawing = read_back(plan, tmp_path)
        assert drawing.units == ezdxf.units.MM
        (outline,) = drawing.modelspace().query('LWPOLYLINE[layer=="OUTLINE"]')
        assert outline.closed
        wide, deep = plan.width_mm, plan.depth_mm
        assert [tuple(point[:2]) for point in outline] == [(0, 0), (wide, 0), (wide, deep), (0, deep)]
        bodies = list(drawing.modelspace().query('LWPOLYLINE[layer=="BODIES"]'))
        assert len(bodies) == sum(not body.under for body in plan.bodies)


def test_only_what_has_a_known_size_is_cut(tmp_path: Path) -> None:
    for path in EXAMPLES:
        for plan in plans(path):
            space = read_back(plan, tmp_path).modelspace()
            assert {entity.dxf.layer for entity in space.query("CIRCLE ARC")} <= {"HOLES"}
            assert len(space.query("CIRCLE")) == sum(
                hole.diameter_mm is not None and hole.to_x_mm is None for hole in plan.holes
            )
            slots = [hole for hole in plan.holes if hole.diameter_mm is not None and hole.to_x_mm is not None]
            cut = list(space.query('LWPOLYLINE[layer=="HOLES"]'))
            assert len(cut) == len(slots)
            for hole, loop in zip(slots, cut, strict=True):
                assert {point[4] for point in loop} == {0, 1}
                assert {point[0] for point in loop} == {hole.x_mm, hole.to_x_mm}
                assert hole.diameter_mm is not None
                assert {point[1] for point in loop} == {
                    hole.y_mm - hole.diameter_mm / 2,
                    hole.y_mm + hole.diameter_mm / 2,
                }


def test_the_same_board_gives_the_same_bytes() -> None:
    plan = plans(EXAMPLES[0])[0]
    assert dxf.render(plan, TITLE) == dxf.render(plan, TITLE)


def test_letters_outside_the_encoding_come_back(tmp_path: Path) -> None:
    title = TITLE.replace(rig="Zwölf Żubrów 東")
    file = tmp_path / "plan.dxf"
    file.write_bytes(dxf.render(plans(EXAMPLES[0])[0], title))
    texts = [decode_dxf_unicode(text.dxf.text) for text in ezdxf.readfile(file).modelspace().query("TEXT")]
    assert any("Zwölf Żubrów 東" in text for text in texts)


def test_without_the_package_a_finding_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "ezdxf", None)
    with pytest.raises(MissingExtra) as caught:
        dxf.render(plans(EXAMPLES[0])[0], TITLE)
    finding = caught.value.finding()
    assert (finding.kind.name, finding.help) == ("missing-extra", "pip install 'rigc[dxf]'")
