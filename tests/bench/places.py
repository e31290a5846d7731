"""Places chosen by rigc against places chosen by a person: for each example, each board of `tests/laid_by_hand` and each rig of the tests all
places are taken out.

    python tests/bench/places.py [--write] [STEPS]

Prints a table; with `--write` it is written beside this file as `places.md`, without the times. Of a row with two figures the first is the
hand's layout, the second ours. Lengths are in mm:

- leads: all made leads of the board; audio: those with sound.
- way: how far a foot has to reach from the front edge of the deck to what it presses, in the middle of all units that a foot works; of
  each unit the nearest spot.
- bare: bare deck before the front edge of the frontmost unit that a foot works (less the heel).
- rear: how far before the rear edge the units end that no foot works, in the middle.
- beside: how much feet lack in all to treadles beside them.
- told: errors and warnings of the deck's rules.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

ROOT = Path(__file__).parent.parent.parent
sys.path[:0] = [str(ROOT), str(ROOT / "tests"), str(ROOT / "tests" / "analysis")]

from cases import results  # noqa: E402
from laying.deck_rules import told  # noqa: E402

from rigc.analysis.deck.feet import spots_pressed  # noqa: E402
from rigc.analysis.deck.placement import Placement  # noqa: E402
from rigc.analysis.laying.chosen_places import with_chosen_places  # noqa: E402
from rigc.analysis.laying.objective import objective  # noqa: E402
from rigc.analysis.laying.use import trodden  # noqa: E402
from rigc.analysis.leads.leads import Leads  # noqa: E402
from rigc.analysis.leads.lengths.cable_lengths import CableLengths  # noqa: E402
from rigc.analysis.results import Results  # noqa: E402
from rigc.model.rig import Rig  # noqa: E402

HEADS = ("board", "things", "leads", "audio", "way", "bare", "rear", "beside", "told")
SKIPPED = ("two-cases", "units")  # a thing of its deck stands on another one; declares what boards are made of


def main() -> int:
    """Lays every board and prints the table."""
    words = [word for word in sys.argv[1:] if word != "--write"]
    effort = int(words[0]) if words else None
    cases = sorted((ROOT / "examples").glob("*/board.rig"))
    cases += [case for folder in ("laid_by_hand", "rigs") for case in sorted((ROOT / "tests" / folder).glob("*.rig"))]
    rows = []
    for case in cases:
        name = case.parent.name if case.stem == "board" else case.stem
        if name in SKIPPED:
            continue
        rig = results(case).rig
        start = time.process_time()
        laid, _ = with_chosen_places(rig.replace(places={}), effort)
        seconds = time.process_time() - start
        both = [figures(each) for each in (rig, laid)]
        things = sum(place.chosen for place in laid.places.values())
        rows.append((name, str(things), *(f"{hand} / {ours}" for hand, ours in zip(*both, strict=True))))
        print(" | ".join(rows[-1]), f"| {seconds:.1f} s", flush=True)
    if "--write" in sys.argv:
        table = [HEADS, tuple("---" for _ in HEADS), *rows]
        text = "".join(f"| {' | '.join(row)} |\n" for row in table)
        head = "# Places by hand / chosen by rigc\n\nPrinted by `places.py`, which tells what the columns are.\n\n"
        Path(__file__).with_suffix(".md").write_text(head + text, "utf-8")
    return 0


def figures(rig: Rig) -> tuple[str, ...]:
    """The figures of one layout."""
    made = Results(rig)
    totals, placement = made.get(CableLengths).totals, made.get(Placement)
    audio = totals["audio"].finished / 10 if "audio" in totals else 0.0
    ways, fronts, rears = [], [], []
    for name, place in rig.places.items():
        unit, body = rig.units.get(name), placement.outline(name)
        deck = rig.decks.get(place.deck or "", rig.deck)
        if unit is None or unit.kind != "unit" or body is None or deck is None or place.under or deck.depth_mm is None:
            continue
        if trodden(unit):
            fronts.append(body.y_mm - (deck.heel_mm.value if deck.heel_mm is not None else 0.0))
            ways += [min(y for _, y in spots)] if (spots := spots_pressed(unit, place)) else []
        else:
            rears.append(deck.depth_mm.value - body.y_mm - body.depth_mm)
    return (
        f"{sum(total.finished for total in totals.values()) / 10:.0f}",
        f"{audio:.0f}",
        f"{sum(ways) / len(ways):.0f}" if ways else "-",
        f"{min(fronts):.0f}" if fronts else "-",
        f"{sum(rears) / len(rears):.0f}" if rears else "-",
        f"{lacking(rig) / 10:.0f}",
        str(len(told(rig))),
    )


def lacking(rig: Rig) -> int:
    """By how much feet lack to treadles, in tenths of a millimetre; 0 on a deck whose size is not known."""
    found = objective(rig, Results(rig).get(Leads))
    return sum(term.counted for term in found.terms if term.name == "beside treadle") if found is not None else 0


if __name__ == "__main__":
    sys.exit(main())
