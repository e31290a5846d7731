"""A hookup and what can break -> the questions that a crew can put to it with an ear and one good lead, and what each break answers.

Asked is always what is heard at one end: as all stands, with loops switched out, with a good lead from the instrument into a jack,
from a jack into the end, or in the place of one of the rig's. What was plugged in where the good lead goes is pulled out for that question.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from rigc.analysis.faults.hearing import Hearing, LoopsOut, Patch
from rigc.analysis.faults.single_breaks import Break, Part
from rigc.facts.rework import MINUTES
from rigc.model.jacks import AUDIO_IN, AUDIO_OUT, Port
from rigc.model.rig import Rig
from rigc.record import Record

_PHONE = ("ts", "trs")


class Question(Record):
    """Is anything heard at `end`? `out` and `patch` are what is done before; `minutes` what that takes, from `facts.rework`."""

    end: Port
    out: LoopsOut | None = None
    patch: Patch | None = None

    @property
    def minutes(self) -> float:
        """Nothing for switches; two plugs out and two in for a patch."""
        return 0.0 if self.patch is None else 2 * (MINUTES["unplug"].value + MINUTES["plug in"].value)


class Answers(Record):
    """Questions, and of each the set of breaks (bit by their place) with which it is answered yes; no two with equal sets. `plain`
    are those with which an end is heard as all stands."""

    questions: tuple[Question, ...]
    yes: tuple[int, ...]
    plain: dict[Port, int]


def answers(hearing: Hearing, breaks: Sequence[Break]) -> Answers:
    """What is asked, the cheapest first. Breaks that take away the same are walked once."""
    places: dict[frozenset[Part], int] = {}
    for place, each in enumerate(breaks):
        gone = each.gone & hearing.parts
        places[gone] = places.get(gone, 0) | 1 << place
    asked = list(_all(hearing))
    tests = [_test(hearing, question) for question in asked]
    yes = [0] * len(asked)
    for gone, bits in places.items():
        sounds = _Sounds(hearing, gone)
        for at, (end, sounding) in enumerate(tests):
            if end in sounds.before and sounding(sounds):
                yes[at] |= bits
    kept: dict[int, Question] = {}
    for question, bits in zip(asked, yes, strict=True):
        kept.setdefault(bits, question)
    return Answers(tuple(kept.values()), tuple(kept), dict(zip(hearing.ends, yes, strict=False)))


def joins(rig: Rig, start: Port, end: Port) -> bool:
    """Whether one ordinary lead goes into both jacks: phone plugs, or XLR."""
    jacks = [rig.jack(port) for port in (start, end)]
    kinds = ["" if jack is None else jack.connector.kind for jack in jacks]
    return all(kind in _PHONE for kind in kinds) or kinds == ["xlr", "xlr"]


def may_join(rig: Rig, start: Port, end: Port) -> bool:
    """Whether a good lead may go there where none of the rig's goes: what needs phantom power is silent where that is not given, and
    what must never get it comes to harm where it is."""
    jacks = (rig.jack(start), rig.jack(end))
    wants, given = (jack.phantom.how if jack is not None and jack.phantom is not None else "" for jack in jacks)
    lacks = wants == "needs" and given != "gives"
    return joins(rig, start, end) and not lacks and not (wants == "never" and given == "gives")


def inputs(hearing: Hearing) -> list[Port]:
    """Jacks on the way into which a lead from the instrument can go."""
    return [port for port in hearing.ways if _has(hearing.rig, port, AUDIO_IN)]


def outputs(hearing: Hearing) -> list[Port]:
    """Jacks on the way from which a lead to an end can go."""
    own = {port.thing for port in (*hearing.sources, *hearing.ends)}
    return [port for port in hearing.ways if port.thing not in own and _has(hearing.rig, port, AUDIO_OUT)]


def _has(rig: Rig, port: Port, role: str) -> bool:
    """Not a panel's jack: the lead inside is out of reach."""
    jack = rig.jack(port)
    return jack is not None and jack.role == role


def _all(hearing: Hearing) -> Iterator[Question]:
    for end in hearing.ends:
        yield Question(end)
    for out in hearing.switched:
        yield from (Question(end, out) for end in hearing.ends)
    first = hearing.sources[0]
    for port in sorted(inputs(hearing), key=str):
        if may_join(hearing.rig, first, port):
            yield from (Question(end, patch=Patch(first, port)) for end in hearing.ends)
    for port in sorted(outputs(hearing), key=str):
        for end in hearing.ends:
            if port != end and may_join(hearing.rig, port, end):
                yield Question(end, patch=Patch(port, end))
    for start, after, _ in hearing.leads:
        if joins(hearing.rig, start, after):
            yield from (Question(end, patch=Patch(start, after)) for end in hearing.ends)


class _Sounds:
    """What is heard with these parts gone, whatever is asked; `before` are the ends that are well, with the jacks from which sound reaches
    them."""

    def __init__(self, hearing: Hearing, gone: frozenset[Part]) -> None:
        self.well = ("thing", hearing.sources[0].thing) not in gone
        self.reached = hearing.after(hearing.sources, gone)
        self.before = {end: hearing.before((end,), gone) for end in hearing.ends if hearing.alive(end, gone)}
        self.out = {out: hearing.heard(gone, out) for out in hearing.switched}
        own = {(start, end): part for start, end, part in hearing.leads if part in gone}
        self.instead = {jacks: hearing.heard(gone - {part}) for jacks, part in own.items()}


def _test(hearing: Hearing, question: Question) -> tuple[Port, Callable[[_Sounds], bool]]:
    """The end of a question, and whether it sounds if it is well; jacks are looked up once for all breaks."""
    end, out, patch = question.end, question.out, question.patch
    if out is not None:
        return end, lambda sounds: end in sounds.out[out]
    here = hearing.number(end)
    if patch is None:
        return end, lambda sounds: here in sounds.reached.numbers
    start, after = hearing.number(patch.start), hearing.number(patch.end)
    if patch.start == hearing.sources[0]:
        return end, lambda sounds: sounds.well and after in sounds.before[end].numbers
    if patch.end == end:
        return end, lambda sounds: start in sounds.reached.numbers
    jacks = (patch.start, patch.end)

    def with_another_lead(sounds: _Sounds) -> bool:
        if jacks in sounds.instead:
            return end in sounds.instead[jacks]
        return here in sounds.reached.numbers

    return end, with_another_lead
