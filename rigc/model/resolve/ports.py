"""A name or `name.jack` in a statement -> the port that is meant."""

from __future__ import annotations

from collections.abc import Container
from typing import Any

from rigc.diagnostics.diagnostic import Label
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.near import nearest
from rigc.model.jacks import Jack, Port
from rigc.model.resolve.context import Context
from rigc.model.scope import MISUSED, UNCLEAR, UNKNOWN, corrected
from rigc.model.things import UNITS, AnyThing, Supply, Unit
from rigc.model.wishes import Gap
from rigc.source import Span
from rigc.syntax.nodes import Word

_FEW = 4
ANY_THING = (*UNITS, "instrument", "source", "supply", "panel")
IN = {"in": ("input", "panel"), "out": ("output", "panel")}


class Ports:
    """Finds the jacks that statements mean, among all things."""

    def __init__(self, context: Context, things: dict[str, AnyThing]) -> None:
        self.context = context
        self.things = things
        self.gaps: list[Gap] = []

    def thing(self, name: Word, wanted: str = "a unit, amp, instrument or panel") -> AnyThing | None:
        """The thing of that name; None after a finding."""
        found = self.context.scopes["thing"].find(name, ANY_THING, wanted)
        return self.things.get(found) if found else None

    def unit(self, name: Word, wanted: str) -> Unit | None:
        """The unit, amp, desk or listener of that name; None after a finding, also where it is something else."""
        return self._unit(self.context.scopes["thing"].find(name, UNITS, wanted))

    def switcher(self, name: Word, wanted: str) -> Unit | None:
        """As `unit`, of one that should have loops: only such are offered instead."""
        looped = [each.name for each in self.things.values() if each.loops]
        return self._unit(self.context.scopes["thing"].find(name, UNITS, wanted, looped))

    def _unit(self, name: str | None) -> Unit | None:
        thing = self.things.get(name) if name else None
        return thing if isinstance(thing, Unit) else None

    def jack(self, thing: AnyThing, name: Word) -> Jack | None:
        """The jack of that name; None after a finding that lists the nearest."""
        jack: Jack | None = thing.jack(name.text)
        if jack is not None or thing.name in self.context.unsure:
            return jack
        outlets = thing.outlets if isinstance(thing, Supply) else ()
        outlet = next((each for each in outlets if each.name == name.text), None)
        if outlet is not None:
            self.context.report(
                MISUSED.at(
                    name.span,
                    f"'{thing.name}.{name}' is an outlet; a jack goes here",
                    subject=(f"{thing.name}.{name}", thing.name),
                    label="an outlet",
                    also=(Label(outlet.span, "declared here"),),
                    help="name a jack of another thing",
                )
            )
            return None
        names = [*(each.name for each in thing.jacks), *(each.name for each in outlets)]
        near = nearest(name.text, names)
        self.context.report(
            UNKNOWN.at(
                name.span,
                f"'{thing.name}' has no {'jack or outlet' if outlets else 'jack'} '{name.text}'",
                subject=(f"{thing.name}.{name.text}", thing.name),
                label=f"did you mean '{near}'?" if near else "no such jack",
                also=(Label(thing.declared, f"'{thing.name}' is declared here"),),
                help=""
                if near
                else f"its {'jacks and outlets' if outlets else 'jacks'} are {', '.join(names) or 'not declared yet'}",
                mends=corrected(name, near, f"{thing.name}.{near}") if near else (),
            )
        )
        return None

    def audio(self, thing: AnyThing, direction: str, named: Jack | None, span: Span) -> Port | None:
        """The audio jack by which a mono hop enters (`in`) or leaves (`out`) a thing.

        A named one wins; else the only one; else the one named `in` or `out`; else the left of its only stereo pair.
        """
        if named is not None:
            return Port(thing.name, named.name) if named.role in IN[direction] else None
        candidates = self.candidates(thing, direction)
        if len(candidates) == 1:
            return Port(thing.name, candidates[0])
        if direction in candidates:
            return Port(thing.name, direction)
        lefts = [left for left, _ in thing.pairs if left in candidates]
        if len(lefts) == 1:
            return Port(thing.name, lefts[0])
        if not candidates:
            self.gaps.append(Gap(thing.name, direction, span))
            return None
        self._unclear(thing, direction, candidates, span)
        return None

    def pairs(
        self, start: AnyThing, end: AnyThing, arrow: Word, start_span: Span, end_span: Span
    ) -> tuple[tuple[Port, Port], tuple[Port, Port]] | None:
        """The stereo pairs by which a `=>` leaves and enters; None after a finding."""
        outs, ins = self._pairs(start, "out"), self._pairs(end, "in")
        if len(outs) == len(ins) == 1:
            return _both(start, outs[0]), _both(end, ins[0])
        if {start.name, end.name} & self.context.unsure:
            return None
        mono = (Mend("write `->`: this hop is mono", (Replace(arrow.span, "->"),)),)
        if not outs and not ins:
            self.context.report(
                UNCLEAR.at(
                    arrow.span,
                    f"this => is stereo, but '{start.name}' has no pair of outputs and '{end.name}' no pair of inputs",
                    subject=(start.name, end.name),
                    label="stereo",
                    also=(Label(start.declared, "declared here"), Label(end.declared, "declared here")),
                    mends=mono,
                    help="declare the pairs in their blocks",
                )
            )
            return None
        for thing, direction, found, span in ((start, "out", outs, start_span), (end, "in", ins, end_span)):
            if len(found) != 1:
                self._no_pair(thing, direction, found, span, mono)
        return None

    def _pairs(self, thing: AnyThing, direction: str) -> list[tuple[str, str]]:
        candidates = self.candidates(thing, direction)
        return [pair for pair in thing.pairs if pair[0] in candidates and pair[1] in candidates]

    def _no_pair(
        self, thing: AnyThing, direction: str, found: list[tuple[str, str]], span: Span, mono: tuple[Mend, ...]
    ) -> None:
        word = "input" if direction == "in" else "output"
        self.context.report(
            UNCLEAR.at(
                span,
                f"'{thing.name}' has {'several pairs' if found else 'no pair'} of {word}s for a stereo =>",
                subject=(thing.name,),
                label="a stereo pair is needed here",
                also=(Label(thing.declared, "declared here"),),
                mends=() if found else mono,
                help=_pairing(thing, self.candidates(thing, direction), word, found),
            )
        )

    def candidates(self, thing: AnyThing, direction: str) -> list[str]:
        """Audio jacks of a direction that are not part of a loop."""
        return unlooped(thing, IN[direction])

    def of_roles(self, node: Any, roles: tuple[str, ...], what: str) -> Port | None:
        """The port of an endpoint among jacks of certain roles (MIDI, control, power); None after a finding."""
        thing = self.thing(node.thing)
        if thing is None:
            return None
        fitting = [jack.name for jack in thing.jacks if jack.role in roles]
        if node.jack is not None:
            jack = self.jack(thing, node.jack)
            if jack is None:
                return None
            if jack.role in roles:
                return Port(thing.name, jack.name)
            self.context.report(
                UNCLEAR.at(
                    node.jack.span,
                    f"'{thing.name}.{jack.name}' is no {what}",
                    subject=(f"{thing.name}.{jack.name}", thing.name),
                    label=f"a {what} goes here",
                    also=(Label(jack.span, f"declared as {jack.role}"),),
                    help=""
                    if len(fitting) == 1
                    else f"name one of {', '.join(f'{thing.name}.{name}' for name in fitting)}"
                    if fitting
                    else f"declare a {what} in its block",
                    mends=corrected(node.jack, fitting[0], f"{thing.name}.{fitting[0]}") if len(fitting) == 1 else (),
                )
            )
            return None
        if len(fitting) == 1:
            return Port(thing.name, fitting[0])
        self.context.report(
            UNCLEAR.at(
                node.span,
                f"'{thing.name}' has {_several(fitting, what)}",
                subject=(thing.name,),
                label="which jack?",
                also=(Label(thing.declared, "declared here"),),
                help=f"name one: {thing.name}.{fitting[0]}" if fitting else f"declare a {what} in its block",
            )
        )
        return None

    def _unclear(self, thing: AnyThing, direction: str, candidates: list[str], span: Span) -> None:
        if thing.name in self.context.unsure:
            return
        word = "inputs" if direction == "in" else "outputs"
        self.context.report(
            UNCLEAR.at(
                span,
                f"'{thing.name}' has the {word} {', '.join(candidates)}; which one is meant?",
                subject=(thing.name,),
                label=f"{len(candidates)} {word} fit here",
                also=(Label(thing.declared, "declared here"),),
                help=f"name it, for example {thing.name}.{candidates[0]}" if len(candidates) > _FEW else "",
                mends=tuple(
                    Mend(f"write {thing.name}.{name}", (Replace(span, f"{thing.name}.{name}"),))
                    for name in (candidates if len(candidates) <= _FEW else ())
                ),
            )
        )


def unlooped(thing: AnyThing, roles: Container[str]) -> list[str]:
    """The jacks of these roles that are not part of a loop."""
    looped = {name for loop in thing.loops for name in (loop.send, loop.back)}
    return [jack.name for jack in thing.jacks if jack.role in roles and jack.name not in looped]


def _both(thing: AnyThing, pair: tuple[str, str]) -> tuple[Port, Port]:
    return Port(thing.name, pair[0]), Port(thing.name, pair[1])


def _pairing(thing: AnyThing, candidates: list[str], word: str, found: list[tuple[str, str]]) -> str:
    if found:
        sides = " or ".join(f"`{thing.name}.{first}`" for first, _ in found)
        return f"name the pair by one of its jacks: write {sides} in place of `{thing.name}`"
    if len(candidates) < 2:
        return f"declare two {word}s in its block and that they are a pair"
    return f"declare it in its block, for example: pair {', '.join(candidates[:2])}"


def _several(fitting: list[str], what: str) -> str:
    return f"more than one {what}: {', '.join(fitting)}" if fitting else f"no {what}"
