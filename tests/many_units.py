"""A rig of many units, invented: what is measured and counted of large rigs."""

from __future__ import annotations


def many_units(count: int) -> str:
    """An invented rig of `count` units in rows on a wall of a deck, each with an outlet of its own; above 1,000 they are small ones, so that
    all stand on one deck."""
    small = count > 1000
    deep, wide, pitch, row_pitch, row = (40, 14, 62, 78, 80) if small else (80, 35, 115, 160, 40)
    head = [
        "language 1", 'use "stock/plugs.rig"', 'use "stock/cables.rig"', 'use "stock/strips.rig"', 'use "stock/premade.rig"',
        'rig wall "Wall" {', "  revision A 2026-03-02", "  marker 40 characters", "}",
        "instrument guitar {", "  capacitance 120 pF", "  inductance 4.2 H", "  lead 6 m of stage-coax", "}",
        "amp combo {", "  input in ts 1 Mohm", "  earthed", "}",
        "unit pattern {", "  body 28 x 60 x 55 mm" if small else "  body 70 x 120 x 55 mm", "  mass 80 g" if small else "  mass 400 g", "  bypass buffered",
        f"  input in ts 1 Mohm right {deep} mm up 25 mm", f"  output out ts 1 kohm left {deep} mm up 25 mm",
        f"  inlet dc barrel 5.5 x 2.1 mm rear {wide} mm up 33 mm", "  needs 9 V dc", "  polarity centre-negative", "  draws 8 mA", "}",
    ]  # fmt: skip
    units = [f"unit u{at} like pattern {{\n  draws {5 + at % 20} mA\n}}" for at in range(count)]
    supplies = [
        f"supply s{at} {{\n  body 190 x {40 if small else 60} x 45 mm\n  mass 1 kg\n  linear\n  mains 230 V 50 Hz\n  ceiling 20 W\n"
        "  connector barrel 5.5 x 2.1 mm\n  polarity centre-negative\n"
        f"  outlet o1..o10 9 V dc 100 mA isolated {'rear' if small else 'front'} 10..180 mm\n}}"
        for at in range((count + 9) // 10)
    ]
    rows = -(-count // row)
    drops = ", ".join(str(row_pitch - 10 + row_pitch * at) for at in range(rows))
    deck = (
        f"deck wall-deck {{\n  size {4990 if small else 4700} x {rows * row_pitch + (60 if small else 200)} mm\n  thickness 12 mm\n  clearance 70 mm\n  mass 9 kg\n"
        f"  drop {drops} mm\n}}"
    )
    places = [
        f"  u{at} at {20 + pitch * (at % row)}, {(5 if small else 15) + row_pitch * (at // row)} mm"
        for at in range(count)
    ]
    across, apart, depth, begin = (8, 620, 78, (220, 8)) if small else (4, 1150, 160, (420, 30))
    places += [  # below the ten units that it feeds
        f"  s{at} under at {begin[0] + apart * (at % across)}, {begin[1] + depth * (at // across)} mm"
        for at in range((count + 9) // 10)
    ]
    feeds = [f"  u{at} from s{at // 10}.o{at % 10 + 1}" for at in range(count)]
    chain = "chain guitar -> " + " ->\n  ".join(f"u{at}" for at in range(count)) + " -> combo"
    return "\n".join(
        [
            *head,
            *units,
            *supplies,
            chain,
            "power {",
            *feeds,
            "}",
            deck,
            "place {",
            *places,
            "}",
            "mounting {",
            "  all with mushroom",
            "}",
            "",
        ]
    )
