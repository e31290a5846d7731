"""The touring example in a folder of its own, with substitutes that an invented crew carries; to be changed by tests."""

from __future__ import annotations

from pathlib import Path

from cases import ROOT
from small_rigs import block

SUCCESSOR = """unit stepladder-ii "pitch, the larger one" {
  measured 2026-02-14 by "R.K."
  version "1"
  fitted version "1"
  body 110 x 125 x 60 mm
  mass 0.61 kg
  feet removed
  base flat
  switch at 55, 25 mm latching
  input in ts 1 Mohm rear 90 mm up 30 mm insulated
  output out ts 1 kohm rear 20 mm up 30 mm insulated
  level in max 11 dBu
  level out -20 dBu peak 4 dBu
  gain 0 dB
  bypass buffered
  unpowered mutes
  digital
  latency 2 ms
  inlet dc barrel 5.5 x 2.1 mm rear 55 mm up 30 mm
  needs 9 V dc
  accepts 8.7..9.9 V
  polarity centre-negative
  draws 320 mA
  ground negative
}
"""
_BY = 'measured 2026-02-14 by "R.K."'


def alike(name: str, *lines: str, of: str = "stepladder") -> str:
    """A unit that is like another but for these lines."""
    return block("unit", f"{name} like {of}", _BY, *lines)


SUBSTITUTES = SUCCESSOR + "".join(
    (
        alike("twin"),
        alike("turncoat", "polarity centre-positive"),
        alike("hot", "needs 18 V dc", "accepts 17.4..19.5 V", "draws 30 mA", "starts 40 mA"),
        alike("thirsty", "draws 900 mA", "starts 950 mA"),
        alike("thick-pin", "inlet dc barrel 5.5 x 2.5 mm rear 35 mm up 35 mm"),
        alike("plus-ground", "ground positive"),
        alike("broad", "body 115 x 125 x 60 mm", "draws 190 mA", "starts 230 mA", of="stepladder-ii"),
        alike("tower", "body 70 x 125 x 130 mm"),
        alike("stereo-one", of="weathervane"),
        block("unit", "silent-one", _BY, "body 70 x 125 x 60 mm", "mass 0.4 kg", "feet removed", "base flat",
              "input in ts 1 Mohm right 90 mm up 25 mm insulated", "output out ts 1 kohm left 90 mm up 25 mm insulated",
              "inlet dc barrel 5.5 x 2.1 mm rear 35 mm up 35 mm", "needs 9 V dc", "draws 20 mA"),
        block("unit", "powerless", _BY, "body 70 x 125 x 60 mm", "mass 0.4 kg", "feet removed", "base flat", "passive",
              "input in ts 1 Mohm right 90 mm up 25 mm insulated", "output out ts 1 kohm left 90 mm up 25 mm insulated"),
        block("unit", "other-names", _BY, "body 70 x 125 x 60 mm", "mass 0.45 kg", "feet removed", "base flat",
              "output send-it ts 1 kohm left 90 mm up 25 mm insulated", "input take-it ts 1 Mohm right 90 mm up 25 mm insulated",
              "inlet nine barrel 5.5 x 2.1 mm rear 35 mm up 35 mm", "bypass buffered", "unpowered mutes", "digital",
              "needs 9 V dc", "accepts 8.7..9.9 V", "polarity centre-negative", "draws 190 mA", "starts 230 mA",
              "ground negative"),
        block("amp", "spare-amp", _BY, "earthed", "input in ts 1 Mohm"),
    )
)  # fmt: skip


def touring(folder: Path, more: str = "", name: str = "board.rig") -> Path:
    """The board with the substitutes at hand, and `more` statements at its end."""
    for place in ("bench", "long-haul"):
        (folder / place).mkdir(exist_ok=True)
    (folder / "bench/stock.rig").write_text((ROOT / "examples/bench/stock.rig").read_text("utf-8"), "utf-8")
    (folder / "rig-root").touch()
    (folder / "bench/spares.rig").write_text(f"language 1\n\n{SUBSTITUTES}", "utf-8")
    board = folder / "long-haul" / name
    text = (ROOT / "examples/long-haul/board.rig").read_text("utf-8")
    used = 'use "../bench/stock.rig"\n'
    assert used in text
    board.write_text(text.replace(used, f'{used}use "../bench/spares.rig"\n') + more, "utf-8")
    return board
