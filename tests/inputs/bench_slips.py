"""Wrong inputs of people who write rigs every week: in a hurry, by copy and paste, out of other notations."""

from __future__ import annotations

from inputs.slip import Slip, also, each, swap
from inputs.slips import CHAIN, HELD, SWITCHED, TERN

TERN_BLOCK = """
unit tern "chorus" {
  measured 2026-02-14 by "R.K."
  body 70 x 120 x 55 mm
  mass 380 g
  bypass true
  input in ts 1 Mohm right 80 mm up 25 mm
  output out ts 1 kohm left 80 mm up 25 mm
  inlet dc barrel 5.5 x 2.1 mm rear 35 mm up 33 mm
  needs 9 V dc
  polarity centre-negative
  draws 30 mA
}
"""
OUTLETS = "outlet o1..o2 9 V dc 200 mA isolated rear 30..90 mm"
OTHERS = "others from brook"

AT_THE_BENCH = (
    Slip("301-copied-unit-keeps-its-name", "a unit copied, its name forgotten", also(TERN_BLOCK)),
    Slip("302-outlet-without-milliampere", "a current without its unit", swap("200 mA isolated", "200 isolated")),
    Slip("303-decimal-comma-in-a-body", "a decimal comma among sizes", swap("70 x 120 x 55 mm", "70,5 x 120 x 55 mm")),
    Slip("304-capital-statement", "a statement with a capital", swap("  mass 400 g", "  Mass 400 g")),
    Slip("305-capital-block", "a block with a capital", swap(TERN, TERN.replace("unit", "Unit"))),
    Slip("306-curly-quotes-round-a-path", "a word processor's quotes round a path", swap('use "stock/plugs.rig"', "use \u201cstock/plugs.rig\u201d")),
    Slip("307-trailing-blanks-and-tabs", "blanks and tabs at the ends of lines", each("\n  ", " \t \n\t  ")),
    Slip("308-level-of-a-jack-that-is-not-there", "a level at a jack of another name", swap("  draws 8 mA", "  level input max 6 dBu\n  draws 8 mA")),
    Slip("309-unit-twice-in-a-row", "a chain entry pasted twice", swap("-> tern ->", "-> tern -> tern ->")),
    Slip("310-outlet-used-twice", "one outlet for two units", swap(OTHERS, "tern from brook.o1\n  fen from brook.o1")),
    Slip("311-loop-left-half", "a loop that says nothing", swap(HELD, "loop 1 of gate"), "switched.rig"),
    Slip("312-loop-holds-nothing", "a loop that holds and does not say what", swap(HELD, "loop 1 of gate holds"), "switched.rig"),
    Slip("313-millimetre-for-centimetre", "mm for cm", swap("70 x 120 x 55 mm", "7 x 12 x 5.5 mm")),
    Slip("314-deck-in-centimetres", "a deck's centimetres as mm", swap("size 320 x 200 mm", "size 32 x 20 mm")),
    Slip("315-milliampere-for-ampere", "mA for A", swap("dc 200 mA", "dc 0.2 mA")),
    Slip("316-another-degree-sign", "an ordinal for the degree sign", swap("tern at 200, 20 mm", "tern at 200, 20 mm turned 90\u00ba")),
    Slip("317-trailing-text", "words behind a fact", swap("mass 400 g", "mass 400 g without knobs")),
    Slip("318-last-brace-missing", "the last brace forgotten", lambda data: data.rstrip().removesuffix(b"}")),
    Slip("319-two-rigs-in-one-file", "two rigs in one file", also('rig three-step "Three Step" {\n  revision A 2026-03-02\n}')),
    Slip("320-use-of-a-folder", "a folder used", swap('use "stock/plugs.rig"', 'use "stock"')),
    Slip("321-use-of-another-rig", "another rig used for its units", swap('use "stock/premade.rig"', 'use "stock/premade.rig"\nuse "other.rig"'), beside=(("other.rig", 'language 1\n\nrig other "Other" {\n  revision B 2026-01-02\n}\n'),)),
    Slip("322-rule-by-its-old-code", "a rule by a code of old", also('accept G04 on tern "as it was" by "R.K." until 2026-12-31')),
    Slip("323-feed-with-a-colon", "a feed with a colon", swap(OTHERS, f"tern: brook.o1\n  {OTHERS}")),
    Slip("324-blank-for-the-dot", "a blank for the dot", swap(OTHERS, f"tern from brook o1\n  {OTHERS}")),
    Slip("325-place-with-a-colon", "a place with a colon", swap("tern at 200, 20 mm", "tern: 200, 20 mm")),
    Slip("326-place-by-letters", "a place by letters", swap("tern at 200, 20 mm", "tern at x 200 y 20 mm")),
    Slip("327-about", "a sign for about", swap("mass 400 g", "mass ~400 g")),
    Slip("328-less-than", "a sign for at most", swap("draws 8 mA", "draws < 8 mA")),
    Slip("329-range-of-a-current", "a range for one figure", swap("draws 8 mA", "draws 6..8 mA")),
    Slip("330-note-over-two-lines", "a note over two lines", swap("  draws 8 mA\n}", '  draws 8 mA\n  note "spare fuses\n  in the lid"\n}')),
    Slip("331-vdc", "the word of a label", swap("needs 9 V dc", "needs 9VDC")),
    Slip("332-quarter-inch-jack", "a jack by its inches", swap("input in ts 1 Mohm", 'input in 1/4" 1 Mohm')),
    Slip("333-true-bypass", "two words for one", swap("bypass buffered", "true bypass")),
    Slip("334-digital-yes", "yes behind a property", swap("  digital\n", "  digital yes\n")),
    Slip("335-arrow-with-two-hyphens", "an arrow with two hyphens", swap(CHAIN, CHAIN.replace("->", "-->"))),
    Slip("336-arrow-of-one-sign", "an arrow without its hyphen", swap(CHAIN, CHAIN.replace("->", ">"))),
    Slip("337-plus-for-parallel", "a plus for two in parallel", swap("tern -> fen", "tern + fen")),
    Slip("338-outlets-as-numbers", "outlets by bare numbers", swap("outlet o1..o2", "outlet 1..2")),
    Slip("339-empty-power-block", "a power block that says nothing", swap(f"  {OTHERS}\n", "")),
    Slip("340-commas-in-a-loop", "commas in a loop", swap(HELD, HELD.replace(" ->", ",")), "switched.rig"),
    Slip("341-arrow-at-the-end", "a chain that ends with an arrow", swap(SWITCHED, f"{SWITCHED} ->"), "switched.rig"),
    Slip("342-bushing-without-place", "a bushing without its place", swap("ts 1 Mohm right 80 mm up 25 mm", "ts 1 Mohm bonded")),
    Slip("343-who-before-when", "who before when", swap('measured 2026-02-14 by "R.K."', 'measured by "R.K." 2026-02-14')),
    Slip("344-unpowered-dead", "a word that is none", swap("  draws 8 mA", "  unpowered dead\n  draws 8 mA")),
    Slip("345-placed-twice", "one unit at two places", swap("fen at 60, 20 mm", "fen at 60, 20 mm\n  fen at 70, 20 mm")),
    Slip("346-cable-without-of", "of forgotten", swap("lead 6 m of stage-coax", "lead 6 m stage-coax")),
    Slip("347-quotes-round-a-cable", "quotes round a name", swap("of stage-coax", 'of "stage-coax"')),
    Slip("348-include", "the word of another language", swap('use "stock/plugs.rig"', 'include "stock/plugs.rig"')),
    Slip("349-fed-twice", "one unit on two outlets", swap(OTHERS, f"tern from brook.o1\n  tern from brook.o2\n  {OTHERS}")),
    Slip("350-brace-too-many", "a brace too many", swap("  draws 8 mA\n}", "  draws 8 mA\n}\n}")),
    Slip("351-capital-ohm", "ohm with a capital", swap("ts 1 Mohm right", "ts 1 MOhm right")),
    Slip("352-like-in-a-circle", "two units like each other", swap(TERN, 'unit tern like fen "overdrive" {')),
    Slip("353-milliampere-hours", "the charge for the current", swap("draws 8 mA", "draws 8 mAh")),
    Slip("354-switcher-in-its-own-loop", "a switcher in its own loop", swap(HELD, "loop 1 of gate holds gate -> tern"), "switched.rig"),
    Slip("355-one-loop-twice", "one loop stated twice", swap(HELD, f"{HELD}\nloop 1 of gate holds fen"), "switched.rig"),
    Slip("356-one-number-of-a-place", "one number of a place", swap("tern at 200, 20 mm", "tern at 200 mm")),
    Slip("357-chain-in-capitals", "names in capitals in the chain", swap(CHAIN, "chain GUITAR -> TERN -> FEN -> COMBO")),
    Slip("358-polarity-plus-inside", "plus inside", swap("polarity centre-negative", "polarity plus inside")),
    Slip("359-inch-for-millimetre", "in for mm", swap("70 x 120 x 55 mm", "70 x 120 x 55 in")),
    Slip("360-signal-chain", "a word before the statement", swap("chain ", "signal chain ")),
    Slip("361-power-supply", "a word before a block", swap("supply brook", "power supply brook")),
    Slip("362-grounded-amp", "another word for earthed", swap("  earthed", "  grounded")),
)  # fmt: skip
"""What a bench sees in a busy year."""
