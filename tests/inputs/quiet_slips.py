"""Slips that read well and mean nothing, or what nobody meant: words of other trades, facts that can't be together, edits left half done."""

from __future__ import annotations

from inputs.slip import Slip, also, swap

WIRED = "wired.rig"

READ_WELL = (
    Slip("501-amperes-for-watts", "amperes for watts", swap("ceiling 3.6 W", "ceiling 3.6 A")),
    Slip(
        "502-second-guitar",
        "a second guitar that no chain names",
        also("instrument second {\n  lead 6 m of stage-coax\n}"),
    ),
    Slip(
        "503-ten-centimetres",
        "a lead to the desk of 10 cm",
        swap("di.outl -> front.in1 made 10 m", "di.outl -> front.in1 made 10 cm"),
        WIRED,
    ),
    Slip(
        "504-bolted-and-on-strip",
        "bolted, and given a strip",
        swap("  all with mushroom\n", "  all with mushroom\n  tern with mushroom\n  tern bolted\n"),
    ),
    Slip("505-supply-that-nothing-holds", "the brackets of the supply forgotten", swap("  brook brackets\n", "")),
    Slip("506-amperes-as-milliamperes", "mA behind a figure in amperes", swap("draws 120 mA", "draws 0.12 mA")),
    Slip(
        "507-capacitor-before-resistance",
        "a tone control the other way round",
        swap("  capacitance 120 pF", "  capacitance 120 pF\n  tone 22 nF 500 kohm at 80 %"),
    ),
    Slip(
        "508-gains-for-levels",
        "dB for dBu, all along a line",
        swap("  bypass buffered", "  level out -10 dB peak 4 dB\n  bypass buffered"),
    ),
    Slip("509-fuse-as-it-is-called", "a fuse by one word", swap("  linear\n", "  linear\n  fuse 10AT\n")),
    Slip(
        "510-outlet-pasted-again",
        "an outlet pasted again, its name forgotten",
        swap(
            "outlet o1..o2 9 V dc 200 mA isolated rear 30..90 mm",
            "outlet o1 9 V dc 200 mA isolated rear 30 mm\n  outlet o1 9 V dc 200 mA isolated rear 90 mm",
        ),
    ),
    Slip(
        "511-amp-fed-and-nothing-said",
        "an amp on an outlet that says nothing of what it needs",
        swap("others from brook", "combo from brook.o2\n  tern, fen from brook.o1 shared"),
    ),
    Slip("512-mains-with-a-slash", "the mains as on a wall", swap("mains 230 V 50 Hz", "mains 230/50")),
    Slip(
        "513-country-in-quotes", "a country's longer code, in quotes", swap("mass 900 g", 'mass 900 g\n  origin "USA"')
    ),
    Slip("514-passive-and-digital", "passive, digital and buffered", swap("  digital\n", "  digital\n  passive\n")),
    Slip("515-bolts-for-a-strip", "bolts as if they were a strip", swap("  brook brackets", "  brook with bolts")),
    Slip(
        "516-bypass-that-nobody-knows", "a bypass that is said to be unknown", swap("bypass buffered", "bypass unknown")
    ),
    Slip(
        "517-prices-with-commas",
        "decimal commas among the prices of ready-made leads",
        also("premade dc 350, 500 mm price 4,50, 5,50 EUR"),
    ),
    Slip(
        "518-midi-into-the-audio-input",
        "a MIDI lead into the audio input",
        swap(
            "keys.midi -> swell.midi\n  swell", "keys.midi -> swell.inl\n  swell", "  M1 keys.midi -> swell.midi\n", ""
        ),
        WIRED,
    ),
    Slip(
        "519-loop-of-a-preset-that-is-not-there",
        "a preset that names a loop too high",
        also('preset 1 "Lift" {\n  loops 5 of gate\n  on tern\n}'),
        "switched.rig",
    ),
)
