"""A fault tree -> its tables: where to begin, a question a line, what helps, and what breaks unheard."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from rigc.analysis.deck.zones import Zones
from rigc.analysis.faults.fault_tree import Culprits, FaultTree, Symptom
from rigc.analysis.faults.hearing import LoopsOut, Patch
from rigc.analysis.faults.questions import Question
from rigc.analysis.faults.repairs import Repair
from rigc.analysis.faults.single_breaks import Break
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.deck.zone_column import ZONE, zoned
from rigc.reports.figure_cell import figure_cell

_BEGIN = (
    Column("silent"),
    Column("sounds"),
    Column("begin at", key="begin"),
    Column("questions at most", number=True, key="most"),
)
_LINE, _DO, _AT, _YES, _NO = (
    Column("line"),
    Column("good lead, or loops", key="do", least_mm=58),
    Column("listen at", key="end"),
    Column("it sounds", key="heard"),
    Column("silent"),
)
_HELP = (
    Column("if it is", key="culprit"),
    Column("good lead, or loops", key="do", least_mm=58),
    Column("without"),
    Column("takes", "min", number=True, key="minutes"),
)
_UNHEARD = (Column("broken"), Column("not heard then", key="without"), Column("without power", key="dark"))
_Told = dict[tuple[str, str], set[str]]
_AND = ", "
_IN_ITS_PLACE, _NONE = "another in its place", "no lead goes round it: another of its kind"


def fault_tables(trees: Iterable[FaultTree], zones: Zones) -> Iterator[Table]:
    """Those of each way in which the rig is wired; what helps, and what is not heard, is told once."""
    helps: _Told = {}
    unheard: dict[tuple[str, str], dict[str, Break]] = {}
    for tree in trees:
        yield from _find(tree, helps, zones)
        for each in tree.heard:
            for one in each.breaks:
                told = (_AND.join(each.without) or "nothing", _AND.join(_dark((one,))))
                unheard.setdefault(told, {}).setdefault(one.name, one)
    rows = tuple(
        Row((Cell(_names(tuple(breaks.values()))), Cell(without), Cell(dark)))
        for (without, dark), breaks in unheard.items()
    )
    if rows:
        yield Table("unheard", "What may break while every end sounds", _UNHEARD, rows)


def _find(tree: FaultTree, known: _Told, zones: Zones) -> Iterator[Table]:
    """`known` is what helps against what, as it stands on the sheet already."""
    tail, where = (f"-{tree.name.replace(' ', '-')}", f" ({tree.name.replace(' ', ', ')})") if tree.name else ("", "")
    begins: list[Row] = []
    lines: list[Table] = []
    asked = 0
    for number, symptom in enumerate(tree.symptoms, 1):
        begins.append(_begin(tree, symptom, asked + 1))
        if symptom.lines:
            lines.append(_lines(f"questions{tail}-{number}", where, symptom, asked + 1, zones))
        asked += len(symptom.lines)
    yield Table(f"begin{tail}", f"Where to begin{where}", _BEGIN, tuple(begins), empty="nothing that breaks is heard")
    yield from lines
    more = ", beyond what is told above" if known else ""
    helps = tuple(_helps(tree, known))
    if helps:
        yield Table(f"repairs{tail}", f"What helps{more}{where}", _HELP, helps)


def _begin(tree: FaultTree, symptom: Symptom, line: int) -> Row:
    sounds = _AND.join(str(end) for end in tree.ends if end not in symptom.silent)
    begin = f"line {line}" if symptom.only is None else _names(symptom.only.breaks)
    silent = _AND.join(map(str, symptom.silent))
    return Row(
        (Cell(silent, strong=True), Cell(sounds or "nothing"), Cell(begin, strong=True), figure_cell(symptom.most))
    )


def _lines(name: str, where: str, symptom: Symptom, first: int, zones: Zones) -> Table:
    """Where one listens stands in the caption if it is always the same."""
    ends = {line.question.end for line in symptom.lines}
    columns = (_LINE, _DO, ZONE, _YES, _NO) if len(ends) == 1 else (_LINE, _DO, ZONE, _AT, _YES, _NO)
    rows = []
    for number, line in enumerate(symptom.lines, first):
        asked = line.question
        at = () if len(ends) == 1 else (Cell(str(asked.end)),)
        answers = (_next(line.heard, first), _next(line.silent, first))
        do = Cell(_do(asked)), Cell(_zone(asked, zones))
        rows.append(Row((Cell(str(number), strong=True), *do, *at, *answers)))
    silent = _AND.join(map(str, symptom.silent))
    listen = f"; listen at {', '.join(map(str, ends))}" if len(ends) == 1 and len(symptom.silent) > 1 else ""
    caption = f"Silent at {silent}: one question a line{listen}{where}"
    return zoned(Table(name, caption, columns, tuple(rows), tick=True))


def _next(there: int | Culprits, first: int) -> Cell:
    if isinstance(there, Culprits):
        return Cell(_names(there.breaks), strong=True)
    return Cell(f"line {there + first}")


def _do(question: Question) -> str:
    return (
        _loops(question.out) if question.out is not None else "" if question.patch is None else _patch(question.patch)
    )


def _zone(question: Question, zones: Zones) -> str:
    """Where the good lead is plugged, or where the switcher stands."""
    if question.out is not None:
        return zones.thing(question.out.switcher)
    return "" if question.patch is None else zones.ends(question.patch.start, question.patch.end)


def _patch(patch: Patch) -> str:
    return f"{patch.start} → {patch.end}" + ("" if patch.alone is None else f", {patch.alone} left empty")


def _loops(out: LoopsOut) -> str:
    first, last = out.numbers[0], out.numbers[-1]
    numbers = f"loop {first}" if first == last else f"loops {first} to {last}"
    return f"{out.switcher}: {numbers} out"


def _helps(tree: FaultTree, known: _Told) -> Iterator[Row]:
    """A row for each repair, with all for which it is the shortest; leads that another one takes the place of are one row."""
    groups: dict[tuple[object, ...], tuple[Repair, list[Break]]] = {}
    for symptom in tree.symptoms:
        for each in symptom.culprits:
            made = each.repair
            lead = _in_its_place(tree, each)
            own = (_IN_ITS_PLACE, made.back) if lead else (made.out, made.patches, made.minutes is None)
            groups.setdefault(own, (made, []))[1].extend(each.breaks)
    for what, (made, breaks) in groups.items():
        do = f"{_IN_ITS_PLACE if what[0] == _IN_ITS_PLACE else _mended(made)}{_part(tree, made)}"
        without = _AND.join(name for name in made.without if name not in {end.thing for end in tree.ends})
        told = known.setdefault((do, without), set())
        new = [
            each for each in breaks if each.name not in told
        ]  # what can't be told apart stays together, leads need not
        told.update(each.name for each in new)
        if new:
            yield Row(
                (
                    Cell(_names(new if what[0] == _IN_ITS_PLACE else breaks), strong=True),
                    Cell(do),
                    Cell(without),
                    figure_cell(made.minutes, lacking=""),
                )
            )


def _mended(made: Repair) -> str:
    return _loops(made.out) if made.out is not None else "; ".join(map(_patch, made.patches)) or _NONE


def _part(tree: FaultTree, made: Repair) -> str:
    """The ends that sound again where others do not."""
    back = [str(end) for end in tree.ends if end in made.back]
    return f": {_AND.join(back)} alone {'sound' if back[1:] else 'sounds'}" if 0 < len(back) < len(tree.ends) else ""


def _in_its_place(tree: FaultTree, each: Culprits) -> bool:
    """Whether the break is one lead, and the patch goes where it goes."""
    patches, marks = each.repair.patches, [one.key for one in each.breaks]
    return len(patches) == 1 and [tree.marks.get((patches[0].start, patches[0].end))] == marks


def _names(breaks: Iterable[Break]) -> str:
    """`A3, A4 or A5`."""
    names = list(dict.fromkeys(each.name for each in breaks))
    return " or ".join(filter(None, (", ".join(names[:-1]), names[-1])))


def _dark(breaks: Iterable[Break]) -> Iterator[str]:
    return iter(dict.fromkeys(unit for each in breaks for unit in each.dark))
