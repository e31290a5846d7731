"""The text of a small rig to start from: complete and without errors; what it warns of is what must be looked at before anything is plugged in."""

from __future__ import annotations

_TEXT = """\
# A rig to start from. All figures are invented: replace each by what you measured, and delete `assumed` where you did.
# `rigc check {file}` tells what is wrong or missing, `rigc build {file}` writes the documents.
# `rigc show stock` lists the cables, plugs, strips and decks that come with rigc; `rigc explain` lists its rules.
language 1

use "stock/plugs.rig"
use "stock/cables.rig"
use "stock/strips.rig"
use "stock/premade.rig"

rig {name} "{title}" {{
  revision A {day} "first draft"
  class home  # or gigging, touring, fly, studio: how strict some checks are
  marker 30 characters  # what one of your cable markers holds
}}

# What the sound begins and ends at.
instrument guitar {{
  assumed {day} by "nobody yet"
  inductance 4.2 H
  capacitance 120 pF
  level out -20 dBu peak 4 dBu
  lead 6 m of stage-coax
}}

amp combo {{
  assumed {day} by "nobody yet"
  input in ts 1 Mohm
  level in max 11 dBu
  earthed
}}

# A unit, its front towards the player. A jack on the left or right side lies so far from the front edge, one on the front
# or rear so far from the left edge; `up` is its height from the base without feet.
unit drive "overdrive" {{
  assumed {day} by "nobody yet"  # then: measured {day} by "your initials"
  body 70 x 120 x 55 mm  # width x depth x height with knobs, without feet
  mass 400 g
  switch at 35, 20 mm
  bypass true  # or buffered, trails, always-on, unknown
  unpowered passes  # or mutes, latches
  input in ts 1 Mohm right 80 mm up 25 mm
  output out ts 1 kohm left 80 mm up 25 mm
  inlet dc barrel 5.5 x 2.1 mm rear 35 mm up 33 mm
  needs 9 V dc
  polarity centre-negative  # look at the drawing beside the inlet: rigc warns as long as this is assumed
  draws 8 mA
  level in -20 dBu max 11 dBu
  level out -20 dBu peak 4 dBu
}}

# A second one with the same case: it says only what differs.
unit echo like drive "delay" {{
  assumed {day} by "nobody yet"
  mass 420 g
  digital
  delay
  draws 60 mA
}}

supply mains-box "two outlets" {{
  assumed {day} by "nobody yet"
  body 120 x 60 x 35 mm
  mass 600 g
  linear
  mains 230 V 50 Hz
  ceiling 3.6 W  # the most that all outlets give together
  connector barrel 5.5 x 2.1 mm
  polarity centre-negative
  outlet o1..o2 9 V dc 200 mA isolated rear 30..90 mm
}}

power {{
  others from mains-box  # rigc chooses the outlets
}}

chain guitar -> drive -> echo -> combo

# Places count from the front-left corner of the deck, as the player sees it.
deck plank {{
  size 320 x 200 mm
  thickness 12 mm
  drop 160 mm  # how far from the front edge leads pass through it
  clearance 60 mm  # the room below
  mass 900 g
}}

place {{
  drive at 200, 20 mm
  echo at 60, 20 mm
  mains-box under at 100, 100 mm
}}

mounting {{
  all with mushroom
  mains-box brackets
}}
"""


def starter(name: str, title: str, day: str, file: str) -> str:
    """The text of a rig of that name and title, its first revision of that day (year-month-day); `file` is how it is named to rigc."""
    return _TEXT.format(name=name, title=title, day=day, file=file)
