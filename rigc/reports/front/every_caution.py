"""Every caution that the sheets give, once, with what calls for it; those that can kill stand before what hurts, that before what breaks.

Common practice, no source, where a line names none.
"""

from __future__ import annotations

from rigc.facts.mains import STEP_MORE
from rigc.facts.weight import ONE_LIFTER_KG
from rigc.record import Record

JOINED_LEADS, REVERSING_LEADS, MICROPHONE_LINES, RADIO_LINKS = "joined", "reversing", "microphone", "radio"


class Caution(Record):
    """One line, and what a rig must have to call for it; empty where every rig does."""

    words: str
    of: str = ""


SMOKE = Caution(
    "Smoke, a smell, a tingle: mains plug out at the wall, and it stays out. Nobody opens a supply. Never lift a protective earth."
)
EARTH = Caution(
    "Never lift, cut or tape a protective earth to cure hum: strings and microphones can become live, and that kills. "
    "Break the signal ground with a transformer, a relay or an opto-coupler instead."
)
LOOP = Caution(
    "A MIDI, USB or amp-switch lead can close a hum loop: break it with an opto-coupler or a relay, never by lifting a "
    "protective earth."
)
MAINS = Caution(
    "Mains: use certified supplies, inlets and lead sets. What is hard-wired, and protective earth, is made and tested by a "
    "competent or licensed person to the local code; rigc designs and approves no mains wiring."
)
ON_THE_ROAD = Caution(
    "Mains parts are not for the road: a supply, inlet or mains lead is replaced by one of its kind, whole, and its earth is "
    "tested by a competent person. Never disconnect or lift a protective earth."
)
BOND = Caution(
    "Earth bond and insulation are tested by a competent or licensed person before first power and after any change on the mains "
    "side; until then the board is not plugged in."
)
SOCKETS = Caution("Ask the venue what its sockets give before anything is plugged in; measure where you are not sure.")
OPENED = Caution(
    "Unplug the mains before a lid is opened or a unit comes off: supplies hold charge, valve units more than 300 V, and nothing "
    "inside is for the user."
)
RESIDUAL = Caution("On a stage that you do not know, feed amps through a residual-current device (30 mA is usual).")
ADAPTOR = Caution(
    "A plug adaptor converts no voltage. Step transformers: isolating, earthed, rated at least "
    f"{STEP_MORE.value:g} times the load; the fuse of a plug by the local code."
)
FLAMMABLE = Caution(
    "Contact cleaner, isopropyl alcohol and residue removers are flammable: power off, air, no flame, no smoking, no hot iron "
    "near; let them dry."
)
LIFTED = Caution(
    f"Write the mass on the case. Two people lift what is above about {ONE_LIFTER_KG.value:g} to 25 kg "
    f"({ONE_LIFTER_KG.source}; ISO 11228-1, from memory). Airline limits are the carrier's."
)
TREADLES = Caution("Treadles are bolted or rest against a stop, and the board must not tip under a foot at its edge.")
SOLDERING = Caution("Soldering: air the room, protect your eyes, keep cleaner and the hot iron apart, wash your hands.")
MUTED = Caution(
    "Mute amps and desk and turn the volume down before a lead is plugged or pulled: a thump can hurt ears and loudspeakers."
)
SOFTLY = Caution("Mute amps and desk before each plug, and listen softly: what comes back comes back loud.")
TONES = Caution("Test tones at a low level, with ears and loudspeakers out of their way: ears are hurt at once.")
SPEAKER = Caution(
    "A loudspeaker output carries tens of volts: never bring it to an instrument or line jack; use a load or line box made for it."
)
PHANTOM = Caution(
    "A desk's microphone lines can carry 48 V: use a DI rated for it, and mute the channel before plugging.",
    MICROPHONE_LINES,
)
TAPED = Caution("Tape down leads that lie on the floor, away from mains leads, at a right angle where they must cross.")
CELLS = Caution(
    "Cells: take flat ones out at once, carry lithium cells in the cabin with their terminals covered, burn none."
)
RADIO = Caution(
    "Radio: use only frequencies that the country allows; carry lithium cells in the cabin, terminals covered.",
    RADIO_LINKS,
)
METER = Caution(
    "Check voltage and polarity of every DC plug with a meter before it goes into a unit: the wrong one destroys it at once."
)
AC = Caution("Feed AC only to units marked for AC; never change a brick of the mains.")
JOINED = Caution(
    "Leads that join two outlets are used only as the maker of the supply allows; mark them, keep them apart.",
    JOINED_LEADS,
)
REVERSED = Caution("Mark the reversing lead at both ends: on another unit it does damage.", REVERSING_LEADS)
EXPRESSION = Caution(
    "An expression lead has three conductors: a two-pole plug shorts the unit's reference supply to ground."
)
MERGED = Caution(
    "A Y lead does not merge MIDI: two senders meet in a merger. Never send power over spare pins through a splitter."
)
KNOWN_LEAD = Caution(
    "Take one lead that you know is good. What is plugged in where it goes comes out, and goes back before the next line."
)
CLAMPED = Caution("Clamp on the jacket, not on the braid; try each lead for continuity and short before it is fitted.")
VERIFIED = Caution(
    "Figures are computed from the facts entered. Verify them by measurement before use; the builder answers for the rig as built."
)
