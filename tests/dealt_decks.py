"""A seed -> the text of a rig whose deck is full: units in rows with jacks on all sides, supplies below, a panel. All invented, dealt by seeded dice."""

from __future__ import annotations

import random

_SYLLABLES = ("mar", "lo", "ten", "wick", "sal", "by", "gor", "ran", "plum", "quay", "jig", "ost")


def dealt_deck(seed: int) -> str:
    """The same text for the same seed: 4 to 18 units, in one chain, each fed from a supply below the deck."""
    dice = random.Random(seed)
    count = dice.randint(4, 18)
    across = dice.randint(max(2, -(-count // 3)), 6)
    pitch, row = dice.randint(105, 150), dice.randint(150, 175)
    rows = -(-count // across)
    width, depth = max(300, across * pitch + 30), max(320, rows * row + 40)
    names = _names(dice, count)
    text = ['language 1\nuse "stock/plugs.rig"\nuse "stock/cables.rig"\n', "rig dealt {\n  revision A 2026-03-02\n}\n"]
    places = []
    for at, name in enumerate(names):
        wide, deep = dice.choice((45, 62, 70, 95)), dice.choice((90, 112, 125))
        text.append(_unit(dice, name, wide, deep))
        x, y = (at % across) * pitch + dice.randint(15, 25), (at // across) * row + 15
        places.append(f"  {name} at {x}, {y} mm")
    supplies = [f"supply-{letter}" for letter in "abc"[: -(-count // 6)]]
    for at, supply in enumerate(supplies):
        text.append(_supply(supply))
        places.append(
            f"  {supply} under at {20 + dice.randint(0, max(0, width - 220))}, {60 + at * dice.choice((80, 90))} mm"
        )
    text.append(_deck(dice, width, depth, rows, row))
    panel = dice.random() < 0.6
    if panel:
        text.append(f"panel side {{\n  jack out ts at {width - 40}, {depth - 10} mm\n}}\n")
    order = dice.sample(names, len(names))
    chain = " -> ".join([*order, "side"] if panel else order)
    text.append(f"chain {chain}\n" if not panel else f"chain {' -> '.join(order)} -> side.out\n")
    feeds = [f"  {name} from {supplies[at // 6]}.w{at % 6 + 1}" for at, name in enumerate(names)]
    text.append("power {\n" + "\n".join(feeds) + "\n}\n")
    text.append(
        "leads {\n  audio cable mini-coax\n  audio plug barrel-angle\n  dc cable dc-24\n  dc plug dc-angle\n}\n"
    )
    text.append("place {\n" + "\n".join(places) + "\n}\n")
    return "\n".join(text)


def _names(dice: random.Random, count: int) -> list[str]:
    names: dict[str, None] = {}
    while len(names) < count:
        names["".join(dice.choice(_SYLLABLES) for _ in range(dice.randint(1, 4))) + dice.choice(("", "-ii"))] = None
    return list(names)


def _unit(dice: random.Random, name: str, wide: int, deep: int) -> str:
    sides = dice.choice((("right", "left", "rear"), ("rear", "rear", "rear"), ("left", "right", "left")))
    used: dict[str, list[int]] = {}
    lines = []
    for jack, side in zip(("input in ts", "output out ts", "inlet dc barrel 5.5 x 2.1 mm"), sides, strict=True):
        most = wide if side == "rear" else deep
        spots = [at for at in range(15, most - 14, 5) if all(abs(at - other) >= 15 for other in used.get(side, []))]
        at = dice.choice(spots or [15])
        used.setdefault(side, []).append(at)
        lines.append(f"  {jack} {side} {at} mm up 22 mm")
    if dice.random() < 0.8:
        lines.append(f"  switch at {wide / 2:g}, 25 mm latching")
    for knob in range(dice.randint(0, 2)):
        lines.append(f'  knob "k{knob}" at {15 + 20 * knob}, {deep - 20} mm')
    body = f"  body {wide} x {deep} x 55 mm\n  needs 9 V dc\n  draws 20 mA\n  polarity centre-negative\n"
    return f"unit {name} {{\n{body}" + "\n".join(lines) + "\n}\n"


def _supply(name: str) -> str:
    return (
        f"supply {name} {{\n  body 180 x 60 x 40 mm\n  switch-mode\n  mains 100..240 V 50..60 Hz\n"
        "  connector barrel 5.5 x 2.1 mm\n  polarity centre-negative\n"
        "  outlet w1..w6 9 V dc 300 mA isolated front 15..165 mm up 20 mm\n}\n"
    )


def _deck(dice: random.Random, width: int, depth: int, rows: int, row: int) -> str:
    drops = [at * row for at in range(1, rows)] or [depth - 40]
    lines = [f"  size {width} x {depth} mm", "  thickness 12 mm", "  clearance 60 mm"]
    lines.append(f"  drop {', '.join(map(str, [*drops, depth - 12]))} mm")
    if dice.random() < 0.5:
        lines.append("  feet 20 mm in")
    if dice.random() < 0.3:
        lines.append(f'  hole 25 mm at {width - 30}, {depth - 30} mm "mains lead"')
    if dice.random() < 0.3:
        lines.append(f'  keep-out 40 x 30 mm at {width - 60}, 10 mm "handle"')
    return "deck plate {\n" + "\n".join(lines) + "\n}\n"
