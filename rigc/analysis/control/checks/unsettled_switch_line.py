"""A preset says nothing of a switch line that another preset sets, or sets one into which no lead is plugged.

Why it matters: a relay stays as the last preset left it, so that the amp's channel hangs on where the player comes from; without a lead
nothing is switched at all.
What to do: say in every preset how the line stands, and join it to what it switches in the control block.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import AddTo, Mend
from rigc.diagnostics.wording import joined
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import Preset, SwitchLine

KIND = Kind(
    "unsettled-switch-line",
    Level.WARNING,
    __doc__,
    "a switch line that one preset sets is set by every preset, and has a lead",
    "common practice, no source",
)


def unsettled_switch_line(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each line that some presets leave as it was, one for each without a lead."""
    set_by: dict[Port, list[SwitchLine]] = {}
    for preset in rig.presets.values():
        for line in preset.lines:
            set_by.setdefault(line.at, []).append(line)
    plugged = {link.start for link in rig.connections}
    for at, lines in set_by.items():
        silent = [preset for preset in rig.presets.values() if all(line.at != at for line in preset.lines)]
        if at not in plugged:
            yield KIND.at(
                lines[0].span,
                f"no lead is plugged into '{at}', which {'presets set' if lines[1:] else 'a preset sets'}",
                subject=(str(at), "no lead"),
                label="switches nothing",
                help=f"say in the control block what it switches: `{at} -> ...`",
            )
        if silent:
            yield _silent(at, lines, silent)


def _silent(at: Port, lines: list[SwitchLine], silent: list[Preset]) -> Diagnostic:
    names = [f"preset {preset.number}" for preset in silent]
    ways = ("open", "closed") if all(line.position == "closed" for line in lines) else ("closed", "open")
    return KIND.at(
        silent[0].span,
        f"{joined(names)} {'say' if names[1:] else 'says'} nothing of '{at}', which others set: it stays as it was",
        subject=(str(at), *names),
        label="as the preset before left it",
        also=(Label(lines[0].span, "set here"),),
        mends=tuple(
            Mend(
                f"write `{way} {at}` {'in each of them' if names[1:] else 'there'}",
                tuple(AddTo("preset", str(preset.number), f"{way} {at}") for preset in silent),
            )
            for way in ways
        ),
    )


CHECK = unsettled_switch_line
