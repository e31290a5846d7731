"""What to measure first: the facts that decide a limit, then those that take most of the room to one, then the rest."""

from __future__ import annotations

from pathlib import Path

from cases import READER

from rigc.compile import compile_rig
from rigc.files.disk import Disk
from rigc.reports.content import Table

RIG = """language 1
rig sample {
  revision A 2026-01-01
}
supply mill {
  ceiling 20 W
  connector barrel 5.5 x 2.1 mm
  polarity centre-negative
  outlet o1 9 V dc 100 mA isolated
  outlet o2 9 V dc 100 mA isolated
  outlet o3 9 V dc 100 mA isolated
}
unit aspen {
  inlet dc barrel 5.5 x 2.1 mm
  needs 9 V dc
  polarity centre-negative
  ground negative
  body 70 x 120 x 55 mm
  mass 300 g assumed
  draws 40 mA assumed
}
unit marl {
  inlet dc barrel 5.5 x 2.1 mm
  needs 9 V dc
  polarity centre-negative
  ground negative
  body 70 x 120 x 55 mm
  price 80 EUR assumed
  draws 70 mA assumed
}
unit fen {
  inlet dc barrel 5.5 x 2.1 mm
  needs 9 V dc
  polarity centre-negative
  ground negative
  body 70 x 120 x 55 mm
  draws 78 mA leaflet
}
power {
  aspen from mill.o1
  marl from mill.o2
  fen from mill.o3
}
"""


def test_what_decides_stands_first(tmp_path: Path) -> None:
    """Of 80 mA: 78 may be 15 % more, 89.7, and has 2 mA left; 70 may be 30 % more, 91, and has 10; both decide, the leaflet's current
    first. 40 may be 12 more of the 40 that are left: 30 %. What a price may be off by decides nothing."""
    path = tmp_path / "board.rig"
    path.write_text(RIG, "utf-8")
    disk = Disk(path)
    made = compile_rig(disk, disk.name, READER, effort=0, advice=False)
    (document,) = made.documents(("missing-and-assumed-facts",), True)
    table = next(part for part in document.sheet.blocks if isinstance(part, Table) and part.name == "assumed")
    rows = [[cell.text for cell in row.cells] for row in table.rows]
    assert [row[:2] for row in rows] == [
        ["fen", "draws"],
        ["marl", "draws"],
        ["aspen", "draws"],
        ["aspen", "mass"],
        ["marl", "price"],
    ]
    assert [row.cells[2].mark for row in table.rows] == ["MEASURE FIRST", "MEASURE FIRST", "", "", ""]
    assert [row[3] for row in rows] == ["± 15 %", "± 30 %", "± 30 %", "± 15 %", ""]
    assert rows[1][4].startswith("the load of mill.o2 is 70 mA, within its limit of 80 mA, and may be 91 mA, over it; ")
    assert rows[2][4].startswith("takes 30 % of what is left to a limit: the load of mill.o1; ")
