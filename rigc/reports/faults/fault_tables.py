"""A fault tree -> its tables: where to begin, a question a line, what helps, and what breaks unheard."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from rigc.analysis.faults.fault_tree import Culprits, FaultTree, Symptom
from rigc.analysis.faults.hearing import LoopsOut, Patch
from rigc.analysis.faults.questions import Question
from rigc.analysis.faults.repairs import Repair
from rigc.analysis.faults.single_breaks import LISTENER, SOURCE, UNIT, Break
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell

_BEGIN = (
    Column("silent"),
    Column("sounds"),
    Column("begin at", key="begin"),
    Column("questions at most", number=True, key="most"),
)
_LINES = (Column("line"), Column("do, and listen", key="do"), Column("it sounds", key="heard"), Column("silent"))
_HELP = (
    Column("if it is", key="culprit"),
    Column("do"),
    Column("then sounds", key="back"),
    Column("without"),
    Column("takes", "min", number=True, key="minutes"),
)
_UNHEARD = (Column("broken"), Column("not heard then", key="without"), Column("without power", key="dark"))
_AND = ", "
_IN_ITS_PLACE = "another in its place"


def fault_tables(tree: FaultTree) -> Iterator[Table]:
    """Those of one way in which the rig is wired; `name` sets them apart from those of another."""
    tail, where = (f"-{tree.name.replace(' ', '-')}", f" ({tree.name.replace(' ', ', ')})") if tree.name else ("", "")
    begins: list[Row] = []
    lines: list[Row] = []
    for symptom in tree.symptoms:
        begins.append(_begin(tree, symptom, len(lines) + 1))
        lines += _lines(tree, symptom, len(lines) + 1)
    yield Table(f"begin{tail}", f"Where to begin{where}", _BEGIN, tuple(begins), empty="nothing that breaks is heard")
    if lines:
        listen = f", always at {tree.ends[0]}" if len(tree.ends) == 1 else ""
        yield Table(f"questions{tail}", f"One question a line{listen}{where}", _LINES, tuple(lines), tick=True)
    helps = tuple(_helps(tree))
    if helps:
        yield Table(f"repairs{tail}", f"What helps, each tried in the model{where}", _HELP, helps)
    unheard = tuple(
        Row(
            (Cell(_names(each.breaks)), Cell(_AND.join(each.without) or "nothing"), Cell(_AND.join(_dark(each.breaks))))
        )
        for each in tree.heard
    )
    if unheard:
        yield Table(f"unheard{tail}", f"What may break while every end sounds{where}", _UNHEARD, unheard)


def _begin(tree: FaultTree, symptom: Symptom, line: int) -> Row:
    sounds = _AND.join(str(end) for end in tree.ends if end not in symptom.silent)
    begin = f"line {line}" if symptom.only is None else _names(symptom.only.breaks)
    silent = _AND.join(map(str, symptom.silent))
    return Row(
        (Cell(silent, strong=True), Cell(sounds or "nothing"), Cell(begin, strong=True), figure_cell(symptom.most))
    )


def _lines(tree: FaultTree, symptom: Symptom, first: int) -> list[Row]:
    return [
        Row(
            (
                Cell(str(number), strong=True),
                Cell(_do(tree, line.question)),
                _next(line.heard, first),
                _next(line.silent, first),
            )
        )
        for number, line in enumerate(symptom.lines, first)
    ]


def _next(there: int | Culprits, first: int) -> Cell:
    if isinstance(there, Culprits):
        return Cell(f"it is {_names(there.breaks)}", strong=True)
    return Cell(f"line {there + first}")


def _do(tree: FaultTree, question: Question) -> str:
    done = (
        _loops(question.out)
        if question.out is not None
        else _patch(question.patch)
        if question.patch is not None
        else ""
    )
    patched = question.patch is not None and question.patch.end == question.end
    return done if patched or len(tree.ends) == 1 else f"{done}; listen at {question.end}"


def _patch(patch: Patch) -> str:
    alone = "" if patch.alone is None else f", {patch.alone} left empty"
    return f"good lead {patch.start} → {patch.end}{alone}"


def _loops(out: LoopsOut) -> str:
    first, last = out.numbers[0], out.numbers[-1]
    numbers = f"loop {first}" if first == last else f"loops {first} to {last}"
    return f"{out.switcher}: {numbers} out"


def _helps(tree: FaultTree) -> Iterator[Row]:
    """A row for each repair, with all for which it is the shortest; leads that another one takes the place of are one row."""
    groups: dict[tuple[object, ...], tuple[Repair, list[Break]]] = {}
    for symptom in tree.symptoms:
        for each in symptom.culprits:
            made = each.repair
            own = (made.out, made.patches, each.breaks[0].key if made.minutes is None else "")
            groups.setdefault((_IN_ITS_PLACE, made.back) if _in_its_place(tree, each) else own, (made, []))[1].extend(
                each.breaks
            )
    for what, (made, breaks) in groups.items():
        whole = made.back >= frozenset(tree.ends)
        back = "all" if whole else _AND.join(str(end) for end in tree.ends if end in made.back)
        without = _AND.join(name for name in made.without if name not in {end.thing for end in tree.ends})
        if what[0] == _IN_ITS_PLACE:
            do = _IN_ITS_PLACE
        else:
            do = _loops(made.out) if made.out is not None else "; ".join(map(_patch, made.patches)) or _another(breaks)
        names = _names(breaks)
        yield Row(
            (
                Cell(names, strong=True),
                Cell(do),
                Cell(back or "nothing"),
                Cell(without),
                figure_cell(made.minutes, lacking=""),
            )
        )


def _in_its_place(tree: FaultTree, each: Culprits) -> bool:
    """Whether the break is one lead, and the patch goes where it goes."""
    patches, marks = each.repair.patches, [one.key for one in each.breaks]
    return len(patches) == 1 and [tree.marks.get((patches[0].start, patches[0].end))] == marks


def _another(breaks: Iterable[Break]) -> str:
    """What no lead goes round must be there twice."""
    things = [each for each in breaks if each.kind in (SOURCE, LISTENER, UNIT)]
    return f"no lead goes round it: another {_names(things)}" if things else "no lead goes round it"


def _names(breaks: Iterable[Break]) -> str:
    """`A3, A4 or A5`."""
    names = list(dict.fromkeys(each.name for each in breaks))
    return " or ".join(filter(None, (", ".join(names[:-1]), names[-1])))


def _dark(breaks: Iterable[Break]) -> Iterator[str]:
    return iter(dict.fromkeys(unit for each in breaks for unit in each.dark))
