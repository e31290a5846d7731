"""A seed -> the text of a rig by its ways of sound alone: units, loops, branches, stereo, several instruments and feeds. All invented, dealt by
seeded dice; no deck, so that it is compiled in a moment."""

from __future__ import annotations

import random

from small_rigs import block

_DC = ("inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", "polarity centre-negative", "draws 10 mA")
_SUPPLY = ("connector barrel 5.5 x 2.1 mm", "polarity centre-negative")
_WITHOUT = ("unpowered mutes", "unpowered passes", "unpowered latches", "")


def dealt_ways(seed: int) -> str:
    """The same text for the same seed: one or two instruments, 1 to 7 units in a row, perhaps a switcher with 1 to 4 loops of 0 to 3 units,
    a tuner on a branch, a stereo end into two amps or a panel, a desk; units passive, by battery, or fed one by one or by shared outlets."""
    dice = random.Random(seed)
    units = [f"u{number}" for number in range(dice.randint(1, 7))]
    loops = [
        [f"l{number}{letter}" for letter in "abc"[: dice.choice((0, 1, 1, 2, 3))]]
        for number in range(1, dice.choice((0, 0, 2, 3, 5)))
    ]
    stereo, tuner, panel = dice.random() < 0.5, dice.random() < 0.4, dice.random() < 0.4
    second = dice.random() < 0.3 and not loops
    held = [name for loop in loops for name in loop]
    fed: list[str] = []
    text = [block("instrument", "guitar"), *([block("instrument", "lute")] if second else [])]
    for name in (*units, *held):
        kind = dice.choice(("passive", "battery", "fed", "fed", "fed"))
        fed += [name] if kind == "fed" else []
        text.append(
            block("unit", name, *_jacks(name == units[-1] and stereo, tuner and name == units[0]), *_feed(dice, kind))
        )
    if loops:
        last = len(loops)
        fed.append("box")
        runs = (
            f"output s1..s{last} ts",
            f"input r1..r{last} ts",
            f"loop 1..{last} send s1..s{last} return r1..r{last}",
        )
        text.append(
            block("unit", "box", "input in ts", "output out ts", *(runs if last > 1 else _ONE), *_feed(dice, "fed"))
        )
    text += _ends(stereo, panel)
    text += [block("unit", "tuner", "input in ts", "passive")] if tuner else []
    text += _chains(dice, units, loops, stereo, tuner, panel, second)
    return "".join((*text, *_power(dice, fed)))


_ONE = ("output s1 ts", "input r1 ts", "loop 1 send s1 return r1")


def _jacks(stereo: bool, tuned: bool) -> tuple[str, ...]:
    outs = ("output outl ts", "output outr ts") if stereo else ("output out ts",)
    return ("input in ts", *outs, *(("output tun ts",) if tuned else ()))


def _feed(dice: random.Random, kind: str) -> tuple[str, ...]:
    if kind == "passive":
        return ("passive",)
    without = dice.choice(_WITHOUT)
    told = (without,) if without else ()
    return ('battery "9 V block" 400 mAh only', *told) if kind == "battery" else (*_DC, *told)


def _ends(stereo: bool, panel: bool) -> list[str]:
    amps = ["left-amp", "right-amp"] if stereo else ["combo"]
    made = [block("amp", name, "input in ts") for name in amps]
    jacks = ("l", "r") if stereo else ("out",)
    return [
        *made,
        *(
            [block("panel", "side", *(f"jack {jack} ts at {at}, 10 mm" for at, jack in enumerate(jacks, 1)))]
            if panel
            else []
        ),
    ]


def _chains(
    dice: random.Random, units: list[str], loops: list[list[str]], stereo: bool, tuner: bool, panel: bool, second: bool
) -> list[str]:
    row = list(units)
    if loops:
        row.insert(dice.randrange(len(row) + (not stereo)), "box")
    amps = ("left-amp", "right-amp") if stereo else ("combo",)
    jacks, outs = (("l", "r"), (f"{row[-1]}.outl", f"{row[-1]}.outr")) if stereo else (("out",), (f"{row[-1]}.out",))
    made = [f"chain {'with guitar: ' if second else ''}guitar -> {' -> '.join(row)}\n"]
    made += [f"chain with lute: lute -> {' -> '.join(row[dice.randrange(len(row)) :])}\n"] if second else []
    for number, (out, jack, amp) in enumerate(zip(outs, jacks, amps, strict=True)):
        made += (
            [f"chain end-{number}: {out} -> side.{jack}\n", f"chain stage-{number}: side.{jack} -> {amp}\n"]
            if panel
            else [f"chain end-{number}: {out} -> {amp}\n"]
        )
    made += [f"chain tuning: {units[0]}.tun -> tuner\n"] if tuner else []
    for number, loop in enumerate(loops, 1):
        made.append(f"loop {number} of box {'holds ' + ' -> '.join(loop) if loop else 'empty'}\n")
    return made


def _power(dice: random.Random, fed: list[str]) -> list[str]:
    supplies = ("weir", "mill")[: dice.randint(1, 2)]
    outlets = f"outlet o1..o{max(2, len(fed))} 9 V dc 500 mA isolated"
    lines, at = [], 0
    while at < len(fed):
        shared = dice.randint(1, 3) if dice.random() < 0.3 else 1
        names = fed[at : at + shared]
        lines.append(f"{', '.join(names)} from {dice.choice(supplies)}.o{at + 1}{' shared' if len(names) > 1 else ''}")
        at += len(names)
    return [*(block("supply", name, *_SUPPLY, outlets) for name in supplies), block("power", "", *lines)] if fed else []
