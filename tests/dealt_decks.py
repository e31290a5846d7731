"""A seed -> the text of a rig whose deck is full: units in rows with jacks on all sides, supplies below, a panel, a switcher. All invented, dealt by seeded dice."""

from __future__ import annotations

import random
from functools import cache

from cases import READER, ROOT

from rigc.analysis.results import Results
from rigc.compile import compile_rig
from rigc.files.disk import Disk
from rigc.source import Source

_SYLLABLES = ("mar", "lo", "ten", "wick", "sal", "by", "gor", "ran", "plum", "quay", "jig", "ost")


@cache
def dealt(seed: int) -> Results:
    """What follows from the dealt rig, made once."""
    disk = Disk(ROOT / "board.rig", root=ROOT)
    text = dealt_deck(seed)
    made = compile_rig(lambda name: Source(name, text) if name == "board.rig" else disk(name), "board.rig", READER)
    assert made.results is not None, [finding.message for finding in made.findings]
    return made.results


def dealt_deck(seed: int) -> str:
    """The same text for the same seed: 4 to 18 units, in one chain, some in the loops of a switcher, the last two in stereo, each fed
    from a supply below the deck: by a lead of its own, a Y lead, a reversing one or two outlets in series."""
    dice = random.Random(seed)
    count = dice.randint(4, 18)
    across = dice.randint(max(2, -(-count // 3)), 6)
    pitch, row = dice.randint(105, 150), dice.randint(150, 175)
    boxed, stereo, panel = dice.random() < 0.5, dice.random() < 0.5, dice.random() < 0.6
    rows = -(-count // across) + boxed
    width, depth = max(320, across * pitch + 30), max(320, rows * row + 40)
    names = _names(dice, count)
    order = dice.sample(names, len(names))
    widened = dict(zip(order[-2:], (_FIRST_STEREO, _STEREO), strict=True)) if stereo else {}
    text = ['language 1\nuse "stock/plugs.rig"\nuse "stock/cables.rig"\n', "rig dealt {\n  revision A 2026-03-02\n}\n"]
    places = ["  box at 20, 15 mm"] if boxed else []
    for at, name in enumerate(names):
        wide, deep = dice.choice((45, 62, 70, 95)), dice.choice((90, 112, 125))
        text.append(_unit(dice, name, wide, deep, widened.get(name, _MONO)))
        x, y = (at % across) * pitch + dice.randint(15, 25), (at // across + boxed) * row + 15
        places.append(f"  {name} at {x}, {y} mm")
    supplies = [f"supply-{letter}" for letter in "abc"[: -(-count // 6)]]
    for at, supply in enumerate(supplies):
        text.append(_supply(supply))
        places.append(
            f"  {supply} under at {20 + dice.randint(0, max(0, width - 220))}, {60 + at * dice.choice((80, 90))} mm"
        )
    text += [_deck(dice, width, depth, rows, row), *([_BOX] if boxed else []), _chains(order, boxed, stereo, panel)]
    if panel:
        jacks = ("l", "r") if stereo else ("out",)
        lines = [f"  jack {jack} ts at {width - 40 - 30 * at}, {depth - 10} mm\n" for at, jack in enumerate(jacks)]
        text.append(f"panel side {{\n{''.join(lines)}{'  pair l, r' if stereo else ''}\n}}\n")
    text.append("power {\n" + "\n".join(_feeds(dice, names, supplies)) + "\n}\n")
    text.append(
        "leads {\n  audio cable mini-coax\n  audio plug barrel-angle\n  dc cable dc-24\n  dc plug dc-angle\n}\n"
    )
    text.append("place {\n" + "\n".join(places) + "\n}\n")
    return "\n".join(text)


_MONO, _FIRST_STEREO, _STEREO = (
    ("input in ts", "output out ts"),
    ("input in ts", "output outl ts", "output outr ts"),
    ("input inl ts", "input inr ts", "output outl ts", "output outr ts"),
)
_BOX = """unit box "loop switcher" {
  body 260 x 90 x 55 mm
  input in ts right 70 mm up 22 mm
  output out ts left 70 mm up 22 mm
  output s1..s3 ts rear 20..100 mm up 22 mm
  input r1..r3 ts rear 140..220 mm up 22 mm
  loop 1..3 send s1..s3 return r1..r3
}
"""


def _chains(order: list[str], boxed: bool, stereo: bool, panel: bool) -> str:
    """All units in order; of a switcher's loops the first holds one of them, the second two and the third none."""
    held, rest = (order[:3], order[3:]) if boxed and len(order) > 5 else ([], order)
    front, rear = (rest[:1], rest[1:]) if boxed else ([], rest)
    path = " -> ".join([*front, *(["box"] if boxed else []), *rear])
    if stereo:
        path = path.removesuffix(f" -> {rear[-1]}") + f" => {rear[-1]}" + (" => side" if panel else "")
    elif panel:
        path += " -> side.out"
    loops = f"loop 1 of box holds {held[0]}\nloop 2 of box holds {held[1]} -> {held[2]}\n" if held else ""
    return f"chain {path}\n{loops}"


def _feeds(dice: random.Random, names: list[str], supplies: list[str]) -> list[str]:
    found, at = [], 0
    while at < len(names):
        supply, number = supplies[at // 6], at % 6 + 1
        kind = dice.choice(("plain", "plain", "plain", "shared", "reversed", "series"))
        if kind == "shared" and number < 6 and at + 1 < len(names):
            found.append(f"  {names[at]}, {names[at + 1]} from {supply}.w{number} shared")
            at += 1
        elif kind == "series" and number < 3:
            found.append(
                f"  {names[at]} from {supply}.w{number}, {supply}.w{number + 6} series lower {supply}.w{number}"
            )
        else:
            found.append(f"  {names[at]} from {supply}.w{number}{' reversed' if kind == 'reversed' else ''}")
        at += 1
    return found


def _names(dice: random.Random, count: int) -> list[str]:
    names: dict[str, None] = {}
    while len(names) < count:
        names["".join(dice.choice(_SYLLABLES) for _ in range(dice.randint(1, 4))) + dice.choice(("", "-ii"))] = None
    return list(names)


def _unit(dice: random.Random, name: str, wide: int, deep: int, jacks: tuple[str, ...]) -> str:
    sides = dice.choice((("right", "left", "rear"), ("rear", "rear", "rear"), ("left", "right", "left")))
    ways = [*((jack, sides[jack.startswith("output")]) for jack in jacks), ("inlet dc barrel 5.5 x 2.1 mm", sides[2])]
    used: dict[str, list[int]] = {}
    lines = []
    for jack, side in ways:
        most = wide if side == "rear" else deep
        spots = [at for at in range(15, most - 14, 5) if all(abs(at - other) >= 15 for other in used.get(side, []))]
        at = dice.choice(spots or [15])
        used.setdefault(side, []).append(at)
        lines.append(f"  {jack} {side} {at} mm up 22 mm")
    lines += [f"  pair {', '.join(pair)}" for way in ("input", "output") if len(pair := _named(jacks, way)) > 1]
    if dice.random() < 0.8:
        lines.append(f"  switch at {wide / 2:g}, 25 mm latching")
    for knob in range(dice.randint(0, 2)):
        lines.append(f'  knob "k{knob}" at {15 + 20 * knob}, {deep - 20} mm')
    body = f"  body {wide} x {deep} x 55 mm\n  needs 9 V dc\n  draws 20 mA\n  polarity centre-negative\n"
    return f"unit {name} {{\n{body}" + "\n".join(lines) + "\n}\n"


def _named(jacks: tuple[str, ...], way: str) -> list[str]:
    return [jack.split()[1] for jack in jacks if jack.startswith(way)]


def _supply(name: str) -> str:
    return (
        f"supply {name} {{\n  body 180 x 60 x 40 mm\n  switch-mode\n  mains 100..240 V 50..60 Hz\n"
        "  connector barrel 5.5 x 2.1 mm\n  polarity centre-negative\n"
        "  outlet w1..w8 9 V dc 300 mA isolated front 12..168 mm up 20 mm\n}\n"
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
