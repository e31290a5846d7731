"""Slips in a rig of which every lead is stated: one cause shows at many leads, and is told once, where it is; and more of those of a hurry."""

from __future__ import annotations

from inputs.slip import Slip, also, swap

WIRED = "wired.rig"
CHAIN = "chain keys => swell => drift => di => front"

IN_A_WIRED_RIG = (
    Slip(
        "506-chain-in-another-order",
        "two units exchanged in the chain",
        swap("swell => drift", "drift => swell"),
        WIRED,
    ),
    Slip(
        "401-mono-arrows-and-leads-of-both-sides",
        "-> for => all along a chain",
        swap(CHAIN, CHAIN.replace("=>", "->")),
        WIRED,
    ),
    Slip("402-one-mono-arrow", "-> for => at one hop", swap("=> drift", "-> drift"), WIRED),
    Slip(
        "403-sides-crossed",
        "left into right, and right into left",
        swap(
            "A3 swell.outl -> drift.inl",
            "A3 swell.outl -> drift.inr",
            "A4 swell.outr -> drift.inr",
            "A4 swell.outr -> drift.inl",
        ),
        WIRED,
    ),
    Slip(
        "404-unit-left-out-of-the-chain", "a unit forgotten in the chain", swap("=> swell => drift", "=> swell"), WIRED
    ),
    Slip(
        "405-fed-from-another-outlet",
        "the power block and a lead differ",
        swap("drift from brook.o2", "drift from brook.o1", "swell from brook.o1", "swell from brook.o2"),
        WIRED,
    ),
    Slip("406-not-fed", "a feed forgotten, its lead stated", swap("  drift from brook.o2\n", ""), WIRED),
    Slip("407-outlet-twice", "two feeds from one outlet", swap("drift from brook.o2", "drift from brook.o1"), WIRED),
    Slip(
        "408-pair-misspelt",
        "a jack of a pair misspelt",
        swap("pair inl, inr\n  pair outl, outr\n  midi in", "pair inl, inright\n  pair outl, outr\n  midi in"),
        WIRED,
    ),
    Slip(
        "409-pair-of-an-input-and-an-output",
        "an input and an output as a pair",
        swap("pair inl, inr\n  pair outl, outr\n  midi in", "pair inl, outr\n  pair outl, inr\n  midi in"),
        WIRED,
    ),
    Slip(
        "410-jack-line-of-what-others-are-like",
        "a line that can't be read, of a unit that another is like",
        swap("right 90 mm up 25 mm\n", "right 90 mm up 25 mm insulated bonded\n"),
        WIRED,
    ),
    Slip(
        "411-pair-line-without-comma",
        "a pair without its comma",
        swap("pair outl, outr\n  midi in", "pair outl outr\n  midi in"),
        WIRED,
    ),
    Slip(
        "412-unit-misspelt-in-a-wired-chain", "a unit misspelt in the chain", swap("=> drift =>", "=> drfit =>"), WIRED
    ),
    Slip(
        "413-midi-turned-round",
        "a MIDI lead the wrong way",
        swap("keys.midi -> swell.midi\n  swell", "swell.midi -> keys.midi\n  swell"),
        WIRED,
    ),
    Slip(
        "414-midi-not-in-its-block",
        "a MIDI lead that no block joins",
        swap("  keys.midi -> swell.midi\n  swell", "  swell"),
        WIRED,
    ),
    Slip(
        "415-control-not-in-its-block",
        "a control lead that no block joins",
        swap("  lever.out -> drift.exp\n}", "}"),
        WIRED,
    ),
    Slip(
        "416-expression-into-audio",
        "an expression lead into an audio jack",
        swap("lever.out -> drift.exp\n}", "lever.out -> drift.inl\n}"),
        WIRED,
    ),
    Slip(
        "417-lead-turned-round",
        "a stated lead the wrong way",
        swap("C1 lever.out -> drift.exp", "C1 drift.exp -> lever.out"),
        WIRED,
    ),
    Slip(
        "418-other-desk-inputs",
        "the chain names another input than a lead",
        swap("di.outl -> front.in1 made 10 m", "di.outl -> front.in2 made 10 m"),
        WIRED,
    ),
    Slip("419-lift-of-a-thing", "a lift without its jack", swap("lift di.outl open", "lift di open"), WIRED),
    Slip(
        "420-lift-where-there-is-none",
        "a lift of a jack that has none",
        swap("lift di.outl open", "lift swell.outl open"),
        WIRED,
    ),
    Slip(
        "421-chain-twice-by-name",
        "two chains of one name",
        swap(CHAIN, f"chain main: keys.outl -> swell.inl\nchain main: swell.outl -> drift.inl\n{CHAIN}"),
        WIRED,
    ),
    Slip(
        "422-phantom-of-an-output",
        "an output that gives phantom power",
        swap("  lift outl closed", "  phantom outl gives 48 V\n  lift outl closed"),
        WIRED,
    ),
    Slip(
        "423-phantom-of-an-input",
        "an input that needs phantom power",
        swap("  pair in1, in2", "  phantom in1 needs 48 V\n  pair in1, in2"),
        WIRED,
    ),
    Slip(
        "424-made-of-a-captive-lead",
        "a lead that grows out of its supply, and is said to be made",
        swap(
            "200 mA isolated rear 30..90 mm",
            "200 mA isolated captive 1.8 m rear 30..90 mm",
            "D1 brook.o1 -> swell.dc",
            "D1 brook.o1 -> swell.dc made 900 mm",
        ),
        WIRED,
    ),
    Slip("425-ac-with-polarity", "AC for DC", swap("needs 9 V dc", "needs 9 V ac"), WIRED),
)

