"""Each thing taken out in turn -> what still sounds, which questions find it by halves, and the shortest way to sound again:
`fault-tree.A5.minutes`, `fault-tree.questions-1`; with the hookup's name within where there are several."""

from __future__ import annotations

from rigc.analysis.deck.placement import Placement
from rigc.analysis.faults.hearing import Hearing, Hearings
from rigc.analysis.faults.questions import Answers, Question, answers
from rigc.analysis.faults.repairs import Repair, repair
from rigc.analysis.faults.single_breaks import Break, Part, SingleBreaks
from rigc.analysis.signal.sound_ways import Hookup, SoundWays
from rigc.model.jacks import Port
from rigc.record import Record
from rigc.solvers.halving import Found, Tree, depth, halved
from rigc.traced.figure import Figure, known_figure
from rigc.traced.means import found as counted
from rigc.traced.reason import ARITHMETIC
from rigc.traced.units import COUNT


class Culprits(Record):
    """Breaks that no question tells apart, and what helps whichever it is."""

    breaks: tuple[Break, ...]
    repair: Repair


class Line(Record):
    """A question, and where its answers lead: to the line of that place in the tree, or to culprits."""

    question: Question
    heard: int | Culprits
    silent: int | Culprits


class Symptom(Record):
    """What is silent at first (`silent`, of the ends), and the lines that find the cause; of none, `only` is the cause.

    `most` is how many questions it takes at most."""

    silent: tuple[Port, ...]
    lines: tuple[Line, ...]
    only: Culprits | None
    culprits: tuple[Culprits, ...]
    most: Figure


class Heard(Record):
    """Breaks with which all ends still sound, and the things that are then not heard."""

    breaks: tuple[Break, ...]
    without: tuple[str, ...]


class FaultTree(Record):
    """Of one hookup: its symptoms, and the breaks that silence nothing. `marks` are the numbers of its leads by their jacks; `walks`
    counts the walks along its ways that it took."""

    hookup: Hookup
    name: str
    ends: tuple[Port, ...]
    marks: dict[tuple[Port, Port], str]
    symptoms: tuple[Symptom, ...]
    heard: tuple[Heard, ...]
    walks: int


class FaultTrees(Record):
    """One for each way in which the rig is wired and sounds."""

    all: tuple[FaultTree, ...]


def fault_trees(hearings: Hearings, ways: SoundWays, breaks: SingleBreaks, places: Placement) -> FaultTrees:
    """Takes every part out in turn."""
    several = len(ways.hookups) > 1
    named = (
        (hearing, " ".join((*hearing.hookup.scenarios, *hearing.hookup.instruments)) if several else "")
        for hearing in hearings.all
    )
    return FaultTrees(tuple(_tree(hearing, breaks, places, name) for hearing, name in named))


def _tree(hearing: Hearing, breaks: SingleBreaks, places: Placement, name: str) -> FaultTree:
    own = tuple(each for each in breaks.all if each.gone & hearing.parts or _feeds(hearing, each))
    said = answers(hearing, own)
    groups: dict[tuple[Port, ...], list[int]] = {}
    for place in range(len(own)):
        silent = tuple(end for end in hearing.ends if not said.plain[end] >> place & 1)
        groups.setdefault(silent, []).append(place)
    named = "fault-tree" if not name else f"fault-tree.{name.replace(' ', '-')}"
    ordered = sorted((silent for silent in groups if silent), key=len, reverse=True)
    symptoms = tuple(
        _Lines(hearing, own, said, places, named).symptom(number, silent, groups[silent])
        for number, silent in enumerate(ordered, 1)
    )
    marks = {(start, end): mark for start, end, (kind, mark) in hearing.leads if kind == "lead"}
    heard = _heard(hearing, [own[place] for place in groups.get((), ())])
    return FaultTree(hearing.hookup, name, hearing.ends, marks, symptoms, heard, hearing.walks)


def _feeds(hearing: Hearing, each: Break) -> bool:
    return any(("thing", unit) in hearing.parts for unit in each.dark)


class _Lines:
    """A tree of questions, line by line: each before those to which it leads."""

    def __init__(
        self, hearing: Hearing, breaks: tuple[Break, ...], said: Answers, places: Placement, named: str
    ) -> None:
        self._hearing, self._breaks, self._said, self._places, self._named = hearing, breaks, said, places, named
        self._lines: list[Line] = []
        self._culprits: list[Culprits] = []

    def symptom(self, number: int, silent: tuple[Port, ...], group: list[int]) -> Symptom:
        tree = halved(group, self._said.yes, [question.minutes for question in self._said.questions])
        at_first = self._line(tree)
        most = known_figure(
            f"{self._named}.questions-{number}",
            counted(depth(tree), lambda: f"{len(group)} breaks in {len(self._culprits)} groups: {depth(tree)}"),
            COUNT,
            rule="each question leaves half of what it may be, as near as the rig allows; log2, rounded up, of the groups is the least",
            source=ARITHMETIC,
        )
        only = at_first if isinstance(at_first, Culprits) else None
        return Symptom(silent, tuple(self._lines), only, tuple(self._culprits), most)

    def _line(self, tree: Tree) -> int | Culprits:
        if isinstance(tree, Found):
            breaks = tuple(self._breaks[place] for place in tree.things)
            found = repair(self._hearing, breaks, self._places, f"{self._named}.{breaks[0].key}")
            self._culprits.append(Culprits(breaks, found))
            return self._culprits[-1]
        place = len(self._lines)
        question = self._said.questions[tree.question]
        self._lines.append(Line(question, 0, 0))
        heard = self._line(tree.yes)
        self._lines[place] = Line(question, heard, self._line(tree.no))
        return place


def _heard(hearing: Hearing, breaks: list[Break]) -> tuple[Heard, ...]:
    """Those together with which the same things are not heard."""
    alike_ones: dict[frozenset[Part], tuple[str, ...]] = {}
    groups: dict[tuple[str, ...], list[Break]] = {}
    for each in breaks:
        gone = each.gone & hearing.parts
        if gone not in alike_ones:
            alike_ones[gone] = hearing.passed_over(hearing.sounding(gone))
        groups.setdefault(alike_ones[gone], []).append(each)
    return tuple(Heard(tuple(group), without) for without, group in groups.items())


COMPUTE = fault_trees
