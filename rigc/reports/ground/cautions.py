"""What must be said wherever grounds are broken or joined."""

from __future__ import annotations

from rigc.model.rig import Rig
from rigc.reports.content import Paragraph

_ALWAYS = (
    "Never lift, cut or tape a protective earth to cure hum: strings and microphones can become live, and that kills. "
    "Break the signal ground with a transformer, a relay or an opto-coupler instead.",
    "On a stage that you do not know, feed amps through a residual-current device (30 mA is usual).",
    "After any change on the mains side, have the earth bond tested by a competent person before power is put on.",
)
_DESK = "A desk's microphone lines can carry 48 V: use a DI rated for it, and mute the channel before plugging."
_VERIFY = "Computed from the facts entered; verify by measurement before use. The builder answers for the rig as built."


def ground_cautions(rig: Rig) -> Paragraph:
    """The cautions that this rig calls for."""
    desk = any(unit.kind == "desk" for unit in rig.units.values())
    lines = (*_ALWAYS, *((_DESK,) if desk else ()), _VERIFY)
    return Paragraph("cautions", lines, heading="before you break or join a ground", kind="caution")