IN_A_HURRY = (
    Slip("426-title-of-two-words", "a title of two words without quotes", swap('"overdrive"', "warm overdrive")),
    Slip("427-song-of-two-words", "a song of two words without quotes", also("song Low Gate {\n  tempo 96 bpm\n}")),
    Slip(
        "428-spare-of-two-words",
        "a spare of two words without quotes",
        also('spares {\n  1 of plain lead in "trunk"\n}'),
    ),
    Slip(
        "429-spare-without-millimetre",
        "a length whose unit is forgotten, before `in`",
        also('spares {\n  1 audio lead 700 in "lid"\n}'),
    ),
    Slip("430-one-merge-mark-left", "one mark of a merge left behind", swap("power {", "=======\npower {")),
    Slip(
        "431-power-factor-in-percent",
        "a power factor in percent",
        swap("  linear\n", "  linear\n  power factor 70 %\n"),
    ),
    Slip(
        "432-efficiency-as-a-part", "an efficiency as a part of 1", swap("  linear\n", "  linear\n  efficiency 0.4\n")
    ),
    Slip(
        "433-level-in-dbv",
        "a level against another volt",
        swap("  bypass buffered", "  level out -10 dBV peak 4 dBu\n  bypass buffered"),
    ),
    Slip("434-deck-in-grams", "grams for kilograms of a deck", swap("mass 900 g", "mass 0.9 g")),
    Slip(
        "435-limit-in-grams", "grams for kilograms of a limit", swap("  class home", "  class home\n  limit lift 23 g")
    ),
    Slip(
        "436-currency-of-four-letters", "a currency of four letters", swap("mass 900 g", "mass 900 g\n  price 90 EURO")
    ),
    Slip("437-price-without-currency", "a price without its currency", swap("mass 900 g", "mass 900 g\n  price 90")),
    Slip("438-frozen-without-whom", "a freeze without who", swap("  class home", "  class home\n  frozen 2026-03-03")),
    Slip(
        "439-heel-for-the-whole-deck",
        "a heel's room as deep as the deck",
        swap("mass 900 g", "mass 900 g\n  heel 190 mm"),
    ),
    Slip(
        "440-drop-line-beneath-tape",
        "a drop line beneath the tape of a rail",
        swap("drop 160 mm", "drop 160 mm\n  rail 140..185 mm tape 145..180 mm"),
    ),
    Slip(
        "441-chain-that-breaks-off-with-leads",
        "a chain half deleted, its leads stated",
        swap(CHAIN, "chain keys => swell =>"),
        WIRED,
    ),
    Slip(
        "442-one-plug-of-a-lead",
        "the plug of one end alone",
        swap("A3 swell.outl -> drift.inl", "A3 swell.outl -> drift.inl flat-angle"),
        WIRED,
    ),
    Slip(
        "443-drop-line-that-is-none",
        "a lead through a line that the deck has not",
        swap("A3 swell.outl -> drift.inl", "A3 swell.outl -> drift.inl under through 140 mm"),
        WIRED,
    ),
    Slip(
        "444-midi-in-a-chain",
        "a MIDI lead as a chain",
        swap(
            "  keys.midi -> swell.midi\n",
            "",
            "midi {",
            "chain keys.midi -> swell.midi\n\nmidi {",
            "  M1 keys.midi -> swell.midi\n",
            "",
        ),
        WIRED,
    ),
    Slip(
        "445-like-of-a-misspelt-unit",
        "a unit that is like one that is misspelt, its leads stated",
        swap("like swell", "like swel"),
        WIRED,
    ),
    Slip(
        "446-mains-turned-round",
        "the frequency before the voltage",
        swap("mains 230 V 50 Hz\n  country", "mains 50 Hz 230 V\n  country"),
        WIRED,
    ),
    Slip(
        "447-height-in-centimetres",
        "a height in centimetres among millimetres",
        swap("body 70 x 120 x 55 mm", "body 70 x 120 x 5.5 mm"),
    ),
    Slip(
        "448-inlet-of-another-barrel",
        "a barrel that the outlet does not fit",
        swap("barrel 5.5 x 2.1 mm rear 35", "barrel 5.5 x 2.5 mm rear 35"),
    ),
    Slip("449-barrel-without-sizes", "a plug's barrel without its sizes", also("plug mine {\n  fits barrel\n}")),
    Slip(
        "450-supply-nowhere",
        "a supply that has no place",
        swap("  brook under at 100, 100 mm\n", "", "  brook brackets\n", ""),
    ),
    Slip(
        "451-one-lead-two-numbers",
        "a lead stated once more under another number",
        swap("  M1 keys", "  A9 swell.outl -> drift.inl\n  M1 keys"),
        WIRED,
    ),
    Slip(
        "452-power-lead-into-an-audio-jack",
        "a power lead into an audio jack",
        swap("D1 brook.o1 -> swell.dc", "D1 brook.o1 -> swell.inl"),
        WIRED,
    ),
    Slip("453-chain-into-an-instrument", "a chain that ends at the guitar", swap("fen -> combo", "fen -> guitar")),
    Slip("454-instrument-twice", "the guitar twice", swap("chain guitar ->", "chain guitar -> guitar ->")),
    Slip(
        "455-place-block-pasted-again",
        "a place pasted again in a second block",
        also("place {\n  tern at 200, 20 mm\n}"),
    ),
    Slip("456-ac-or-dc", "what a plate says of a unit that takes either", swap("needs 9 V dc", "needs 9 V ac/dc")),
    Slip("457-needs-a-range", "a window where one voltage goes", swap("needs 9 V dc", "needs 9-12 V dc")),
    Slip(
        "458-unit-renamed-in-its-block-alone",
        "a unit renamed in its block, and nowhere else",
        swap("unit lever", "unit treadle-one"),
        WIRED,
    ),
    Slip(
        "459-jack-renamed-in-its-line-alone",
        "a jack renamed in its line, and nowhere else",
        swap("output outl ts 1 kohm left 60", "output main ts 1 kohm left 60"),
        WIRED,
    ),
    Slip(
        "520-insulated-outlets",
        "outlets that are insulated, where they are isolated",
        swap("200 mA isolated", "200 mA insulated"),
        WIRED,
    ),
    Slip(
        "530-loop-jacks-exchanged",
        "send and return of a loop exchanged, whose leads are stated",
        swap(
            "  loop 1..4 send s1..s4 return r1..r4\n",
            "  loop 1..4 send r1..r4 return s1..s4\n}\nleads {\n  A1 tern.out -> fen.in\n  A2 gate.s1 -> tern.in\n}\nunit spare-gate like gate {\n",
        ),
        "switched.rig",
    ),
    Slip(
        "531-jack-in-two-pairs",
        "a jack that is of two stereo pairs",
        swap("  pair inl, inr\n", "  pair inl, inr\n  pair inr, aux\n  input aux ts 1 Mohm\n"),
        WIRED,
    ),
    Slip(
        "532-drop-line-beneath-tape",
        "a drop line that lies beneath a rail's tape, of which a lead's way follows",
        swap(
            "  drop 130 mm\n",
            "  drop 20 mm\n  rail 0..45 mm tape 2..42 mm\n}\nleads {\n  A1 tern.out -> fen.in under through 130 mm\n}\ndeck shelf {\n",
        ),
        "switched.rig",
    ),
    Slip(
        "533-leads-in-no-chain",
        "leads stated of things of which no chain joins any",
        swap(
            "deck plank {",
            "instrument bass {\n  level out -20 dBu\n}\nunit loam like tern {\n}\namp stack like combo {\n}\nleads {\n  A1 bass.out -> loam.in\n  A2 loam.out -> stack.in\n}\ndeck plank {",
        ),
        "switched.rig",
    ),
)
