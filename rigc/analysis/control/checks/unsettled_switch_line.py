"""A preset says nothing of a switch line that another preset sets, or sets one into which no lead is plugged; or all presets set it
the same way and say that different things come of it.

Why it matters: a relay stays as the last preset left it, so that the amp's channel hangs on where the player comes from; without a lead
nothing is switched at all. A line has two positions and each does one thing: with the same position, both presets sound on one channel.
What to do: say in every preset how the line stands, and join it to what it switches in the control block.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import permutations

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
    "a switch line that one preset sets is set by every preset, and has a lead, and does in one position one thing",
    "common practice, no source",
)


def unsettled_switch_line(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each line that some presets leave as it was, one for each without a lead, one for each that all set the same way
    and of which they say different things."""
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
        texts = {line.text.casefold(): line for line in lines if line.text}
        if len({line.position for line in lines}) == 1 and _unlike(list(texts)):
            yield _two_things(at, list(texts.values()))


def _unlike(texts: list[str]) -> bool:
    """Whether there are two, and neither says the other in more words."""
    return len(texts) > 1 and not any(one in other for one, other in permutations(texts, 2))


def _two_things(at: Port, lines: list[SwitchLine]) -> Diagnostic:
    """All presets set the line the same way, and say that different things come of it."""
    position = lines[0].position
    other = "open" if position == "closed" else "closed"
    texts = [f'"{line.text}"' for line in lines]
    return KIND.at(
        lines[-1].span,
        f"'{at}' is {position} in every preset that sets it, and said to be {joined(texts)}",
        subject=(str(at), position),
        label="the same position",
        also=tuple(Label(line.span, "as here") for line in lines[:-1]),
        help=f"write `{other}` where it is to stand the other way, or say the same of all",
    )


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
