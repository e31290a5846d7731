"""rigc for programs: what `grammar/library.md` promises, and that its programs run as they stand."""

from __future__ import annotations

import re
import runpy
import shutil
from pathlib import Path
from xml.etree import ElementTree

import pytest
from cases import ROOT

import rigc
from rigc import CompiledRig, Unreadable, compile_rig
from rigc.files.compiled_rig import Finding, Value

PAGE = (ROOT / "grammar" / "library.md").read_text("utf-8")
PROGRAMS = re.findall(r"```python\n(.*?)```", PAGE, re.DOTALL)
SHOP = """language 1
rig one-unit "One Unit" {
  revision A 2026-03-02
}
unit tern "overdrive" {
  mass 400 g
  price 95 EUR
}
deck plank {
  size 320 x 200 mm
  mass 900 g
  price 30.50 EUR
}
place {
  tern at 20, 20 mm
}
"""


@pytest.fixture
def folders(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of examples, of which there is one, and one of a shop."""
    (tmp_path / "shop" / "one").mkdir(parents=True)
    (tmp_path / "shop" / "one" / "board.rig").write_text(SHOP, "utf-8")
    (tmp_path / "examples").mkdir()
    for name in ("back-bedroom/board.rig", "bench/stock.rig", "rig-root"):
        (tmp_path / "examples" / name).parent.mkdir(exist_ok=True)
        shutil.copy(ROOT / "examples" / name, tmp_path / "examples" / name)
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.mark.parametrize("number", range(len(PROGRAMS)))
def test_each_program_of_the_page_runs(number: int, folders: Path, capsys: pytest.CaptureFixture[str]) -> None:
    program = folders / "program.py"
    program.write_text(PROGRAMS[number], "utf-8")
    runpy.run_path(str(program))
    told = capsys.readouterr().out
    if number == 0:
        assert re.fullmatch(r"\d+\.\d{3} kg\n", told)
    elif number == 1:  # 95 + 30.50
        assert told.split() == ["One", "Unit", "125.50", "EUR"]
    elif number == 2:
        assert re.fullmatch(r"\d+\.\d kg\nnot all is known of: .*\n", told)
    else:
        drawn = ElementTree.parse(folders / "loads.svg").getroot()
        assert len([each for each in drawn if each.tag.endswith("rect")]) > 0


def test_what_is_promised_is_all_on_the_page() -> None:
    promised = {name for name in vars(CompiledRig) if not name.startswith("_")}
    for name in (
        *promised,
        *Finding.FIELDS,
        *Value.FIELDS,
        *(each for each in rigc.__all__ if not each.startswith("_")),
    ):
        assert re.search(rf"`(?:rig\.)?{name}\b", PAGE), name
    assert all(hasattr(rigc, name) for name in rigc.__all__)
    with pytest.raises(AttributeError):
        rigc.nothing  # noqa: B018
    assert (ROOT / "rigc" / "py.typed").is_file()


def test_a_rig_with_errors_has_findings_and_no_figures(folders: Path) -> None:
    wrong = folders / "wrong.rig"
    wrong.write_text(SHOP.replace("400 g", "400 mm"), "utf-8")
    rig = compile_rig(wrong)
    (found,) = [each for each in rig.findings if each.level == "error"]
    assert (found.rule, found.file.rpartition("/")[2], found.line, found.column) == (
        "wrong-quantity",
        "wrong.rig",
        6,
        8,
    )
    assert (rig.has_errors, rig.model, rig.figures, rig.rows("quote", "items")) == (True, {}, {}, [])
    with pytest.raises(Unreadable):
        compile_rig(folders / "nothing.rig")


def test_rows_of_a_table(folders: Path) -> None:
    rig = compile_rig(folders / "shop" / "one" / "board.rig")
    assert [row["item"] for row in rig.rows("quote", "items")] == ["tern", "plank"]
    for sheet, table in (("quote", "nothing"), ("nothing", "items")):
        with pytest.raises(LookupError):
            rig.rows(sheet, table)
