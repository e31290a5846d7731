"""`all-units`: facts of every unit of a file, below what each says itself, with where they come from."""

from __future__ import annotations

from pathlib import Path

from cases import compiled

from rigc.model.things import Unit

HEAD = "language 1\n"
RIG = "rig sample {\n  revision A 2026-01-01\n}\n"


def _units(folder: Path, **files: str) -> dict[str, Unit]:
    for name, text in files.items():
        (folder / f"{name}.rig").write_text(HEAD + text, "utf-8")
    made = compiled(folder / "board.rig", root=folder)
    assert made.results is not None
    return made.results.rig.units


def _feet(unit: Unit) -> str | None:
    return None if unit.feet is None else unit.feet.value


def test_a_unit_says_otherwise(tmp_path: Path) -> None:
    board = RIG + "all-units {\n  feet removed\n}\nunit plumb {\n}\nunit hedge {\n  feet stay\n}\n"
    units = _units(tmp_path, board=board)
    assert (_feet(units["plumb"]), _feet(units["hedge"])) == ("removed", "stay")


def test_units_of_another_file_are_not_touched(tmp_path: Path) -> None:
    stock = "unit marl {\n}\n"
    board = RIG + 'use "stock.rig"\nall-units {\n  feet removed\n}\nunit plumb {\n}\n'
    units = _units(tmp_path, board=board, stock=stock)
    assert (_feet(units["plumb"]), _feet(units["marl"])) == ("removed", None)


def test_like_another_goes_before_all_units(tmp_path: Path) -> None:
    stock = "all-units {\n  feet stay\n}\nunit lant {\n  base flat\n}\n"
    board = RIG + 'use "stock.rig"\nall-units {\n  feet removed\n  bypass true\n}\nunit lant-2 like lant {\n}\n'
    unit = _units(tmp_path, board=board, stock=stock)["lant-2"]
    assert (_feet(unit), unit.bypass is not None and unit.bypass.value) == ("stay", "true")


def test_where_facts_come_from(tmp_path: Path) -> None:
    board = RIG + 'all-units {\n  measured 2026-02-14 by "R.K."\n  base flat\n}\n'
    board += "unit plumb {\n  mass 300 g\n  draws 22 mA assumed\n}\nunit hedge {\n  leaflet\n  mass 200 g\n}\n"
    units = _units(tmp_path, board=board)
    plumb, hedge = units["plumb"], units["hedge"]
    kinds = [fact.provenance.kind for fact in (plumb.mass_kg, plumb.draws_ma, plumb.base, hedge.mass_kg, hedge.base)
             if fact is not None and fact.provenance is not None]  # fmt: skip
    assert kinds == ["measured", "assumed", "measured", "leaflet", "measured"]


def test_two_blocks_in_one_file(tmp_path: Path) -> None:
    board = RIG + "all-units {\n  feet removed\n}\nall-units {\n  feet stay\n}\n"
    (tmp_path / "board.rig").write_text(HEAD + board, "utf-8")
    assert [each.kind.name for each in compiled(tmp_path / "board.rig", root=tmp_path).findings][:1] == ["said-twice"]


def test_a_passive_unit_without_an_inlet_is_not_fed(tmp_path: Path) -> None:
    board = RIG + "all-units {\n  needs 9 V dc\n  polarity centre-negative\n  feet removed\n}\n"
    board += "unit plumb {\n}\nunit lever {\n  passive\n}\nunit lever-2 like lever {\n}\n"
    board += "unit lamp {\n  passive\n  inlet dc barrel 5.5 x 2.1 mm\n}\n"
    units = _units(tmp_path, board=board)
    assert [name for name, unit in units.items() if unit.volts is not None] == ["plumb", "lamp"]
    assert units["lever"].polarity is None
    assert _feet(units["lever-2"]) == "removed"


def test_a_unit_may_be_delay_and_reverb(tmp_path: Path) -> None:
    board = RIG + "unit lant {\n  delay\n  reverb\n}\nunit marl like lant {\n  reverb\n}\n"
    units = _units(tmp_path, board=board)
    assert [sorted(units[name].flags) for name in ("lant", "marl")] == [["delay", "reverb"], ["reverb"]]


def test_what_is_passive_passes_without_power(tmp_path: Path) -> None:
    """What is said of power is not of a passive unit without an inlet."""
    board = RIG + "all-units {\n  unpowered mutes\n  ground negative\n}\nunit pad {\n  passive\n}\nunit hedge {\n}\n"
    units = _units(tmp_path, board=board)
    assert (units["pad"].unpowered, units["pad"].ground) == (None, None)
    assert units["hedge"].unpowered is not None and units["hedge"].ground is not None
